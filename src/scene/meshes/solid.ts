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
  triangleCount: number;
}

/** Vertices nearer than this are one, mm: meshes come with their patches' seams doubled. */
const WELD = 0.05;

export function solidGeometry(parts: readonly Part[]): Solid {
  const positions: number[] = [];
  const normals: number[] = [];
  const smooth: number[] = [];
  const tones: number[] = [];
  const edges: Solid['edges'] = [];
  for (const part of parts) {
    const welded = weld(part.mesh);
    const faces = welded.triangles.map(([a, b, c]) => {
      const p = welded.vertices[a] as Vec3;
      const n = cross(sub(welded.vertices[b] as Vec3, p), sub(welded.vertices[c] as Vec3, p));
      return { n, unit: direction(n) ?? ([0, 0, 1] as Vec3) };
    });
    const around: number[][] = welded.vertices.map(() => []);
    welded.triangles.forEach((triangle, t) => {
      for (const v of triangle) around[v]?.push(t);
    });
    // Area-weighted means: of all neighbours for the contour, of the like-facing for the light.
    const mean = (vertex: number, like: Vec3 | null): Vec3 => {
      let [x, y, z] = [0, 0, 0];
      for (const t of around[vertex] as number[]) {
        const { n, unit } = faces[t] as { n: Vec3; unit: Vec3 };
        if (like && dot(unit, like) < CREASE) continue;
        x += n[0];
        y += n[1];
        z += n[2];
      }
      return direction([x, y, z]) ?? like ?? [0, 0, 1];
    };
    const outward = welded.vertices.map((_, v) => mean(v, null));
    const tone = toneNumber(part.tone);
    welded.triangles.forEach((triangle, t) => {
      const { unit } = faces[t] as { unit: Vec3 };
      for (const v of triangle) {
        positions.push(...(welded.vertices[v] as Vec3));
        normals.push(...mean(v, unit));
        smooth.push(...(outward[v] as Vec3));
        tones.push(tone);
      }
    });
    edges.push(...sharpEdges(welded, faces));
  }
  const geometry = new BufferGeometry();
  const put = (name: string, values: number[], size: number) =>
    geometry.setAttribute(name, new BufferAttribute(new Float32Array(values), size));
  put('position', positions, 3);
  put('normal', normals, 3);
  put('smoothNormal', smooth, 3);
  put('tone', tones, 1);
  geometry.setAttribute('openness', new BufferAttribute(new Float32Array(tones.length).fill(1), 1));
  return { geometry, edges, triangleCount: tones.length / 3 };
}

interface Welded {
  vertices: Vec3[];
  triangles: [number, number, number][];
}

function weld(mesh: MeshShape): Welded {
  const known = new Map<string, number>();
  const vertices: Vec3[] = [];
  const number = mesh.vertices.map((p) => {
    const key = `${Math.round(p[0] / WELD)},${Math.round(p[1] / WELD)},${Math.round(p[2] / WELD)}`;
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

function sharpEdges(mesh: Welded, faces: readonly { unit: Vec3 }[]): Solid['edges'] {
  const seen = new Map<string, { a: number; b: number; faces: number[] }>();
  mesh.triangles.forEach((triangle, t) => {
    for (let k = 0; k < 3; k++) {
      const a = triangle[k] as number;
      const b = triangle[(k + 1) % 3] as number;
      const key = a < b ? `${a}-${b}` : `${b}-${a}`;
      const edge = seen.get(key);
      if (edge) edge.faces.push(t);
      else seen.set(key, { a, b, faces: [t] });
    }
  });
  const edges: Solid['edges'] = [];
  for (const { a, b, faces: sides } of seen.values()) {
    const [first, second] = sides.map((t) => (faces[t] as { unit: Vec3 }).unit);
    const open = sides.length === 1;
    if (open || (first && second && dot(first, second) < CREASE)) {
      edges.push({ start: mesh.vertices[a] as Vec3, end: mesh.vertices[b] as Vec3 });
    }
  }
  return edges;
}
