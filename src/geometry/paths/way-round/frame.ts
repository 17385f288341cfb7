/** A straight line as sheets are hung on it, and what of bodies is known as seen along it. */
import { cross, direction, distance, sub, type Vec3 } from '../../vector';
import type { Body } from './body';

/** How many half planes hang on a line. */
export const SHEETS = 16;

/** The straight line, two directions square to it, and what of the bodies is known as seen along it. */
export interface Frame {
  from: Vec3;
  to: Vec3;
  along: Vec3;
  u: Vec3;
  v: Vec3;
  reach: number;
  placed: Placed[];
}

/** A body's corners as seen along a frame's line, and its rims in the half planes round that. */
export interface Placed {
  body: Body;
  /** Where its corners begin in `laid`: along the line and two across it, of `chosen` edges alone. */
  corners: number;
  /** Where its edges that a string may bend over begin in `chosen`, and end. */
  first: number;
  last: number;
  /** Where its half planes begin in `starts` and `lengths`. */
  sheets: number;
}

export function frameOf(from: Vec3, to: Vec3): Frame | null {
  const way = direction(sub(to, from));
  if (!way) return null;
  const start: Vec3 = Math.abs(way[2]) < 0.8 ? [0, 0, 1] : [0, 1, 0];
  const u = direction(cross(start, way)) as Vec3;
  const reach = distance(from, to);
  return { from, to, along: way, u, v: cross(way, u), reach, placed: [] };
}
