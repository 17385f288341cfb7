/** Outlines drawn on a panel: flat polygons, their triangles, and the same with a wall inside. */

export type Point2 = readonly [number, number];

const cross2 = (o: Point2, a: Point2, b: Point2): number =>
  (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0]);

/** Twice the signed area is summed; positive anticlockwise. */
export function areaOf(polygon: readonly Point2[]): number {
  let sum = 0;
  for (const [i, [x, y]] of polygon.entries()) {
    const [u, v] = polygon[(i + 1) % polygon.length] as Point2;
    sum += x * v - u * y;
  }
  return sum / 2;
}

function cuts(a: Point2, b: Point2, c: Point2, d: Point2): boolean {
  return cross2(a, b, c) * cross2(a, b, d) < 0 && cross2(c, d, a) * cross2(c, d, b) < 0;
}

/** True when no edge crosses another. */
export function isSimple(polygon: readonly Point2[]): boolean {
  const n = polygon.length;
  const at = (i: number) => polygon[i % n] as Point2;
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++) if (cuts(at(i), at(i + 1), at(j), at(j + 1))) return false;
  return n >= 3;
}

/**
 * The polygon with every edge moved inward by `wall`; `null` where the walls meet and nothing is
 * left. Given and returned anticlockwise.
 */
export function inset(polygon: readonly Point2[], wall: number): Point2[] | null {
  const n = polygon.length;
  const way = (i: number): Point2 => {
    const [a, b] = [polygon[(i + n) % n] as Point2, polygon[(i + 1 + n) % n] as Point2];
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const l = Math.sqrt(dx * dx + dy * dy) || 1;
    return [dx / l, dy / l];
  };
  const out = polygon.map(([x, y], i): Point2 => {
    const [before, after] = [way(i - 1), way(i)];
    // Both edges' inward normals, and the corner where the moved edges meet.
    const [ax, ay, bx, by] = [-before[1], before[0], -after[1], after[0]];
    const k = wall / Math.max(1e-6, 1 + ax * bx + ay * by);
    return [x + (ax + bx) * k, y + (ay + by) * k];
  });
  for (let i = 0; i < n; i++) {
    const [a, b] = [out[i] as Point2, out[(i + 1) % n] as Point2];
    const [dx, dy] = way(i);
    if ((b[0] - a[0]) * dx + (b[1] - a[1]) * dy <= 0) return null;
  }
  return areaOf(out) > 0 && isSimple(out) ? out : null;
}

/** Ears cut off one by one (Meisters 1975): triangles of a simple anticlockwise polygon. */
export function triangulate(polygon: readonly Point2[]): [number, number, number][] {
  const left = polygon.map((_, i) => i);
  const triangles: [number, number, number][] = [];
  const at = (i: number) => polygon[i] as Point2;
  while (left.length > 3) {
    const n = left.length;
    let ear = -1;
    for (let k = 0; k < n && ear < 0; k++) {
      const [i, j, l] = [left[(k + n - 1) % n], left[k], left[(k + 1) % n]] as number[] as [
        number,
        number,
        number,
      ];
      const [a, b, c] = [at(i), at(j), at(l)];
      if (cross2(a, b, c) <= 0) continue;
      const empty = left.every((m) => {
        if (m === i || m === j || m === l) return true;
        const p = at(m);
        return cross2(a, b, p) < 0 || cross2(b, c, p) < 0 || cross2(c, a, p) < 0;
      });
      if (empty) ear = k;
    }
    // Corners in line have no ear of any area: drop one of them flat.
    const k = Math.max(ear, 0);
    triangles.push([
      left[(k + n - 1) % n] as number,
      left[k] as number,
      left[(k + 1) % n] as number,
    ]);
    left.splice(k, 1);
  }
  if (left.length === 3) triangles.push(left as [number, number, number]);
  return triangles;
}
