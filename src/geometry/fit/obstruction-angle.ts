/** Binocular obstruction of a pillar in plan view: the construction of UN Regulation No. 125. */
import { degrees } from '../vector';
import { EYES_APART, P_TO_EYES } from './eye-points';

/** [x, y] in plan: X rearward, Y to the right; the pillar on the left. */
export type Plan = readonly [number, number];

export interface Construction {
  /** Not less than 0: a post narrower than the eyes are apart hides nothing from both. */
  angleDeg: number;
  /** Where the eyes are, left and right, once the head has turned towards the pillar. */
  eyes: { left: Plan; right: Plan };
  /** The section's places the two lines of sight touch. */
  outer: Plan;
  inner: Plan;
}

/** Bearing from straight ahead, to the right, radians. */
const bearing = (from: Plan, to: Plan): number => Math.atan2(to[1] - from[1], from[0] - to[0]);

/**
 * The head turns about `p` until the line from the left eye past the pillar's outer edge is square
 * to the line between the eyes. The angle lies at the right eye, between the parallel to that line
 * and the tangent to the pillar's inner edge. For the pillar on the right, mirror everything.
 * @param outerSection,innerSection points of the sections S2 and S1
 * @returns `null` where there are no points, or one lies within the eyes' reach of `p`
 */
export function obstructionAngle(
  p: Plan,
  outerSection: readonly Plan[],
  innerSection: readonly Plan[],
): Construction | null {
  const half = EYES_APART / 2;
  let ahead = Infinity;
  let outer: Plan | null = null;
  for (const q of outerSection) {
    const away = Math.sqrt((q[0] - p[0]) ** 2 + (q[1] - p[1]) ** 2);
    if (away <= half) return null;
    // The left eye looks along `ahead`, half the eyes' distance left of p; its line meets q.
    const turn = bearing(p, q) + Math.asin(half / away);
    if (turn < ahead) {
      ahead = turn;
      outer = q;
    }
  }
  if (!outer) return null;
  const [c, s] = [Math.cos(ahead), Math.sin(ahead)];
  const eye = (side: number): Plan => [
    p[0] - P_TO_EYES * c + side * half * s,
    p[1] + P_TO_EYES * s + side * half * c,
  ];
  const eyes = { left: eye(-1), right: eye(1) };
  let tangent = -Infinity;
  let inner: Plan | null = null;
  for (const q of innerSection) {
    const to = bearing(eyes.right, q);
    if (to > tangent) {
      tangent = to;
      inner = q;
    }
  }
  if (!inner) return null;
  return { angleDeg: Math.max(0, degrees(tangent - ahead)), eyes, outer, inner };
}
