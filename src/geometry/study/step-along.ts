import type { Patch } from '../cabin/model';
import { patchPartials } from '../cabin/patch';
import { SAME_POINT } from '../tolerance';
import { length } from '../vector';

export type Along = 'u' | 'v';

/** Gauss–Legendre with five points on −1 to 1: Abramowitz and Stegun, table 25.4. */
const NODES: readonly (readonly [number, number])[] = [
  [0, 0.568888888888889],
  [0.538469310105683, 0.478628670499366],
  [-0.538469310105683, 0.478628670499366],
  [0.906179845938664, 0.236926885056189],
  [-0.906179845938664, 0.236926885056189],
];

/** Pieces a whole line is measured in; the lines are parabolas, so a few are plenty. */
const PIECES = 8;

/** Halvings of what is left of the line: far below a nanometre. */
const HALVINGS = 50;

/**
 * The place `mm` along a panel's surface from (u, v): along u at the same v, or along v at the same
 * u, towards 1 where `mm` is positive. `null` where the panel ends before.
 */
export function stepAlong(
  patch: Patch,
  at: { readonly u: number; readonly v: number },
  along: Along,
  mm: number,
): { u: number; v: number } | null {
  const from = at[along];
  const end = mm > 0 ? 1 : 0;
  const lengthTo = (to: number): number => {
    const step = (to - from) / PIECES;
    let sum = 0;
    for (let piece = 0; piece < PIECES; piece++) {
      for (const [node, weight] of NODES) {
        const t = from + step * (piece + (1 + node) / 2);
        const { du, dv } = patchPartials(patch, along === 'u' ? t : at.u, along === 'v' ? t : at.v);
        sum += weight * length(along === 'u' ? du : dv);
      }
    }
    return (sum * Math.abs(step)) / 2;
  };
  const wanted = Math.abs(mm);
  if (lengthTo(end) < wanted - SAME_POINT) return null;
  let [near, far] = [from, end];
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (near + far) / 2;
    if (lengthTo(middle) < wanted) near = middle;
    else far = middle;
  }
  return along === 'u' ? { u: far, v: at.v } : { u: at.u, v: far };
}
