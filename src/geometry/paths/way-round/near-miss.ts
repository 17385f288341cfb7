/** How near a body or a panel's edge comes to a straight line that it does not cross. */
import { distance, dot, mix, sub, type Vec3 } from '../../vector';
import type { Body } from './body';
import { edgeOf } from './string';

export interface NearMiss {
  id: string;
  /** From the line to the edge, mm. */
  distance: number;
  /** The place on the edge. */
  point: Vec3;
  /** The place on the line, and how far that is from its start. */
  onLine: Vec3;
  at: number;
}

/**
 * The smallest distance from a segment to the edges a body stands out with, mm. Round shapes are
 * taken by their faces, which lie at most about 1.7 % of their radius outside them.
 * @returns null where nothing is nearer than `within`
 */
export function nearMiss(from: Vec3, to: Vec3, body: Body, within: number): NearMiss | null {
  if (farFrom(from, to, body, within)) return null;
  const reach = distance(from, to);
  let best: NearMiss | null = null;
  let least = within;
  for (let e = 0; 2 * e < body.edges.length; e++) {
    const [p, q] = edgeOf(body, e);
    const [s, t] = nearestParts(from, to, p, q);
    const onLine = mix(from, to, s);
    const point = mix(p, q, t);
    const gap = distance(onLine, point);
    if (!(gap < least)) continue;
    least = gap;
    best = { id: body.id, distance: gap, point, onLine, at: s * reach };
  }
  return best;
}

/** True where the boxes round a segment and a body are farther apart than `within`. */
function farFrom(from: Vec3, to: Vec3, { bounds }: Body, within: number): boolean {
  let sum = 0;
  for (const k of [0, 1, 2] as const) {
    const low = Math.min(from[k], to[k]) - (bounds[3 + k] as number);
    const high = (bounds[k] as number) - Math.max(from[k], to[k]);
    const gap = Math.max(0, low, high);
    sum += gap * gap;
  }
  return sum > within * within;
}

const clampPart = (x: number): number => Math.min(1, Math.max(0, x));

/**
 * Where two segments come nearest, as parts of each.
 * Source: Ericson, Real-Time Collision Detection (2005), section 5.1.9.
 */
export function nearestParts(a: Vec3, b: Vec3, p: Vec3, q: Vec3): [number, number] {
  const d = sub(b, a);
  const e = sub(q, p);
  const r = sub(a, p);
  const dd = dot(d, d);
  const ee = dot(e, e);
  const er = dot(e, r);
  if (dd === 0) return [0, ee === 0 ? 0 : clampPart(er / ee)];
  const dr = dot(d, r);
  if (ee === 0) return [clampPart(-dr / dd), 0];
  const de = dot(d, e);
  const det = dd * ee - de * de;
  const s = det > 1e-12 * dd * ee ? clampPart((de * er - dr * ee) / det) : 0;
  const t = (de * s + er) / ee;
  if (t < 0) return [clampPart(-dr / dd), 0];
  if (t > 1) return [clampPart((de - dr) / dd), 1];
  return [s, t];
}
