import { cautionsFor, SHORT_CAUTION } from '../../exchange/cautions';
import { CautionList } from './caution-list';
import './cautions.css';

interface PanelCautionsProps {
  panels: readonly string[];
  /** "pockets": what is built there. */
  of: string;
}

/** What must be read before a panel is cut or something is built onto it. */
export function PanelCautions({ panels, of }: PanelCautionsProps) {
  const about = new Map(
    panels.flatMap((panel) =>
      cautionsFor(panel)
        .filter((caution) => caution.panels.length > 0)
        .map((caution) => [caution.id, caution]),
    ),
  );
  return (
    <section className="cautions" aria-label={`Cautions for ${of}`}>
      <p className="cautions-short">{SHORT_CAUTION}</p>
      {about.size > 0 && (
        <details>
          <summary>Before a panel is cut or anything is fixed there</summary>
          <CautionList list={[...about.values()]} />
        </details>
      )}
    </section>
  );
}
