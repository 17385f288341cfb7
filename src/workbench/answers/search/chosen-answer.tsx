import type { CabinModel } from '../../../geometry';
import { pairName } from '../../../plan/names';
import type { LengthUnit } from '../../../plan/units';
import { useLocked } from '../../parts/use-board';
import { capital } from '../capital';
import { characterSentence } from './character';
import type { Found, Proposal } from './found';
import { titleOf } from './proposals-table';
import { SpotsCautions } from './spots-cautions';
import { spotWord, takeAnswer } from './take-answer';
import { placeSentence } from './where-words';

interface ChosenAnswerProps {
  found: Found;
  one: Proposal;
  cabin: CabinModel;
  unit: LengthUnit;
}

/** The proposal looked at: exactly where, what it is good and bad at, and the way onto the board. */
export function ChosenAnswer({ found, one, cabin, unit }: ChosenAnswerProps) {
  const locked = useLocked();
  const among = found.answers.includes(one) ? found.answers : [...found.answers, one];
  const word = spotWord(found);
  return (
    <section className="search-chosen" aria-label={`${capital(word)} ${one.key}`}>
      <div className="search-chosen-head">
        <h3>{`${one.key}: ${capital(titleOf(one))}`}</h3>
        <button
          type="button"
          className="primary"
          disabled={locked}
          onClick={() => takeAnswer(found, one)}
        >
          Take as a new option
        </button>
      </div>
      <p>{characterSentence(one, among, found.columns, unit)}</p>
      <dl className="search-places">
        {one.spots.map((spot) => (
          <div key={spot.pair}>
            {one.spots.length > 1 && (
              <dt className="search-pair">{capital(pairName(spot.pair, found.option.speakers))}</dt>
            )}
            <dt>Left</dt>
            <dd>{placeSentence(spot, cabin, unit)}</dd>
            <dt>Right</dt>
            <dd>{placeSentence(spot.partner, cabin, unit)}</dd>
          </div>
        ))}
      </dl>
      <SpotsCautions panels={panelsOf([one])} cabin={cabin} />
    </section>
  );
}

/** The panels proposals stand on, each once. */
export const panelsOf = (list: readonly Proposal[]): string[] => [
  ...new Set(list.flatMap(({ spots }) => spots.flatMap((s) => [s.panel, s.partner.panel]))),
];
