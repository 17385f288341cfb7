/** The ring cut along its thin and its thick side, as a drawing: mm, the panel level underneath. */
import type { Point2 } from '../fit/outline';
import type { RingForm, RingInput } from './types';

export interface RingSectionDrawing {
  /** The cut walls, each closed, the thin one first: x toward the thick side, y out of the panel. */
  walls: readonly [readonly Point2[], readonly Point2[]];
  /** Where the speaker's axis leaves the panel, the middle of the front, and a way on. */
  axis: readonly [Point2, Point2, Point2];
  /** The spot on the panel under the middle of the front, and up along the normal. */
  normal: readonly [Point2, Point2];
  /** The two ends of the front's whole width and of the bore at the front, thin side first. */
  front: readonly [Point2, Point2];
  bore: readonly [Point2, Point2];
  /** The outer edge on the thin and on the thick side, from the back to the front. */
  thin: readonly [Point2, Point2];
  thick: readonly [Point2, Point2];
  /** The two ends of the back on the panel. */
  back: readonly [Point2, Point2];
  /** Where the screws stand in the cut, projected onto it, thin side first; none without screws. */
  screws: readonly Point2[];
  low: Point2;
  high: Point2;
}

/** Points of the rim's quarter in a drawing. */
const OVER_RIM = 8;

/** The origin is the spot: the foot of the front's middle on the panel. */
export function ringSection(
  { outer, bore, rimRadius, seat, screws }: RingInput,
  { wedgeDeg, sections }: RingForm,
): RingSectionDrawing {
  const turn = (wedgeDeg * Math.PI) / 180;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const middle = sections.middle;
  const standoff = middle * c;
  // The ring's own axes, front square to z, turned so that the back lies level.
  const put = (x: number, z: number): Point2 => [c * x - s * z, s * x + c * z + standoff];
  const [R, r] = [outer / 2, bore / 2];
  const depthAt = (x: number) => -(middle + (x * s) / c);
  const wall = (side: 1 | -1): Point2[] => {
    const points: Point2[] = [put(side * r, depthAt(side * r)), put(side * R, depthAt(side * R))];
    if (rimRadius > 0)
      for (let k = 0; k <= OVER_RIM; k++) {
        const a = (Math.PI / 2) * (k / OVER_RIM);
        const x = R - rimRadius + rimRadius * Math.cos(a);
        points.push(put(side * x, rimRadius * (Math.sin(a) - 1)));
      }
    else points.push(put(side * R, 0));
    if (seat.kind === 'sunk') {
      const a = seat.recess / 2;
      points.push(put(side * a, 0), put(side * a, -seat.depth), put(side * r, -seat.depth));
    } else points.push(put(side * r, 0));
    return points;
  };
  const walls = [wall(-1), wall(1)] as const;
  const reach = Math.max(18, 0.3 * outer);
  const axis = [put(0, -middle), put(0, 0), put(0, reach)] as const;
  const under = seat.kind === 'sunk' ? -seat.depth : 0;
  const all = [...walls[0], ...walls[1], ...axis, [0, standoff + reach] as const];
  const end = (k: 0 | 1, f: (...of: number[]) => number) => f(...all.map((p) => p[k]));
  return {
    walls,
    axis,
    normal: [
      [0, 0],
      [0, standoff + reach],
    ],
    front: [put(-R, 0), put(R, 0)],
    bore: [put(-r, under), put(r, under)],
    thin: [put(-R, depthAt(-R)), put(-R, 0)],
    thick: [put(R, depthAt(R)), put(R, 0)],
    back: [put(-R, depthAt(-R)), put(R, depthAt(R))],
    screws: screws ? [put(-screws.circle / 2, under), put(screws.circle / 2, under)] : [],
    low: [end(0, Math.min), end(1, Math.min)],
    high: [end(0, Math.max), end(1, Math.max)],
  };
}
