/** All that stands in a cabin and may be in a speaker's way, with its bounds. */
import type { CabinModel, KeepClearZone, Obstacle, Seat } from '../cabin/model';
import type { MeshShape } from '../input';
import { shapeBounds } from '../paths/cast';
import type { Vec3 } from '../vector';
import { isClosed, meshOfShape, type Solid, solidOf } from './solid';
import { sweepAlongX } from './sweep';

export interface Thing {
  kind: 'obstacle' | 'zone';
  id: string;
  name: string;
  /** A seat on rails stands for all of its travel. */
  travels: boolean;
  low: Vec3;
  high: Vec3;
  /** Made when first asked for; null where there is nothing to touch. */
  solid(): Solid | null;
}

const still = (kind: Thing['kind'], { id, name, shape }: Obstacle | KeepClearZone): Thing => {
  const [low, high] = shapeBounds(shape);
  return { kind, id, name, travels: false, low, high, solid: () => solidOf(shape) };
};

/** Swept seats by the seat's own mesh: a cabin built again brings the same objects back. */
const swept = new WeakMap<MeshShape, { first: number; last: number; mesh: MeshShape }>();

function sweptMesh(shape: MeshShape, first: number, last: number): MeshShape {
  const known = swept.get(shape);
  if (known?.first === first && known.last === last) return known.mesh;
  const mesh = sweepAlongX(shape, first, last);
  swept.set(shape, { first, last, mesh });
  return mesh;
}

/** A seat's furniture over the whole of its travel, from where it stands now. */
function travelling(obstacle: Obstacle, [first, last]: readonly [number, number]): Thing {
  const thing = still('obstacle', obstacle);
  const { low, high } = thing;
  const { shape } = obstacle;
  const mesh = meshOfShape(shape);
  if (!isClosed(mesh)) return thing;
  return {
    ...thing,
    travels: true,
    low: [low[0] + first, low[1], low[2]],
    high: [high[0] + last, high[1], high[2]],
    solid: () => solidOf(sweptMesh(mesh, first, last)),
  };
}

function obstacleThing(obstacle: Obstacle, seats: ReadonlyMap<string, Seat>): Thing {
  const range = obstacle.seat === undefined ? null : seats.get(obstacle.seat)?.slideRange;
  if (!range) return still('obstacle', obstacle);
  // Where it stands now belongs to its travel, even outside the rails.
  const travel = [Math.min(range[0], 0), Math.max(range[1], 0)] as const;
  return travel[0] < travel[1] ? travelling(obstacle, travel) : still('obstacle', obstacle);
}

export const zoneThings = (zones: readonly KeepClearZone[]): Thing[] =>
  zones.map((zone) => still('zone', zone));

/** Obstacles first, then keep-clear zones. */
export function thingsOf(cabin: CabinModel): Thing[] {
  const seats = new Map(cabin.seats.map((seat) => [seat.id, seat]));
  return [
    ...cabin.obstacles.map((obstacle) => obstacleThing(obstacle, seats)),
    ...zoneThings(cabin.keepClear),
  ];
}

/** Six numbers for each thing, low then high. */
export function boundsOfThings(things: readonly Thing[]): Float64Array {
  return Float64Array.from(things.flatMap(({ low, high }) => [...low, ...high]));
}
