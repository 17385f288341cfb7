/** The way round the slow plain way: a net of points on every edge, and the shortest walk on it. */
import type { BoxShape, Vec3 } from '../../../../src/geometry';
import { boxAxes } from '../../../../src/geometry/paths/segment-hits';
import { distance, dot, sub } from '../../../../src/geometry/vector';

interface Inner {
  to(p: Vec3): Vec3;
  half: Vec3;
}

function innerOf(box: BoxShape): Inner {
  const axes = boxAxes(box);
  return {
    to: (p) => {
      const d = sub(p, box.center);
      return [dot(d, axes[0]), dot(d, axes[1]), dot(d, axes[2])];
    },
    half: [box.size[0] / 2, box.size[1] / 2, box.size[2] / 2],
  };
}

/** Whether a segment passes through the open inside of a box; touching is not passing. */
function passes({ to, half }: Inner, a: Vec3, b: Vec3): boolean {
  const [p, q] = [to(a), to(b)];
  let [enter, leave] = [0, 1];
  for (const k of [0, 1, 2] as const) {
    const h = half[k] - 1e-7;
    const d = q[k] - p[k];
    if (Math.abs(d) < 1e-12) {
      if (Math.abs(p[k]) >= h) return false;
      continue;
    }
    const [t0, t1] = [(-h - p[k]) / d, (h - p[k]) / d];
    enter = Math.max(enter, Math.min(t0, t1));
    leave = Math.min(leave, Math.max(t0, t1));
  }
  return leave - enter > 1e-9;
}

function edgePoints(box: BoxShape, perEdge: number): Vec3[] {
  const axes = boxAxes(box);
  const points: Vec3[] = [];
  for (const k of [0, 1, 2] as const)
    for (const s of [-0.5, 0.5])
      for (const t of [-0.5, 0.5])
        for (let i = 0; i <= perEdge; i++) {
          const part: [number, number, number] = [0, 0, 0];
          part[k] = i / perEdge - 0.5;
          part[(k + 1) % 3] = s;
          part[(k + 2) % 3] = t;
          let p: Vec3 = box.center;
          for (const m of [0, 1, 2] as const) {
            const by = part[m] * box.size[m];
            const axis = axes[m];
            p = [p[0] + by * axis[0], p[1] + by * axis[1], p[2] + by * axis[2]];
          }
          points.push(p);
        }
  return points;
}

/**
 * Shortest walk from a to b over points on the boxes' edges (Dijkstra), mm: a little too long, by
 * less the more points. Infinity where there is none.
 */
export function exhaustiveWay(a: Vec3, b: Vec3, boxes: readonly BoxShape[], perEdge = 16): number {
  const inner = boxes.map(innerOf);
  const free = (p: Vec3, q: Vec3) => inner.every((box) => !passes(box, p, q));
  if (free(a, b)) return distance(a, b);
  const points = [a, b, ...boxes.flatMap((box) => edgePoints(box, perEdge))];
  const walked = points.map((_, i) => (i === 0 ? 0 : Infinity));
  const left = new Set(points.keys());
  for (;;) {
    let i = -1;
    for (const k of left) if (i < 0 || (walked[k] as number) < (walked[i] as number)) i = k;
    if (i < 0 || i === 1 || walked[i] === Infinity) return walked[1] as number;
    left.delete(i);
    for (const k of left) {
      const sum = (walked[i] as number) + distance(points[i] as Vec3, points[k] as Vec3);
      if (sum < (walked[k] as number) && free(points[i] as Vec3, points[k] as Vec3))
        walked[k] = sum;
    }
  }
}
