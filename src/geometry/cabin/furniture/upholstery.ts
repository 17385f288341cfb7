/** Padded bodies with bolsters: the one section that cushions and backrests are lofted from. */
import type { MeshShape } from '../../input';
import { along, type Vec3 } from '../../vector';
import { loft } from './solid';

/** One cut through a padded body, square to its length. Lengths in mm. */
export interface Station {
  /** Middle of the padded face, before bolsters. */
  face: Vec3;
  /** Unit vector out of the padded face, towards the occupant. */
  out: Vec3;
  halfWidth: number;
  thickness: number;
  /** How far the side bolsters stand out of the face. */
  bolster: number;
}

/** Places across the face, as fractions of the half width, and how much of the bolster each has. */
const FACE: readonly (readonly [number, number])[] = [
  [-1, 0.25],
  [-0.93, 0.85],
  [-0.8, 1],
  [-0.66, 0.55],
  [-0.52, 0],
  [-0.2, 0],
  [0.2, 0],
  [0.52, 0],
  [0.66, 0.55],
  [0.8, 1],
  [0.93, 0.85],
  [1, 0.25],
];
const FACE_COARSE = [0, 2, 4, 7, 9, 11].map((i) => FACE[i] as readonly [number, number]);
/** Places across the back, and how far in from the full thickness. */
const BACK: readonly (readonly [number, number])[] = [
  [0.97, 0.7],
  [0.88, 0.9],
  [0.5, 1],
  [-0.5, 1],
  [-0.88, 0.9],
  [-0.97, 0.7],
];
const BACK_COARSE = [1, 2, 3, 4].map((i) => BACK[i] as readonly [number, number]);

function section(s: Station, fine: boolean): Vec3[] {
  const points: Vec3[] = [];
  const put = (f: number, rise: number) => {
    const p = along(s.face, s.out, rise);
    // Added to the middle's own Y, so that a mirrored seat gets exactly mirrored numbers.
    points.push([p[0], p[1] + f * s.halfWidth, p[2]]);
  };
  for (const [f, k] of fine ? FACE : FACE_COARSE) {
    put(f, k * s.bolster - (Math.abs(f) === 1 ? Math.min(14, s.thickness / 3) : 0));
  }
  for (const [f, k] of fine ? BACK : BACK_COARSE) put(f, -k * s.thickness);
  return points;
}

/** The padded body; `fine` for drawing, otherwise as few triangles as keep its outline. */
export const padded = (stations: readonly Station[], fine: boolean): MeshShape =>
  loft(stations.map((s) => section(s, fine)));

/** Half width of the inset in the middle of the face, as a fraction of the body's. */
const INSET = 0.5;

/** The fluted inset in the middle of the padded face, a few millimetres proud of it. */
export function inset(stations: readonly Station[]): MeshShape {
  const rings = stations.map((s) => {
    const w = s.halfWidth * INSET;
    const at = (f: number, rise: number): Vec3 => {
      const p = along(s.face, s.out, rise);
      return [p[0], p[1] + f * w, p[2]];
    };
    return [at(-1, 1), at(-0.94, 6), at(0.94, 6), at(1, 1), at(0.9, -6), at(-0.9, -6)];
  });
  return loft(rings);
}

/** In between the given stations, so that a drawn face runs smoothly. Catmull–Rom through each. */
export function smooth(stations: readonly Station[], between: number): Station[] {
  const out: Station[] = [];
  const at = (i: number) => stations[Math.min(stations.length - 1, Math.max(0, i))] as Station;
  for (let i = 0; i + 1 < stations.length; i++) {
    const [a, b, c, d] = [at(i - 1), at(i), at(i + 1), at(i + 2)];
    for (let k = 0; k < between; k++) {
      const t = k / between;
      const [t2, t3] = [t * t, t * t * t];
      const w = [
        -0.5 * t + t2 - 0.5 * t3,
        1 - 2.5 * t2 + 1.5 * t3,
        0.5 * t + 2 * t2 - 1.5 * t3,
        -0.5 * t2 + 0.5 * t3,
      ] as const;
      const blend = (pick: (s: Station) => number) =>
        w[0] * pick(a) + w[1] * pick(b) + w[2] * pick(c) + w[3] * pick(d);
      out.push({
        // One Y for a whole body: blending equal numbers would round them.
        face: [blend((s) => s.face[0]), b.face[1], blend((s) => s.face[2])],
        out: b.out,
        halfWidth: Math.max(
          1,
          blend((s) => s.halfWidth),
        ),
        thickness: Math.max(
          1,
          blend((s) => s.thickness),
        ),
        bolster: Math.max(
          0,
          blend((s) => s.bolster),
        ),
      });
    }
  }
  out.push(at(stations.length - 1));
  return out;
}
