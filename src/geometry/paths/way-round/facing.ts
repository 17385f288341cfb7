/** Edges of a solid that a string to some place cannot bend over, since both faces look at it. */
import type { Vec3 } from '../../vector';
import type { Body } from './body';

/** Places are told apart by cells of this size, mm: those of a map lie close together. */
const CELL = 50;
/** Cells remembered of one solid. */
const KEPT = 4096;
/** Solids with fewer edges are not worth asking. */
const FEW = 32;

const kept = new WeakMap<Body, Map<number, Int32Array>>();

/**
 * One bit an edge, set where both faces beside it look at every place in the cell round `place`. A
 * sheet hung on a line to there cuts the two faces in lines that meet in a point between the place
 * and the solid: no corner of the hull, unless beyond the line's ends. Null where nothing is known.
 */
export function facingEdges(body: Body, place: Vec3): Int32Array | null {
  if (!body.closed || body.edges.length < 2 * FEW) return null;
  let cells = kept.get(body);
  if (!cells) {
    cells = new Map();
    kept.set(body, cells);
  }
  const i = Math.floor(place[0] / CELL);
  const j = Math.floor(place[1] / CELL);
  const k = Math.floor(place[2] / CELL);
  const cell = i + 65536 * (j + 65536 * k);
  let bits = cells.get(cell);
  if (!bits) {
    bits = look(body, (i + 0.5) * CELL, (j + 0.5) * CELL, (k + 0.5) * CELL);
    if (cells.size >= KEPT) cells.clear();
    cells.set(cell, bits);
  }
  return bits;
}

let looks = new Uint8Array(1024);

function look(body: Body, x: number, y: number, z: number): Int32Array {
  const n = body.edges.length / 2;
  const bits = new Int32Array((n + 31) >> 5);
  // No edges beyond the last.
  if (n % 32 !== 0) bits[bits.length - 1] = -1 << (n % 32);
  const faces = body.faces();
  if (!faces) return bits;
  const { planes, beside } = faces;
  const some = planes.length / 4;
  if (looks.length < some) looks = new Uint8Array(2 * some);
  for (let f = 0, p = 0; f < some; f++, p += 4) {
    const a = planes[p] as number;
    const b = planes[p + 1] as number;
    const c = planes[p + 2] as number;
    const off = a * x + b * y + c * z - (planes[p + 3] as number);
    looks[f] = off > (CELL / 2) * (Math.abs(a) + Math.abs(b) + Math.abs(c)) ? 1 : 0;
  }
  for (let e = 0; e < n; e++) {
    const f = beside[2 * e] as number;
    if (f < 0 || looks[f] === 0 || looks[beside[2 * e + 1] as number] === 0) continue;
    bits[e >> 5] = (bits[e >> 5] as number) | (1 << (e & 31));
  }
  return bits;
}
