import { CAUTIONS, cautionsFor, SHORT_CAUTION } from '../../../exchange/cautions';
import type { CabinModel } from '../../../geometry';
import { CautionList } from '../../cautions/caution-list';
import { listWords } from './request-words';
import '../../cautions/cautions.css';

/** The usual cautions for the panels spots are proposed on, as they stand beside any spot. */
export function SpotsCautions({ panels, cabin }: { panels: readonly string[]; cabin: CabinModel }) {
  const about = CAUTIONS.filter(
    (caution) =>
      caution.panels.length > 0 && panels.some((panel) => cautionsFor(panel).includes(caution)),
  );
  const others = CAUTIONS.filter((caution) => !about.includes(caution));
  const names = panels.flatMap((id) => {
    const panel = cabin.panels.find((one) => one.id === id);
    return panel ? [`the ${panel.name}`] : [];
  });
  const airbag = about.some(({ id }) => id === 'airbags');
  return (
    <section className="cautions" aria-label="Cautions for these spots">
      {airbag && (
        <p className="cautions-near">
          <strong>{`Airbags are often behind or beside ${listWords(names)}.`}</strong> The zones a
          search stays out of are typical for the body style, not this car’s: look up the maker’s
          documents before going on.
        </p>
      )}
      <p className="cautions-short">{SHORT_CAUTION}</p>
      {about.length > 0 && (
        <details>
          <summary>Before cutting there</summary>
          <CautionList list={about} />
        </details>
      )}
      <details>
        <summary>All the other cautions</summary>
        <CautionList list={others} />
      </details>
    </section>
  );
}
