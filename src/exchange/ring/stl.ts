import type { MeshShape, Vec3 } from '../../geometry';

const HEADER = 80;
const FACET = 50;

/**
 * A mesh as binary STL (3D Systems, StereoLithography Interface Specification, 1989), mm: STL has
 * no units, and mm is what every slicer takes it for. Normals are those of the triangles.
 */
export function stlOf({ vertices, triangles }: MeshShape, title: string): Uint8Array {
  const bytes = new Uint8Array(HEADER + 4 + FACET * triangles.length);
  const view = new DataView(bytes.buffer);
  // A header that begins with "solid" is taken for the text form by some programs.
  bytes.set(new TextEncoder().encode(`Earpath, mm: ${title}`).subarray(0, HEADER));
  view.setUint32(HEADER, triangles.length, true);
  triangles.forEach(([a, b, c], n) => {
    const corners = [a, b, c].map((k) => vertices[k] as Vec3) as [Vec3, Vec3, Vec3];
    const numbers = [...normalOf(...corners), ...corners.flat()];
    for (const [k, value] of numbers.entries())
      view.setFloat32(HEADER + 4 + FACET * n + 4 * k, value, true);
  });
  return bytes;
}

function normalOf(a: Vec3, b: Vec3, c: Vec3): Vec3 {
  const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const [vx, vy, vz] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
  const n: Vec3 = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const size = Math.sqrt(n[0] ** 2 + n[1] ** 2 + n[2] ** 2);
  return size > 0 ? [n[0] / size, n[1] / size, n[2] / size] : [0, 0, 0];
}
