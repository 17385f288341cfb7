/**
 * What the edges of bodies leave in sheets hung on a straight line, and the walk over the top of it.
 * The lists are shared and written over by the next question: made anew each time they took most of
 * the time.
 */

/** Places that sheets meet. */
export interface Met {
  /** Along the line, height above it, and part of the edge. */
  x: Float64Array;
  h: Float64Array;
  part: Float64Array;
  /** Number of the body, and of its edge. */
  body: Int32Array;
  edge: Int32Array;
  /** The place met before on the same sheet, or −1. */
  next: Int32Array;
}

const listsOf = (room: number): Met => ({
  x: new Float64Array(room),
  h: new Float64Array(room),
  part: new Float64Array(room),
  body: new Int32Array(room),
  edge: new Int32Array(room),
  next: new Int32Array(room),
});

let room = 4096;
export let met = listsOf(room);

/** Makes room for so many places, keeping those there are; the lists may be others afterwards. */
export function makeRoom(least: number): Met {
  if (least <= room) return met;
  while (room < least) room *= 2;
  const wider = listsOf(room);
  for (const name of ['x', 'h', 'part', 'body', 'edge', 'next'] as const)
    wider[name].set(met[name]);
  met = wider;
  return met;
}

/** What the last walk went over: numbers of places met, and how many. */
export let rim = new Int32Array(256);
export let walked = 0;

/**
 * From hull corner to hull corner, each time the farthest round to the left (Jarvis 1973). Nothing
 * lies below the line, so the walk from its start comes to its end.
 * @param head the last place met on the sheet, or −1
 * @param at where in `rim` to put what it goes over
 * @returns how long it is
 */
export function walkRim(reach: number, head: number, at: number): number {
  walked = 0;
  if (head < 0) return reach;
  const { x, h, next } = met;
  let over = rim;
  let cx = 0;
  let ch = 0;
  let sum = 0;
  let some = at;
  for (let guard = 0; guard <= room; guard++) {
    let best = -1;
    let bx = reach - cx;
    let bh = -ch;
    for (let k = head; k >= 0; k = next[k] as number) {
      const kx = (x[k] as number) - cx;
      const kh = (h[k] as number) - ch;
      const turn = bx * kh - bh * kx;
      if (turn < -1e-9) continue;
      if (turn <= 1e-9) {
        // In one line with the best: the farther one, if it lies ahead.
        if (kx * bx + kh * bh <= 0 || kx * kx + kh * kh <= bx * bx + bh * bh + 1e-9) continue;
      }
      best = k;
      bx = kx;
      bh = kh;
    }
    sum += Math.sqrt(bx * bx + bh * bh);
    if (best < 0) break;
    cx += bx;
    ch += bh;
    if (some === over.length) {
      over = new Int32Array(2 * some);
      over.set(rim);
      rim = over;
    }
    over[some] = best;
    some += 1;
  }
  walked = some - at;
  return sum;
}
