import { cautionsFor, SHORT_CAUTION } from '../../../exchange/cautions';
import { CautionList } from '../../cautions/caution-list';
import '../../cautions/cautions.css';

/** What must be read before a panel is cut or a pocket is built into the car. */
export function PocketCautions({ panels }: { panels: readonly string[] }) {
  const about = new Map(
    panels.flatMap((panel) =>
      cautionsFor(panel)
        .filter((caution) => caution.panels.length > 0)
        .map((caution) => [caution.id, caution]),
    ),
  );
  return (
    <section className="cautions" aria-label="Cautions for pockets">
      <p className="cautions-short">{SHORT_CAUTION}</p>
      {about.size > 0 && (
        <details>
          <summary>Before a panel is cut or a pocket is fixed there</summary>
          <CautionList list={[...about.values()]} />
        </details>
      )}
    </section>
  );
}
