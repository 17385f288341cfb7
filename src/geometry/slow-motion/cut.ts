import type { MeshShape } from '../input';
import type { Vec3 } from '../vector';

/** A place seen from above, straight ahead up the page: across to the right, and rearward; mm. */
export type Spot = readonly [across: number, rearward: number];

export const fromAbove = ([x, y]: Vec3): Spot => [y, x];

type Triangles = Pick<MeshShape, 'vertices' | 'triangles'>;

/** Where a mesh is cut by the horizontal plane at `height`: lines through neighbouring triangles. */
export function cutAt({ vertices, triangles }: Triangles, height: number): Spot[][] {
  const pieces: [Spot, Spot][] = [];
  for (const triangle of triangles) {
    const met: Spot[] = [];
    for (let k = 0; k < 3; k++) {
      const a = vertices[triangle[k] as number] as Vec3;
      const b = vertices[triangle[(k + 1) % 3] as number] as Vec3;
      // Half-open, so that an edge's end counts for one of two edges.
      if (a[2] < height === b[2] < height) continue;
      const t = (height - a[2]) / (b[2] - a[2]);
      met.push([a[1] + t * (b[1] - a[1]), a[0] + t * (b[0] - a[0])]);
    }
    if (met[0] && met[1]) pieces.push([met[0], met[1]]);
  }
  return joined(pieces);
}

/** Ends nearer than this are one, mm: rounding of one cut point told by two triangles. */
const SAME = 0.01;

const same = (a: Spot, b: Spot): boolean =>
  Math.abs(a[0] - b[0]) < SAME && Math.abs(a[1] - b[1]) < SAME;

/** Pieces end to end as long lines; their order and their sense do not matter. */
function joined(pieces: readonly [Spot, Spot][]): Spot[][] {
  const left = [...pieces];
  const lines: Spot[][] = [];
  for (let piece = left.pop(); piece; piece = left.pop()) {
    const line: Spot[] = [...piece];
    for (;;) {
      const [first, last] = [line[0] as Spot, line[line.length - 1] as Spot];
      const i = left.findIndex((one) => one.some((end) => same(end, first) || same(end, last)));
      if (i < 0) break;
      const [[a, b]] = left.splice(i, 1) as [[Spot, Spot]];
      if (same(a, last)) line.push(b);
      else if (same(b, last)) line.push(a);
      else if (same(a, first)) line.unshift(b);
      else line.unshift(a);
    }
    lines.push(line);
  }
  return lines;
}
