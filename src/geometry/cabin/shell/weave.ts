/**
 * How panels are woven from points they share. All of the shell is laid out for the right-hand half
 * (y positive, outboard); the left half is its exact mirror image.
 */
import { add, mirrorY, mix, scale, type Vec3 } from '../../vector';

/** Nine control points of a patch, as in model.ts. */
export type Net = readonly Vec3[];

/** Middle control points of curved edges: south v = 0, north v = 1, west u = 0, east u = 1. */
export interface Bends {
  south?: Vec3;
  north?: Vec3;
  west?: Vec3;
  east?: Vec3;
  /** Added to the middle control point: four times what it lifts the middle of the panel. */
  lift?: Vec3;
}

/** A patch from its corners (u, v) = (0,0) (1,0) (1,1) (0,1); edges not bent are straight. */
export function quad(a: Vec3, b: Vec3, c: Vec3, d: Vec3, bends: Bends = {}): Net {
  const south = bends.south ?? mix(a, b, 0.5);
  const east = bends.east ?? mix(b, c, 0.5);
  const north = bends.north ?? mix(d, c, 0.5);
  const west = bends.west ?? mix(a, d, 0.5);
  // The middle point of a Coons patch: it follows all four edges and adds no bulge of its own.
  const edges = scale(add(add(south, north), add(west, east)), 0.5);
  const corners = scale(add(add(a, b), add(c, d)), 0.25);
  const middle: Vec3 = [
    edges[0] - corners[0] + (bends.lift?.[0] ?? 0),
    edges[1] - corners[1] + (bends.lift?.[1] ?? 0),
    edges[2] - corners[2] + (bends.lift?.[2] ?? 0),
  ];
  return [a, south, b, west, middle, east, d, north, c];
}

/** A row of a panel across the car: right end and middle control point; the left end mirrors. */
export interface AcrossRow {
  right: Vec3;
  /** x and z of the middle control point; left out, the row is straight. */
  middle?: readonly [x: number, z: number];
}

/** A patch across the car, u from its left to its right, from three rows in v. */
export function across(low: AcrossRow, mid: AcrossRow, high: AcrossRow): Net {
  return [low, mid, high].flatMap(({ right, middle }) => [
    mirrorY(right),
    [middle ? middle[0] : right[0], 0, middle ? middle[1] : right[2]] as Vec3,
    right,
  ]);
}

/** A straight-sided patch across the car from its two right-hand ends. */
export const acrossFlat = (low: Vec3, high: Vec3): Net =>
  across({ right: low }, { right: mix(low, high, 0.5) }, { right: high });

/** Where the straight line through a and b has that x. */
export const atX = (a: Vec3, b: Vec3, x: number): Vec3 => {
  const p = mix(a, b, (x - a[0]) / (b[0] - a[0]));
  return [x, p[1], p[2]];
};

/** Where the straight line through a and b has that z. */
export const atZ = (a: Vec3, b: Vec3, z: number): Vec3 => {
  const p = mix(a, b, (z - a[2]) / (b[2] - a[2]));
  return [p[0], p[1], z];
};

/** Control points of the piece of a quadratic curve between parameters s and t. */
export function curvePiece(curve: readonly [Vec3, Vec3, Vec3], s: number, t: number) {
  const blossom = (p: number, q: number): Vec3 =>
    mix(mix(curve[0], curve[1], p), mix(curve[1], curve[2], p), q);
  return [blossom(s, s), blossom(s, t), blossom(t, t)] as const;
}
