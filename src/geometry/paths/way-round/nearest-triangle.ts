import { along, clamp, cross, direction, dot, sub, type Vec3 } from '../../vector';

/** Where the nearest triangle within reach of a place begins, or −1; nine numbers a triangle. */
export function nearestTriangle(triangles: Float64Array, p: Vec3, within: number): number {
  const [x, y, z] = p;
  let best = -1;
  let least = within * within;
  for (let t = 0; t < triangles.length; t += 9) {
    const ax = (triangles[t] as number) - x;
    const bx = (triangles[t + 3] as number) - x;
    const cx = (triangles[t + 6] as number) - x;
    if (ax > within && bx > within && cx > within) continue;
    if (ax < -within && bx < -within && cx < -within) continue;
    const ay = (triangles[t + 1] as number) - y;
    const by = (triangles[t + 4] as number) - y;
    const cy = (triangles[t + 7] as number) - y;
    if (ay > within && by > within && cy > within) continue;
    if (ay < -within && by < -within && cy < -within) continue;
    const az = (triangles[t + 2] as number) - z;
    const bz = (triangles[t + 5] as number) - z;
    const cz = (triangles[t + 8] as number) - z;
    if (az > within && bz > within && cz > within) continue;
    if (az < -within && bz < -within && cz < -within) continue;
    const square = squareToTriangle([ax, ay, az], [bx, by, bz], [cx, cy, cz]);
    if (square >= least) continue;
    least = square;
    best = t;
  }
  return best;
}

/** Squared distance of the origin from a triangle. */
function squareToTriangle(a: Vec3, b: Vec3, c: Vec3): number {
  const normal = direction(cross(sub(b, a), sub(c, a)));
  if (normal) {
    const isLeft = (q: Vec3, r: Vec3) => dot(cross(q, r), normal) >= 0;
    if (isLeft(a, b) && isLeft(b, c) && isLeft(c, a)) return dot(a, normal) ** 2;
  }
  return Math.min(squareToStretch(a, b), squareToStretch(b, c), squareToStretch(c, a));
}

/** Squared distance of the origin from a straight stretch. */
export function squareToStretch(q: Vec3, r: Vec3): number {
  const d = sub(r, q);
  const square = dot(d, d);
  const t = square > 0 ? clamp(-dot(q, d) / square, 0, 1) : 0;
  const gap = along(q, d, t);
  return dot(gap, gap);
}
