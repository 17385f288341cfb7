/**
 * Bodies laid along a line: their edges that a string on it may bend over, and those edges' corners
 * as seen along it. One after another into shared lists, which the next question writes over: arrays
 * of their own took as long to make as to fill.
 */
import type { Vec3 } from '../../vector';
import type { Body } from './body';
import { facingEdges } from './facing';
import { type Frame, SHEETS } from './frame';

const TAN = Math.tan((2 * Math.PI) / SHEETS);

/** Three numbers a corner: along the line, and two across it. */
export let laid = new Float64Array(3 * 4096);
let someLaid = 0;
/** Numbers of edges. */
export let chosen = new Int32Array(4096);
let someChosen = 0;
/** The half plane before each corner of the body laid last. */
export let sectors = new Uint8Array(1024);
/** For which body, of all since the beginning, a corner was last looked at; those that are. */
let marks = new Int32Array(1024);
export let listed = new Int32Array(1024);
let generation = 0;

/** Forgets what earlier questions laid. */
export function layNone(): void {
  someLaid = 0;
  someChosen = 0;
}

/** A longer array with the same numbers, where it has to be. */
export function longer<T extends Float64Array | Int32Array>(from: T, least: number): T {
  if (from.length >= least) return from;
  const to = new (from.constructor as new (n: number) => T)(Math.max(least, 2 * from.length));
  to.set(from);
  return to;
}

/**
 * Lays a body's edges and corners.
 * @returns where its corners begin in `laid`, and where its edges begin in `chosen`, and end
 */
export function layEdges(
  frame: Frame,
  body: Body,
): { corners: number; first: number; last: number } {
  const n = body.corners.length;
  const corners = someLaid;
  const first = someChosen;
  const last = chooseEdges(body, frame.from, frame.to);
  someChosen = last;
  someLaid += n;
  laid = longer(laid, someLaid);
  if (sectors.length < n / 3) {
    sectors = new Uint8Array(n);
    marks = new Int32Array(n);
    listed = new Int32Array(n);
  }
  layCorners(frame, body.corners, corners, listCorners(body, first, last));
  return { corners, first, last };
}

/** Lists the edges that a string between two places may bend over; where the list ends. */
function chooseEdges(body: Body, from: Vec3, to: Vec3): number {
  const n = body.edges.length / 2;
  chosen = longer(chosen, someChosen + n);
  const out = chosen;
  let k = someChosen;
  const near = facingEdges(body, from);
  const far = near && facingEdges(body, to);
  if (!near || !far) for (let e = 0; e < n; e++, k++) out[k] = e;
  else
    for (let w = 0; w < near.length; w++)
      for (
        let left = ~((near[w] as number) | (far[w] as number));
        left !== 0;
        left &= left - 1, k++
      )
        out[k] = 32 * w + 31 - Math.clz32(left & -left);
  return k;
}

/** Lists the corners of the body's edges that were chosen, each once; how many. */
export function listCorners({ edges }: Body, first: number, last: number): number {
  const [picked, mark, list] = [chosen, marks, listed];
  generation += 1;
  const here = generation;
  let some = 0;
  for (let k = first; k < last; k++) {
    const e = 2 * (picked[k] as number);
    const i = edges[e] as number;
    const j = edges[e + 1] as number;
    if (mark[i] !== here) {
      mark[i] = here;
      list[some] = i;
      some += 1;
    }
    if (mark[j] !== here) {
      mark[j] = here;
      list[some] = j;
      some += 1;
    }
  }
  return some;
}

/** Lays the listed corners along the frame's line. */
function layCorners(
  { from, along, u, v }: Frame,
  places: Float64Array,
  start: number,
  some: number,
) {
  // Locals: a loop reads them faster than what the module may have changed meanwhile.
  const [at, sector, list] = [laid, sectors, listed];
  const [fx, fy, fz] = from;
  const [ax, ay, az] = along;
  const [ux, uy, uz] = u;
  const [vx, vy, vz] = v;
  for (let k = 0; k < some; k++) {
    const i = list[k] as number;
    const c = 3 * i;
    const p = (places[c] as number) - fx;
    const q = (places[c + 1] as number) - fy;
    const r = (places[c + 2] as number) - fz;
    const y = p * ux + q * uy + r * uz;
    const z = p * vx + q * vy + r * vz;
    at[start + c] = p * ax + q * ay + r * az;
    at[start + c + 1] = y;
    at[start + c + 2] = z;
    sector[i] = sectorOf(y, z);
  }
}

/**
 * The last half plane before a direction, or on it: by comparing, since there are many corners, and
 * by counting, since which way each comparison falls cannot be foretold.
 */
function sectorOf(y: number, z: number): number {
  const a = Math.abs(y);
  const b = Math.abs(z);
  const quarter = (Number(y > 0) << 3) | (Number(z > 0) << 2);
  const eighth = Number(b >= TAN * a) + Number(b >= a) + Number(TAN * b >= a);
  return SECTORS[quarter + eighth] as number;
}
/** By quarter: neither coordinate above 0, the second, the first, both. */
const SECTORS = Uint8Array.of(8, 9, 10, 11, 7, 6, 5, 4, 15, 14, 13, 12, 0, 1, 2, 3);
