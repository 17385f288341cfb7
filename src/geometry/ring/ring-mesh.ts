import type { MeshShape } from '../input';
import type { Vec3 } from '../vector';
import type { RingInput } from './types';

/** Round the ring, and over the rim's quarter: within 0.05 mm of round for a ring of 200 mm. */
export const AROUND = 144;
const OVER_RIM = 8;

/**
 * The same closed section at every angle, so the mesh is a closed grid: no gap can open. Z out of
 * the front (z = 0), X to the thick side; triangles counter-clockwise from outside.
 */
export function ringMesh(
  { outer, bore, rimRadius, seat }: RingInput,
  standoff: number,
  cosine: number,
  sine: number,
  around: number = AROUND,
): MeshShape {
  const [R, r] = [outer / 2, bore / 2];
  const back = (radius: number, angle: number) =>
    -(standoff + radius * Math.cos(angle) * sine) / cosine;
  // Radius and height; `null`: on the back.
  const section: [number, number | null][] = [
    [r, null],
    [R, null],
  ];
  if (rimRadius > 0)
    for (let k = 0; k <= OVER_RIM; k++) {
      const turn = (Math.PI / 2) * (k / OVER_RIM);
      section.push([R - rimRadius + rimRadius * Math.cos(turn), rimRadius * (Math.sin(turn) - 1)]);
    }
  else section.push([R, 0]);
  if (seat.kind === 'sunk')
    section.push([seat.recess / 2, 0], [seat.recess / 2, -seat.depth], [r, -seat.depth]);
  else section.push([r, 0]);
  // A recess as wide as the bore, or a rim as wide as the land, leaves a point twice.
  const points = section.filter(([radius, height], k) => {
    const before = section[(k + section.length - 1) % section.length];
    return !(before && Math.abs(before[0] - radius) < 1e-9 && before[1] === height);
  });

  const vertices: Vec3[] = [];
  const triangles: [number, number, number][] = [];
  for (let n = 0; n < around; n++) {
    const angle = (2 * Math.PI * n) / around;
    for (const [radius, height] of points)
      vertices.push([
        radius * Math.cos(angle),
        radius * Math.sin(angle),
        height ?? back(radius, angle),
      ]);
  }
  const m = points.length;
  for (let n = 0; n < around; n++) {
    const [here, next] = [n * m, ((n + 1) % around) * m];
    for (let k = 0; k < m; k++) {
      const l = (k + 1) % m;
      triangles.push([here + k, next + k, next + l], [here + k, next + l, here + l]);
    }
  }
  return { shape: 'mesh', vertices, triangles };
}
