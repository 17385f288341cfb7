/** The lines a draughtsman would draw: rims, folds and outlines of a solid. */
import { cross, direction, dot, radians, sub, type Vec3 } from '../../geometry';
import type { Camera, Projected } from './camera';
import { welded } from './normals';
import { type Solid, turn } from './solids';

/** `outline`: where the solid ends against what lies behind; `fold`: inside of it. */
export type EdgeKind = 'outline' | 'fold';

export interface Edge {
  kind: EdgeKind;
  from: Projected;
  to: Projected;
}

/** Folds sharper than this are drawn; softer ones are roundings. */
const FOLD = Math.cos(radians(38));
interface Side {
  from: number;
  to: number;
  /** Triangles along it: one on a rim, two else. */
  first: number;
  second: number;
}

const sidesOf = new WeakMap<Solid['triangles'], readonly Side[]>();

/** Every side of every triangle once, vertices at one place counted as one. */
function sides({ vertices, triangles }: Solid): readonly Side[] {
  const known = sidesOf.get(triangles);
  if (known) return known;
  const weld = welded(vertices);
  const found = new Map<number, Side>();
  triangles.forEach((triangle, number) => {
    for (let k = 0; k < 3; k++) {
      const a = weld[triangle[k] as number] as number;
      const b = weld[triangle[(k + 1) % 3] as number] as number;
      if (a === b) continue;
      const key = Math.min(a, b) * vertices.length + Math.max(a, b);
      const side = found.get(key);
      if (!side) found.set(key, { from: a, to: b, first: number, second: -1 });
      else side.second = number;
    }
  });
  const list = [...found.values()];
  sidesOf.set(triangles, list);
  return list;
}

/** The edges of a solid as one view shows them, hidden ones among them. */
export function edgesOf(solid: Solid, camera: Camera): Edge[] {
  const { vertices, triangles, oneSided } = solid;
  const flat = vertices.map((vertex) => camera.project(vertex));
  const facing = triangles.map(
    ([a, b, c]) => turn(flat[a] as Projected, flat[b] as Projected, flat[c] as Projected) < 0,
  );
  const normals = new Map<number, Vec3 | null>();
  const normal = (number: number): Vec3 | null => {
    let found = normals.get(number);
    if (found === undefined) {
      const [a, b, c] = (triangles[number] as readonly number[]).map(
        (i) => vertices[i] as Vec3,
      ) as [Vec3, Vec3, Vec3];
      found = direction(cross(sub(b, a), sub(c, a)));
      normals.set(number, found);
    }
    return found;
  };
  const edges: Edge[] = [];
  for (const { from, to, first, second } of sides(solid)) {
    const [here, there] = [facing[first], second < 0 ? undefined : facing[second]];
    if (oneSided && !here && !there) continue;
    let kind: EdgeKind | null = null;
    if (there === undefined || here !== there) kind = 'outline';
    else {
      const [p, q] = [normal(first), normal(second)];
      if (p && q && dot(p, q) < FOLD) kind = 'fold';
    }
    if (kind) edges.push({ kind, from: flat[from] as Projected, to: flat[to] as Projected });
  }
  return edges;
}
