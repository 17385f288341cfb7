/** Where a line first meets a body as the engine has it, rather than as it is drawn. */
import { cross, dot, type MeshShape, type Shape, sub, type Vec3 } from '../../geometry';
import { shapeMesh } from '../meshes/shape-mesh';
import type { Ray } from './ray';

const meshes = new WeakMap<Shape, MeshShape>();

function meshOf(shape: Shape): MeshShape {
  let mesh = meshes.get(shape);
  if (!mesh) {
    mesh = shapeMesh(shape);
    meshes.set(shape, mesh);
  }
  return mesh;
}

/**
 * The nearest point within `far`, mm, on either side of the surface; `null` where they do not meet.
 * Asks every triangle: for the few hundred of a body that moves this frame that is sooner done than
 * a tree is built.
 */
export function meetShape(shape: Shape, ray: Ray, far: number): Vec3 | null {
  const { vertices, triangles } = meshOf(shape);
  let nearest = far;
  let met = false;
  for (const [i, j, k] of triangles) {
    const [a, b, c] = [vertices[i] as Vec3, vertices[j] as Vec3, vertices[k] as Vec3];
    // Möller and Trumbore's test.
    const [u, v] = [sub(b, a), sub(c, a)];
    const h = cross(ray.direction, v);
    const det = dot(u, h);
    if (Math.abs(det) < 1e-9) continue;
    const s = sub(ray.origin, a);
    const x = dot(s, h) / det;
    if (x < 0 || x > 1) continue;
    const q = cross(s, u);
    const y = dot(ray.direction, q) / det;
    if (y < 0 || x + y > 1) continue;
    const t = dot(v, q) / det;
    if (t < 0 || t > nearest) continue;
    nearest = t;
    met = true;
  }
  if (!met) return null;
  const { origin, direction } = ray;
  return [
    origin[0] + nearest * direction[0],
    origin[1] + nearest * direction[1],
    origin[2] + nearest * direction[2],
  ];
}
