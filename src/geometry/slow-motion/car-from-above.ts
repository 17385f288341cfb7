import type { CabinModel, Obstacle, Panel } from '../cabin/model';
import { pointOnPatch } from '../cabin/patch';
import { tessellatePanel } from '../cabin/tessellate-panel';
import { meshOfShape } from '../fit/solid';
import { cutAt, fromAbove, type Spot } from './cut';
import { hullOf } from './hull';

/**
 * `wall`, `glass`: cut through at the height looked at; `edge`: panels below it, seen from above;
 * `seat`, `wheel`: bodies seen from above.
 */
export type CarLineKind = 'seat' | 'wheel' | 'edge' | 'wall' | 'glass';

export interface CarLine {
  kind: CarLineKind;
  points: readonly Spot[];
  closed: boolean;
}

export interface CarFromAbove {
  /** mm above the heel point: where the car is cut through. */
  height: number;
  /** Round everything inside the cabin; nothing where the plan has no panels. */
  outline: readonly Spot[];
  /** Back to front. */
  lines: readonly CarLine[];
}

/** Samples along an edge of a panel: enough for a smooth line at drawing size. */
const EDGE_STEPS = 10;

/** Panels below the ears that tell a reader where in the car they look. */
const SEEN =
  /^(dash-(top|roll)|door-(upper|lower)|rear-door|rear-quarter|console-top|kick-(left|right)$|parcel-shelf)/;
const SEATS = /^seat-(front|rear)-|^head-restraint-/;
const WHEEL = /^steering-wheel$/;

const kept = new WeakMap<CabinModel, Map<number, CarFromAbove>>();

/** The car as a plan section at a height: what is cut, and what lies below. Kept by cabin and height. */
export function carFromAbove(cabin: CabinModel, height: number): CarFromAbove {
  const known = kept.get(cabin) ?? new Map<number, CarFromAbove>();
  kept.set(cabin, known);
  let car = known.get(height);
  if (!car) {
    car = drawn(cabin, height);
    known.set(height, car);
  }
  return car;
}

function drawn({ panels, obstacles }: CabinModel, height: number): CarFromAbove {
  const meshes = panels.map((panel) => ({ panel, ...tessellatePanel(panel) }));
  const bodies = (kind: CarLineKind, which: (one: Obstacle) => boolean) =>
    obstacles.filter(which).map((one): CarLine => ({ kind, points: outlineOf(one), closed: true }));
  return {
    height,
    outline: hullOf(meshes.flatMap(({ vertices }) => vertices.map(fromAbove))),
    lines: [
      ...panels.filter(({ id }) => SEEN.test(id)).map(edgeOf),
      ...bodies('seat', ({ id, given }) => SEATS.test(id) || given),
      ...bodies('wheel', ({ id, given }) => WHEEL.test(id) && !given),
      ...meshes.flatMap(({ panel, ...mesh }) =>
        cutAt(mesh, height).map(
          (points): CarLine => ({
            kind: panel.material === 'glass' ? 'glass' : 'wall',
            points,
            closed: false,
          }),
        ),
      ),
    ],
  };
}

function edgeOf({ patch }: Panel): CarLine {
  const at = (u: number, v: number) => fromAbove(pointOnPatch(patch, u, v));
  const steps = Array.from({ length: EDGE_STEPS }, (_, i) => i / EDGE_STEPS);
  const points = [
    ...steps.map((t) => at(t, 0)),
    ...steps.map((t) => at(1, t)),
    ...steps.map((t) => at(1 - t, 1)),
    ...steps.map((t) => at(0, 1 - t)),
  ];
  return { kind: 'edge', points, closed: true };
}

function outlineOf({ shape, drawn: parts }: Obstacle): Spot[] {
  const clouds = parts?.map(({ mesh }) => mesh.vertices) ?? [meshOfShape(shape).vertices];
  return hullOf(clouds.flat().map(fromAbove));
}
