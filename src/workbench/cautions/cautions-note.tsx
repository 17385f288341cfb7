import { CAUTIONS, cautionsFor, SHORT_CAUTION } from '../../exchange/cautions';
import type { KeepClearZone } from '../../geometry';
import { currentOption, useAnswer, useSession, useShownPlan } from '../../store';
import { CautionList } from './caution-list';
import { zoneName } from './spot-zones';
import { zonesAtSpot } from './zones-at-spot';
import './cautions.css';

/**
 * What must be read before anything is cut: about the selected speaker's spot first, then what
 * goes for every spot. Compact: the one short sentence, the rest behind a fold.
 */
export function CautionsNote({ compact = false }: { compact?: boolean }) {
  const spot = useSelectedSpot();
  const about = cautionsFor(spot?.panel ?? null).filter((caution) => caution.panels.length > 0);
  const others = CAUTIONS.filter((caution) => !about.includes(caution));
  return (
    <section className="cautions" aria-label="Cautions">
      {spot?.zones.map((zone) => (
        <ZoneLine key={zone.id} zone={zone} />
      ))}
      <p className="cautions-short">{SHORT_CAUTION}</p>
      {about.length > 0 && (
        <details open={!compact}>
          <summary>{`Before cutting the ${spot?.panelName ?? 'panel'}`}</summary>
          <CautionList list={about} />
        </details>
      )}
      <details open={!compact && about.length === 0}>
        <summary>{about.length > 0 ? 'All the other cautions' : 'For every spot'}</summary>
        <CautionList list={others} />
      </details>
    </section>
  );
}

/** One zone the spot reaches into: what that says, and what it cannot say. */
function ZoneLine({ zone }: { zone: KeepClearZone }) {
  return (
    <p className="cautions-zone">
      <strong>
        <span aria-hidden="true">✕ </span>
        {`Keep clear: ${zoneName(zone)}.`}
      </strong>{' '}
      {zone.given
        ? 'The speaker reaches into a zone you marked.'
        : 'The speaker reaches into the place usual for it in a body of this style. Whether this ' +
          'car has it just there, or somewhere else as well, cannot be told from here: the maker’s ' +
          'documents and the car itself decide.'}
    </p>
  );
}

interface Spot {
  panel: string | null;
  panelName: string | null;
  zones: KeepClearZone[];
}

/** The selected speaker's spot, with the zones it reaches into; `null` with no speaker selected. */
function useSelectedSpot(): Spot | null {
  const selection = useSession((state) => state.selection);
  const plan = useShownPlan();
  const answer = useAnswer();
  if (selection?.kind !== 'speaker' || !answer.ok) return null;
  const result = currentOption(answer);
  const speaker = plan.options
    .find((option) => option.id === result?.id)
    ?.speakers.find(({ id }) => id === selection.id);
  const placed = result?.placed.find((place) => place.speaker === selection.id);
  if (!speaker || !placed) return null;
  const panel = speaker.mount?.panel ?? null;
  return {
    panel,
    panelName: answer.cabin.panels.find(({ id }) => id === panel)?.name ?? null,
    zones: zonesAtSpot(answer.cabin.keepClear, placed, speaker.body),
  };
}
