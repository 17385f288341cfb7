/**
 * Triangles with paints → one drawable geometry, with normals that stay sharp at real edges, a
 * smooth normal for the contour, and the sharp edges themselves for the pen.
 */
import { BufferAttribute, BufferGeometry } from 'three';
import type { MeshShape, Vec3 } from '../../geometry';
import { cross, direction, dot, sub } from '../../geometry';
import { type Tone, toneNumber } from '../shading/tones';

export interface Part {
  tone: Tone;
  mesh: MeshShape;
}

/** A fold sharper than this is an edge, degrees. By eye. */
const CREASE = Math.cos((38 * Math.PI) / 180);

export interface Solid {
  geometry: BufferGeometry;
  edges: { start: Vec3; end: Vec3 }[];
}

/** Vertices nearer than this are one, mm: meshes come with their patches' seams doubled. */
const WELD = 0.1;

/**
 * @param withEdges false leaves the edges out: figures are drawn by their contour alone
 */
export function solidGeometry(parts: readonly Part[], withEdges = true): Solid {
  const welded = parts.map(({ mesh }) => weld(mesh));
  const corners = welded.reduce((sum, { triangles }) => sum + 3 * triangles.length, 0);
  const position = new Float32Array(3 * corners);
  const normal = new Float32Array(3 * corners);
  const smooth = new Float32Array(3 * corners);
  const tones = new Float32Array(corners);
  const edges: Solid['edges'] = [];
  let at = 0;
  parts.forEach((part, p) => {
    const mesh = welded[p] as Welded;
    const { vertices, triangles } = mesh;
    const faces = triangles.map(([a, b, c]): Face => {
      const o = vertices[a] as Vec3;
      const n = cross(sub(vertices[b] as Vec3, o), sub(vertices[c] as Vec3, o));
      return { n, unit: direction(n) ?? [0, 0, 1] };
    });
    const around: number[][] = vertices.map(() => []);
    triangles.forEach((triangle, t) => {
      for (const v of triangle) around[v]?.push(t);
    });
    const outward = vertices.map((_, v) => meanNormal(faces, around[v] as number[], null));
    const tone = toneNumber(part.tone);
    triangles.forEach((triangle, t) => {
      const { unit } = faces[t] as Face;
      for (const v of triangle) {
        position.set(vertices[v] as Vec3, 3 * at);
        normal.set(meanNormal(faces, around[v] as number[], unit), 3 * at);
        smooth.set(outward[v] as Vec3, 3 * at);
        tones[at] = tone;
        at++;
      }
    });
    if (withEdges) edges.push(...sharpEdges(mesh, faces));
  });
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(position, 3));
  geometry.setAttribute('normal', new BufferAttribute(normal, 3));
  geometry.setAttribute('smoothNormal', new BufferAttribute(smooth, 3));
  geometry.setAttribute('tone', new BufferAttribute(tones, 1));
  geometry.setAttribute('openness', new BufferAttribute(new Float32Array(corners).fill(1), 1));
  return { geometry, edges };
}

interface Face {
  /** Normal as long as twice the area, so that large neighbours count for more. */
  n: Vec3;
  unit: Vec3;
}

/** Mean normal of the faces round a vertex: all for the contour, the like-facing for the light. */
function meanNormal(faces: readonly Face[], around: readonly number[], like: Vec3 | null): Vec3 {
  let [x, y, z] = [0, 0, 0];
  for (const t of around) {
    const { n, unit } = faces[t] as Face;
    if (like && dot(unit, like) < CREASE) continue;
    x += n[0];
    y += n[1];
    z += n[2];
  }
  return direction([x, y, z]) ?? like ?? [0, 0, 1];
}

interface Welded {
  vertices: Vec3[];
  triangles: [number, number, number][];
}

function weld(mesh: MeshShape): Welded {
  const known = new Map<number | string, number>();
  const vertices: Vec3[] = [];
  const number = mesh.vertices.map((p) => {
    const key = cellOf(p);
    let n = known.get(key);
    if (n === undefined) {
      n = vertices.push(p) - 1;
      known.set(key, n);
    }
    return n;
  });
  const triangles: [number, number, number][] = [];
  for (const t of mesh.triangles) {
    const [a, b, c] = [number[t[0]] ?? 0, number[t[1]] ?? 0, number[t[2]] ?? 0];
    if (a !== b && b !== c && c !== a) triangles.push([a, b, c]);
  }
  return { vertices, triangles };
}

/** Cells to each side of zero that fit a third of a double's whole numbers. */
const CELLS = 2 ** 16;

/** One number for a point's cell; words only for points farther out than a car reaches. */
function cellOf(p: Vec3): number | string {
  const [x, y, z] = [Math.round(p[0] / WELD), Math.round(p[1] / WELD), Math.round(p[2] / WELD)];
  const far = Math.max(Math.abs(x), Math.abs(y), Math.abs(z)) >= CELLS;
  if (far) return `${x},${y},${z}`;
  return ((x + CELLS) * 2 * CELLS + (y + CELLS)) * 2 * CELLS + z + CELLS;
}

function sharpEdges(mesh: Welded, faces: readonly Face[]): Solid['edges'] {
  const seen = new Map<number, { a: number; b: number; faces: number[] }>();
  mesh.triangles.forEach((triangle, t) => {
    for (let k = 0; k < 3; k++) {
      const a = triangle[k] as number;
      const b = triangle[(k + 1) % 3] as number;
      const key = a < b ? a * mesh.vertices.length + b : b * mesh.vertices.length + a;
      const edge = seen.get(key);
      if (edge) edge.faces.push(t);
      else seen.set(key, { a, b, faces: [t] });
    }
  });
  const edges: Solid['edges'] = [];
  for (const { a, b, faces: sides } of seen.values()) {
    const [first, second] = sides.map((t) => (faces[t] as Face).unit);
    const open = sides.length === 1;
    if (open || (first && second && dot(first, second) < CREASE)) {
      edges.push({ start: mesh.vertices[a] as Vec3, end: mesh.vertices[b] as Vec3 });
    }
  }
  return edges;
}
