/**
 * What the edges of bodies leave in sheets hung on a straight line, and the walk over the top of it.
 * The lists are shared and written over by the next question: made anew each time they took most of
 * the time.
 */

/** Five numbers a place a sheet meets: along, height, part of the edge, whose edge, which edge. */
export const MET = 5;
let room = 4096;
export let mets = new Float64Array(MET * room);
/** The next place on the same sheet. */
let nextMet = new Int32Array(room);
let met = 0;

function double(): void {
  room *= 2;
  const wider = new Float64Array(MET * room);
  wider.set(mets);
  mets = wider;
  const more = new Int32Array(room);
  more.set(nextMet);
  nextMet = more;
}

/** Forgets everything met before. */
export function meetNone(): void {
  met = 0;
}

/**
 * Adds a place that a sheet meets.
 * @param next the place met before on the same sheet, or −1
 * @returns this one
 */
export function meet(
  next: number,
  x: number,
  h: number,
  part: number,
  body: number,
  edge: number,
): number {
  if (met === room) double();
  const m = MET * met;
  const to = mets;
  to[m] = x;
  to[m + 1] = h;
  to[m + 2] = part;
  to[m + 3] = body;
  to[m + 4] = edge;
  nextMet[met] = next;
  met += 1;
  return met - 1;
}

/** What the last walk went over: places in the lists of what was met, and how many. */
export let rim = new Int32Array(256);
export let walked = 0;

/**
 * From hull corner to hull corner, each time the farthest round to the left (Jarvis 1973). Nothing
 * lies below the line, so the walk from its start comes to its end.
 * @param at where in `rim` to put what it goes over
 * @returns how long it is
 */
export function walkRim(reach: number, head: number, at: number): number {
  const places = mets;
  const next = nextMet;
  let cx = 0;
  let ch = 0;
  let sum = 0;
  walked = 0;
  for (let guard = 0; guard <= met; guard++) {
    let best = -1;
    let bx = reach - cx;
    let bh = -ch;
    for (let k = head; k >= 0; k = next[k] as number) {
      const kx = (places[MET * k] as number) - cx;
      const kh = (places[MET * k + 1] as number) - ch;
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
    if (at + walked === rim.length) {
      const wider = new Int32Array(2 * rim.length);
      wider.set(rim);
      rim = wider;
    }
    rim[at + walked] = best;
    walked += 1;
  }
  return sum;
}
