import { type Aim, along, type Vec3 } from '../../geometry';
import { aimSpeaker } from '../../plan/edits';
import { seatName } from '../../plan/names';
import { planStore, useSession } from '../../store';
import { angleKind, lengthKind, numberKind } from '../parts/field-kind';
import { NumberField } from '../parts/number-field';
import { planSink } from '../parts/plan-sink';
import { SelectField } from '../parts/select-field';
import { useLocked } from '../parts/use-board';
import { VectorFields } from '../parts/vector-fields';
import { type AimAngles, anglesOf, directionAt } from './aim-angles';
import type { SpeakerPartProps } from './speaker-details';

/** How far ahead of the speaker the point is put when aiming at a point begins, mm. */
const FIRST_POINT = 1000;

/** Which way the speaker looks. */
export function SpeakerAim({ board, optionId, speaker, name }: SpeakerPartProps) {
  const unit = useSession((session) => session.lengthUnit);
  const locked = useLocked();
  const placed = board.result?.placed.find((p) => p.speaker === speaker.id);
  const aim: Aim | null = speaker.aim ?? (speaker.mount ? { kind: 'normal' } : null);
  const axis: Vec3 = placed?.axis ?? [1, 0, 0];
  const undoLabel = `aim ${name}`;
  const aimed = (next: Aim) => aimSpeaker(optionId, speaker.id, next);

  function choose(value: string): void {
    const [kind, seat] = value.split(':');
    if (kind === 'normal') planStore.edit(undoLabel, aimed({ kind }));
    if (kind === 'seat' && seat) planStore.edit(undoLabel, aimed({ kind, seat }));
    if (kind === 'direction') planStore.edit(undoLabel, aimed({ kind, direction: axis }));
    if (kind === 'point' && placed) {
      const point = along(placed.position, axis, FIRST_POINT);
      planStore.edit(undoLabel, aimed({ kind, point: roundedMm(point) }));
    }
  }

  return (
    <section aria-labelledby="aim-head">
      <h3 id="aim-head">Which way it looks</h3>
      <SelectField
        label="Aimed"
        value={aim?.kind === 'seat' ? `seat:${aim.seat}` : (aim?.kind ?? 'none')}
        disabled={locked}
        choices={[
          ...(aim ? [] : [{ value: 'none', label: 'not yet' }]),
          ...(speaker.mount ? [{ value: 'normal', label: 'straight out of the panel' }] : []),
          ...board.cabin.seats.map(({ id }) => ({
            value: `seat:${id}`,
            label: `at the ${seatName(id)}`,
          })),
          { value: 'direction', label: 'in a direction' },
          { value: 'point', label: 'at a point' },
        ]}
        onChange={choose}
      />
      {aim?.kind === 'direction' && (
        <>
          <AngleFields
            angles={anglesOf(aim.direction)}
            undoLabel={undoLabel}
            recipe={(angles) => aimed({ kind: 'direction', direction: directionAt(angles) })}
          />
          <details>
            <summary>as a vector</summary>
            <VectorFields
              legend="Direction"
              value={aim.direction}
              kind={numberKind('', 4, 0.01)}
              undoLabel={undoLabel}
              recipe={(direction) => aimed({ kind: 'direction', direction })}
            />
          </details>
        </>
      )}
      {aim?.kind === 'point' && (
        <VectorFields
          legend="The point"
          value={aim.point}
          kind={lengthKind(unit)}
          undoLabel={undoLabel}
          recipe={(point) => aimed({ kind: 'point', point })}
        />
      )}
    </section>
  );
}

interface AngleFieldsProps {
  angles: AimAngles;
  undoLabel: string;
  recipe: (angles: AimAngles) => ReturnType<typeof aimSpeaker>;
}

function AngleFields({ angles, undoLabel, recipe }: AngleFieldsProps) {
  const locked = useLocked();
  return (
    <div className="fields fields-2">
      <NumberField
        label="Turned to the right"
        value={angles.turnDeg}
        kind={angleKind}
        min={-180}
        max={180}
        readOnly={locked}
        hint="from straight rearward"
        sink={planSink(undoLabel, (turnDeg) => recipe({ ...angles, turnDeg }))}
      />
      <NumberField
        label="Tilted up"
        value={angles.tiltDeg}
        kind={angleKind}
        min={-90}
        max={90}
        readOnly={locked}
        hint="from level"
        sink={planSink(undoLabel, (tiltDeg) => recipe({ ...angles, tiltDeg }))}
      />
    </div>
  );
}

const roundedMm = ([x, y, z]: Vec3): Vec3 => [Math.round(x), Math.round(y), Math.round(z)];
