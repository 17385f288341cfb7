/** A string between two points over the edges of bodies, and pulling it taut. */
import { distance, type Vec3 } from '../../vector';
import type { Body } from './body';

export interface Bend {
  body: Body;
  /** Number of the edge in its body. */
  edge: number;
  /** From the edge's first corner to its second, 0 to 1; outside only for a string let slip. */
  part: number;
  point: Vec3;
}

export function cornerOf(body: Body, corner: number): Vec3 {
  const c = body.corners;
  return [c[3 * corner] as number, c[3 * corner + 1] as number, c[3 * corner + 2] as number];
}

export function edgeOf(body: Body, edge: number): [Vec3, Vec3] {
  return [
    cornerOf(body, body.edges[2 * edge] as number),
    cornerOf(body, body.edges[2 * edge + 1] as number),
  ];
}

export function outwardAt({ body, edge }: Bend): Vec3 {
  const o = body.outward;
  return [o[3 * edge] as number, o[3 * edge + 1] as number, o[3 * edge + 2] as number];
}

export function stringLength(from: Vec3, bends: readonly Bend[], to: Vec3): number {
  let sum = 0;
  let last = from;
  for (const { point } of bends) {
    sum += distance(last, point);
    last = point;
  }
  return sum + distance(last, to);
}

/** The way the string pulls at a bend: the sum of the unit vectors to its neighbours. */
export function pullAt(before: Vec3, at: Vec3, after: Vec3): Vec3 {
  const px = before[0] - at[0];
  const py = before[1] - at[1];
  const pz = before[2] - at[2];
  const qx = after[0] - at[0];
  const qy = after[1] - at[1];
  const qz = after[2] - at[2];
  const p = Math.sqrt(px * px + py * py + pz * pz) || 1;
  const q = Math.sqrt(qx * qx + qy * qy + qz * qz) || 1;
  return [px / p + qx / q, py / p + qy / q, pz / p + qz / q];
}
