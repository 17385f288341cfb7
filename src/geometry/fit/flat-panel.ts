/** A panel laid flat to be drawn on: what is seen looking square at its middle from the cabin. */
import type { Panel } from '../cabin/model';
import { patchNormal, pointOnPatch } from '../cabin/patch';
import { speakerFrame } from '../stage/off-axis';
import { clamp, dot, scale, sub, type Vec3 } from '../vector';
import type { Point2 } from './outline';
import { outlineOf } from './panel-ground';

export interface FlatPanel {
  /** Width and height of the panel's own edges, mm. */
  size: Point2;
  /** The panel's edges, mm from its lower left end: across to the right, then up. */
  edge: Point2[];
  /** Unit vectors in car axes: to the right and up in the drawing. */
  right: Vec3;
  up: Vec3;
  /** A place of the panel, (u, v), in the drawing, mm. */
  toFlat(spot: Point2): Point2;
  /** The place of the panel there, (u, v) within 0 to 1: the nearest where it is off the panel. */
  fromFlat(at: Point2): Point2;
}

/** Steps of Newton's method; a panel of a car takes four or five. */
const STEPS = 40;
/** Well under what can be measured, mm. */
const EXACT = 1e-9;

/**
 * Up in the drawing is as near the car's Z as the panel allows; on a level panel it is forward.
 * A curved panel is seen as it is, not unrolled: lengths along its bends come out shorter.
 */
export function flatPanel({ patch }: Panel): FlatPanel {
  const middle = pointOnPatch(patch, 0.5, 0.5);
  const { right, up } = speakerFrame(scale(patchNormal(patch, 0.5, 0.5), -1));
  const seen = (point: Vec3): Point2 => {
    const from = sub(point, middle);
    return [dot(from, right), dot(from, up)];
  };
  const round = outlineOf(patch).map(seen);
  const ends = (k: 0 | 1): [number, number] => {
    const all = round.map((p) => p[k]);
    return [Math.min(...all), Math.max(...all)];
  };
  const [[left, far], [low, high]] = [ends(0), ends(1)];
  const moved = ([x, y]: Point2): Point2 => [x - left, y - low];
  const toFlat = ([u, v]: Point2): Point2 => moved(seen(pointOnPatch(patch, u, v)));
  return {
    size: [far - left, high - low],
    edge: round.map(moved),
    right,
    up,
    toFlat,
    fromFlat: (at) => nearestSpot(toFlat, at),
  };
}

/** Newton on (u, v) for the place that is drawn there, each step kept on the panel. */
function nearestSpot(toFlat: FlatPanel['toFlat'], want: Point2): Point2 {
  let [u, v] = [0.5, 0.5];
  let best: { spot: Point2; off: number } = { spot: [u, v], off: Infinity };
  for (let step = 0; step < STEPS; step++) {
    const [fx, fy] = toFlat([u, v]);
    const [x, y] = [fx - want[0], fy - want[1]];
    const off = x * x + y * y;
    if (off < best.off) best = { spot: [u, v], off };
    if (off < EXACT * EXACT) break;
    // Differences inwards, so that both places are on the panel.
    const [eu, ev] = [u > 0.5 ? -1e-6 : 1e-6, v > 0.5 ? -1e-6 : 1e-6];
    const [au, av] = [toFlat([u + eu, v]), toFlat([u, v + ev])];
    const [xu, yu] = [(au[0] - fx) / eu, (au[1] - fy) / eu];
    const [xv, yv] = [(av[0] - fx) / ev, (av[1] - fy) / ev];
    let su = 0;
    let sv = 0;
    const heldU = held(u, xu * x + yu * y);
    const heldV = held(v, xv * x + yv * y);
    const det = xu * yv - xv * yu;
    if (heldU && heldV) break;
    // Held at an edge it goes along it, as far as that brings it nearer.
    if (heldU) sv = -(xv * x + yv * y) / (xv * xv + yv * yv || 1);
    else if (heldV) su = -(xu * x + yu * y) / (xu * xu + yu * yu || 1);
    else if (Math.abs(det) < EXACT) break;
    else {
      su = -(x * yv - y * xv) / det;
      sv = -(xu * y - yu * x) / det;
    }
    [u, v] = [clamp(u + su, 0, 1), clamp(v + sv, 0, 1)];
  }
  return best.spot;
}

/** At an end, and pushed beyond it by the way that leads down. */
const held = (t: number, slope: number): boolean => (t <= 0 && slope > 0) || (t >= 1 && slope < 0);
