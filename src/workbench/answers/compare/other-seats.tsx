import type { Reason, Why } from '../../../geometry';
import { seatName } from '../../../plan/names';
import { sessionStore } from '../../../store';
import { capital } from '../capital';
import { clearly, reasonWords, type WhyWording } from './why-words';

interface OtherSeatsProps {
  why: Why;
  /** Whether the uncertainty is known already. */
  tried: boolean;
  wording: WhyWording;
}

/** What changes at the other seats by more than it is uncertain, seat by seat. */
export function OtherSeats({ why, tried, wording }: OtherSeatsProps) {
  const { option, against, elsewhere } = why;
  if (elsewhere.length === 0) return null;
  return (
    <details className="sheet-more">
      <summary>What changes at the other seats</summary>
      <p className="quiet-text">
        {wording.option(option)} against {wording.option(against)}
        {tried && ', where they differ by more than is uncertain'}:
      </p>
      <ul className="compare-seats">
        {elsewhere.map(({ seat, reasons: { better, worse, unsure } }) => {
          const [more, less] = [clearly(better, tried), clearly(worse, tried)];
          const open = better.length + worse.length - more.length - less.length;
          return (
            <li key={seat}>
              <button
                type="button"
                className="words"
                onClick={() => sessionStore.setState({ seat })}
              >
                {capital(seatName(seat))}
              </button>
              {more.length + less.length > 0 ? (
                <dl>
                  <Told head="Better" reasons={more} wording={wording} />
                  <Told head="Worse" reasons={less} wording={wording} />
                </dl>
              ) : (
                <p>{unsure.length + open > 0 ? 'Nothing clearly.' : 'Nothing.'}</p>
              )}
              {open > 0 && (
                <p className="footnote">
                  {open === 1 ? 'One more, of' : `${open} more, of`} sums and image: bring the seat
                  into view to see how sure.
                </p>
              )}
            </li>
          );
        })}
      </ul>
    </details>
  );
}

interface ToldProps {
  head: string;
  reasons: readonly Reason[];
  wording: WhyWording;
}

function Told({ head, reasons, wording }: ToldProps) {
  if (reasons.length === 0) return null;
  return (
    <>
      <dt>{head}</dt>
      {reasons.map((reason) => (
        <dd key={reason.measure.id}>{capital(reasonWords(reason, wording))}.</dd>
      ))}
    </>
  );
}
