import { CAUTIONS, cautionsFor, SHORT_CAUTION } from '../../exchange/cautions';
import { zoneName } from '../../exchange/keep-clear/spot-zones';
import { zoneCaution } from '../../exchange/keep-clear/zone-cautions';
import type { KeepClearZone } from '../../geometry';
import { currentOption, useAnswer, useSession, useShownPlan } from '../../store';
import { CautionList } from './caution-list';
import { type Spot, spotOf } from './selected-spot';
import './cautions.css';

/** The cautions for the selected speaker's spot, or for every spot with none selected. */
export function CautionsNote({ compact = false }: { compact?: boolean }) {
  const selection = useSession((state) => state.selection);
  // Named so that another option on the board is looked at anew.
  useSession((state) => state.option);
  const plan = useShownPlan();
  const answer = useAnswer();
  const spot =
    selection?.kind === 'speaker'
      ? spotOf(plan, answer, currentOption(answer), selection.id)
      : null;
  return <SpotCautions spot={spot} compact={compact} />;
}

/**
 * What must be read before anything is cut: about this spot first, then what goes for every spot.
 * Compact: zones and the one short sentence, the rest behind a fold.
 */
export function SpotCautions({
  spot,
  compact,
  label = 'Cautions',
}: {
  spot: Spot | null;
  compact: boolean;
  /** Where several stand on the page, each is called by what it is about. */
  label?: string;
}) {
  const about = spot ? cautionsFor(spot.panel).filter(({ panels }) => panels.length > 0) : [];
  // A zone that is reached into says it already, and more exactly.
  const airbag =
    about.some(({ id }) => id === 'airbags') &&
    !spot?.zones.some((zone) => /airbag/.test(`${zone.id} ${zone.reason}`));
  const others = CAUTIONS.filter((caution) => !about.includes(caution));
  return (
    <section className="cautions" aria-label={label}>
      {spot?.zones.map((zone) => (
        <ZoneLine key={zone.id} zone={zone} />
      ))}
      {spot?.panelName && airbag && (
        <p className="cautions-near">
          <strong>{`Airbags are often behind or beside the ${spot.panelName}.`}</strong> Whether
          this car has one there cannot be told from here: look it up in the maker’s documents
          before going on.
        </p>
      )}
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
      {zoneCaution(zone)}
    </p>
  );
}
