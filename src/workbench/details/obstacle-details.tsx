import type { Obstacle, ObstacleInput } from '../../geometry';
import { changeObstacle, removeObstacle } from '../../plan/edits';
import { seatName } from '../../plan/names';
import { planStore, sessionStore, useSession, useShownPlan } from '../../store';
import { angleKind, lengthKind, numberKind } from '../parts/field-kind';
import { thingName } from '../parts/names';
import { NumberField } from '../parts/number-field';
import { planSink } from '../parts/plan-sink';
import { type Board, useLocked } from '../parts/use-board';
import { VectorFields } from '../parts/vector-fields';
import { DetailsHead } from './details-head';

const KINDS = { box: 'A box', ring: 'A ring', capsule: 'A rod with round ends', mesh: 'A mesh' };

/** Everything about one obstacle; those of the body style only say where they come from. */
export function ObstacleDetails({ board, obstacle }: { board: Board; obstacle: Obstacle }) {
  const locked = useLocked();
  const own = useShownPlan().obstacles?.find(({ id }) => id === obstacle.id);
  const name = thingName(board.cabin, obstacle.id);
  const seat = obstacle.occupant?.seat ?? obstacle.seat;
  if (!own)
    return (
      <DetailsHead title={name}>
        Comes with the body style and gets in the way of sound.{' '}
        {seat ? `It moves with the ${seatName(seat)}.` : 'It moves with the dimensions of the car.'}
      </DetailsHead>
    );
  return (
    <>
      <DetailsHead title={name}>{KINDS[own.shape]} in the way of sound, added by you.</DetailsHead>
      <ShapeFields obstacle={own} name={name} />
      <button
        type="button"
        disabled={locked}
        onClick={() => {
          planStore.edit(`remove the ${name}`, removeObstacle(own.id));
          sessionStore.setState({ selection: null });
        }}
      >
        Remove this obstacle
      </button>
    </>
  );
}

function ShapeFields({ obstacle, name }: { obstacle: ObstacleInput; name: string }) {
  const unit = useSession((session) => session.lengthUnit);
  const kind = lengthKind(unit);
  const undoLabel = `change the ${name}`;
  const change = (fields: Parameters<typeof changeObstacle>[1]) =>
    changeObstacle(obstacle.id, fields);
  const part = { kind, undoLabel };
  switch (obstacle.shape) {
    case 'box':
      return (
        <section aria-label="Shape">
          <VectorFields
            {...part}
            legend="Centre"
            value={obstacle.center}
            recipe={(center) => change({ center })}
          />
          <VectorFields
            {...part}
            legend="Size"
            names={['along X', 'along Y', 'along Z']}
            min={1}
            value={obstacle.size}
            recipe={(size) => change({ size })}
          />
          <VectorFields
            legend="Turned about"
            names={['X', 'then Y', 'then Z']}
            kind={angleKind}
            undoLabel={undoLabel}
            value={obstacle.turnDeg ?? [0, 0, 0]}
            recipe={(turnDeg) => change({ turnDeg })}
          />
        </section>
      );
    case 'ring':
      return (
        <section aria-label="Shape">
          <VectorFields
            {...part}
            legend="Centre"
            value={obstacle.center}
            recipe={(center) => change({ center })}
          />
          <VectorFields
            legend="Its axle points to"
            kind={numberKind('', 3, 0.05)}
            undoLabel={undoLabel}
            value={obstacle.axis}
            recipe={(axis) => change({ axis })}
          />
          <div className="fields fields-2">
            <SizeField
              label="Diameter"
              hint="middle of the rim to middle of the rim: outside diameter less one thickness"
              {...part}
              value={obstacle.diameter}
              of="diameter"
              change={change}
            />
            <SizeField
              label="Thickness"
              {...part}
              value={obstacle.thickness}
              of="thickness"
              change={change}
            />
          </div>
        </section>
      );
    case 'capsule':
      return (
        <section aria-label="Shape">
          <VectorFields
            {...part}
            legend="From"
            value={obstacle.from}
            recipe={(from) => change({ from })}
          />
          <VectorFields {...part} legend="To" value={obstacle.to} recipe={(to) => change({ to })} />
          <div className="fields fields-2">
            <SizeField
              label="Radius"
              {...part}
              value={obstacle.radius}
              of="radius"
              change={change}
            />
          </div>
        </section>
      );
    case 'mesh':
      return (
        <p className="quiet-text">
          {obstacle.triangles.length} triangles from a scan: it has no numbers to change by hand.
        </p>
      );
  }
}

interface SizeFieldProps {
  label: string;
  hint?: string;
  value: number;
  kind: ReturnType<typeof lengthKind>;
  undoLabel: string;
  of: 'diameter' | 'thickness' | 'radius';
  change: (fields: Parameters<typeof changeObstacle>[1]) => ReturnType<typeof changeObstacle>;
}

function SizeField({ label, hint, value, kind, undoLabel, of, change }: SizeFieldProps) {
  const locked = useLocked();
  return (
    <NumberField
      label={label}
      hint={hint}
      value={value}
      kind={kind}
      min={1}
      max={3000}
      readOnly={locked}
      sink={planSink(undoLabel, (number) => change({ [of]: number }))}
    />
  );
}
