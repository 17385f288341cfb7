import { cross, direction, radians, sub, type Vec3 } from '../../geometry';
import type { Solid } from './solids';

/** Faces that meet more sharply than this keep their own light. */
const ROUNDED = Math.cos(radians(40));
/** Vertices nearer than this are one, mm. */
const WELD = 0.05;

/** For each vertex the first one at its place. */
export function welded(vertices: readonly Vec3[]): number[] {
  const places = new Map<string, number>();
  return vertices.map(([x, y, z], i) => {
    const key = `${Math.round(x / WELD)} ${Math.round(y / WELD)} ${Math.round(z / WELD)}`;
    const at = places.get(key) ?? i;
    places.set(key, at);
    return at;
  });
}

const kept = new WeakMap<Solid['triangles'], Float32Array>();

/**
 * A unit normal for each corner of each triangle (nine numbers a triangle): the mean of the faces
 * that round off there, so that a curved seat is shaded as a curve.
 */
export function cornerNormals({ vertices, triangles }: Solid): Float32Array {
  const known = kept.get(triangles);
  if (known) return known;
  const weld = welded(vertices);
  const faces = triangles.map(([a, b, c]): Vec3 => {
    const p = vertices[a] as Vec3;
    return direction(cross(sub(vertices[b] as Vec3, p), sub(vertices[c] as Vec3, p))) ?? [0, 0, 0];
  });
  const around = new Map<number, number[]>();
  triangles.forEach((triangle, number) => {
    for (const vertex of triangle) {
      const place = weld[vertex] as number;
      const list = around.get(place);
      if (list) list.push(number);
      else around.set(place, [number]);
    }
  });
  const normals = new Float32Array(9 * triangles.length);
  triangles.forEach((triangle, number) => {
    const own = faces[number] as Vec3;
    triangle.forEach((vertex, corner) => {
      let [x, y, z] = [0, 0, 0];
      for (const other of around.get(weld[vertex] as number) ?? []) {
        const face = faces[other] as Vec3;
        if (face[0] * own[0] + face[1] * own[1] + face[2] * own[2] < ROUNDED) continue;
        x += face[0];
        y += face[1];
        z += face[2];
      }
      normals.set(direction([x, y, z]) ?? own, 9 * number + 3 * corner);
    });
  });
  kept.set(triangles, normals);
  return normals;
}
