/** What a string over bodies bends over: in a half plane, or in a sheet that turns about the line. */

import type { Frame, Placed } from './frame';
import { walkSheet } from './half-planes';
import { chosen, laid, listCorners, listed } from './lay-edges';
import { makeRoom, met, rim, walked, walkRim } from './rim-walk';
import type { Sheet } from './sheet-along';
import type { Bend } from './string';

/** Of the body at hand: on which side of a sheet each corner lies, and how high. */
let sides = new Float64Array(1024);
let heights = new Float64Array(1024);

/** What the string over the bodies in one half plane bends over. */
export function rimBends(frame: Frame, placed: readonly Placed[], sheet: number): Bend[] {
  walkSheet(frame, placed, sheet);
  return bendsWalked(placed);
}

/** What the string over the bodies bends over in a sheet that turns about the line. */
export function bendsIn(frame: Frame, placed: readonly Placed[], sheet: Sheet): Bend[] {
  let some = 0;
  for (let b = 0; b < placed.length; b++) {
    const { body, corners, first, last } = placed[b] as Placed;
    const { edges } = body;
    const n = body.corners.length / 3;
    if (sides.length < n) {
      sides = new Float64Array(2 * n);
      heights = new Float64Array(2 * n);
    }
    const [at, side, height, picked, list] = [laid, sides, heights, chosen, listed];
    const those = listCorners(body, first, last);
    for (let k = 0; k < those; k++) {
      const i = list[k] as number;
      const c = corners + 3 * i;
      side[i] = sheet.sideOf(at[c] as number, at[c + 1] as number, at[c + 2] as number);
      height[i] = Number.NaN;
    }
    for (let k = first; k < last; k++) {
      const e = picked[k] as number;
      const i = edges[2 * e] as number;
      const j = edges[2 * e + 1] as number;
      // Closed on one side only: a corner on the sheet is met by some of its edges, not by none.
      if ((side[i] as number) < 0 === (side[j] as number) < 0) continue;
      const ci = corners + 3 * i;
      const cj = corners + 3 * j;
      if (Number.isNaN(height[i] as number)) hang(sheet, i, ci);
      if (Number.isNaN(height[j] as number)) hang(sheet, j, cj);
      const s = side[i] as number;
      const part = s / (s - (side[j] as number));
      const h = (height[i] as number) * (1 - part) + (height[j] as number) * part;
      if (!(h > 0)) continue;
      const lists = makeRoom(some + 1);
      lists.x[some] = (at[ci] as number) * (1 - part) + (at[cj] as number) * part;
      lists.h[some] = h;
      lists.part[some] = part;
      lists.body[some] = b;
      lists.edge[some] = e;
      lists.next[some] = some - 1;
      some += 1;
    }
  }
  walkRim(frame.reach, some - 1, 0);
  return bendsWalked(placed);
}

/** Side and height of one corner, exactly. */
function hang(sheet: Sheet, i: number, corner: number): void {
  const t = sheet.angleAt(laid[corner] as number);
  const c = Math.cos(t);
  const s = Math.sin(t);
  const p = laid[corner + 1] as number;
  const q = laid[corner + 2] as number;
  sides[i] = q * c - p * s;
  heights[i] = p * c + q * s;
}

function bendsWalked(placed: readonly Placed[]): Bend[] {
  const bends: Bend[] = [];
  for (let i = 0; i < walked; i++) {
    const m = rim[i] as number;
    const { body } = placed[met.body[m] as number] as Placed;
    const edge = met.edge[m] as number;
    const part = met.part[m] as number;
    const { corners: c, edges } = body;
    const a = 3 * (edges[2 * edge] as number);
    const b = 3 * (edges[2 * edge + 1] as number);
    const x = c[a] as number;
    const y = c[a + 1] as number;
    const z = c[a + 2] as number;
    bends.push({
      body,
      edge,
      part,
      point: [
        x + ((c[b] as number) - x) * part,
        y + ((c[b + 1] as number) - y) * part,
        z + ((c[b + 2] as number) - z) * part,
      ],
    });
  }
  return bends;
}
