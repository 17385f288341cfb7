/**
 * Triangles with paints → one drawable geometry, with normals that stay sharp at real edges, a
 * smooth normal for the contour, and the sharp edges themselves for the pen.
 */
import { BufferAttribute, BufferGeometry } from 'three';
import type { MeshShape, Vec3 } from '../../geometry';
import type { Tone } from '../shading/tones';
import { toneNumber } from '../shading/tones';
import { type Faces, faceNormals, meanNormal } from './face-normals';
import { topologyOf, type WeldedTopology } from './topology';

export interface Part {
  tone: Tone;
  mesh: MeshShape;
}

export interface Solid {
  geometry: BufferGeometry;
  edges: { start: Vec3; end: Vec3 }[];
  /**
   * Gives the same triangles other places, in the geometry there is; false, and nothing done, where
   * the parts are not of the same make. Edges are not moved.
   */
  reshape(parts: readonly Part[]): boolean;
}

/**
 * @param withEdges false leaves the edges out: figures are drawn by their contour alone
 */
export function solidGeometry(parts: readonly Part[], withEdges = true): Solid {
  const topologies = parts.map(({ mesh }) => topologyOf(mesh));
  const corners = topologies.reduce((sum, { corner }) => sum + corner.length, 0);
  const position = new Float32Array(3 * corners);
  const normal = new Float32Array(3 * corners);
  const smooth = new Float32Array(3 * corners);
  const tones = new Float32Array(corners);
  const edges: Solid['edges'] = [];
  let at = 0;
  parts.forEach((part, p) => {
    const topology = topologies[p] as WeldedTopology;
    const faces = fill(part.mesh, topology, at, position, normal, smooth);
    tones.fill(toneNumber(part.tone), at, at + topology.corner.length);
    at += topology.corner.length;
    if (withEdges) edges.push(...sharpEdges(part.mesh, topology, faces));
  });
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(position, 3));
  geometry.setAttribute('normal', new BufferAttribute(normal, 3));
  geometry.setAttribute('smoothNormal', new BufferAttribute(smooth, 3));
  geometry.setAttribute('tone', new BufferAttribute(tones, 1));
  geometry.setAttribute('openness', new BufferAttribute(new Float32Array(corners).fill(1), 1));
  return {
    geometry,
    edges,
    reshape(next) {
      const alike =
        next.length === parts.length &&
        next.every(({ tone, mesh }, p) => {
          const known = parts[p];
          return known?.tone === tone && sameMake(known.mesh, mesh);
        });
      if (!alike) return false;
      let from = 0;
      next.forEach(({ mesh }, p) => {
        const topology = topologies[p] as WeldedTopology;
        fill(mesh, topology, from, position, normal, smooth);
        from += topology.corner.length;
      });
      for (const name of ['position', 'normal', 'smoothNormal'])
        geometry.getAttribute(name).needsUpdate = true;
      geometry.boundingSphere = null;
      geometry.boundingBox = null;
      return true;
    },
  };
}

/** Triangles between the same numbers of vertices: lofts of one kind share the very list. */
export const sameMake = (a: MeshShape, b: MeshShape): boolean =>
  a.vertices.length === b.vertices.length &&
  (a.triangles === b.triangles ||
    (a.triangles.length === b.triangles.length &&
      a.triangles.every((t, i) => {
        const u = b.triangles[i];
        return u && t[0] === u[0] && t[1] === u[1] && t[2] === u[2];
      })));

/** Writes one part's corners from the corner numbered `at` on. */
function fill(
  { vertices }: MeshShape,
  topology: WeldedTopology,
  at: number,
  position: Float32Array,
  normal: Float32Array,
  smooth: Float32Array,
): Faces {
  const { corner, vertex } = topology;
  const faces = faceNormals(vertices, topology);
  const outward = new Float32Array(3 * vertex.length);
  for (let v = 0; v < vertex.length; v++) meanNormal(faces, topology, v, null, outward, 3 * v);
  for (let c = 0; c < corner.length; c++) {
    const v = corner[c] as number;
    const to = 3 * (at + c);
    const p = vertices[vertex[v] as number] as Vec3;
    position[to] = p[0];
    position[to + 1] = p[1];
    position[to + 2] = p[2];
    smooth[to] = outward[3 * v] as number;
    smooth[to + 1] = outward[3 * v + 1] as number;
    smooth[to + 2] = outward[3 * v + 2] as number;
    meanNormal(faces, topology, v, (c / 3) | 0, normal, to);
  }
  return faces;
}

function sharpEdges(
  { vertices }: MeshShape,
  { corner, vertex }: WeldedTopology,
  faces: Faces,
): Solid['edges'] {
  const seen = new Map<number, { a: number; b: number; first: number; sharp: boolean }>();
  const edges: Solid['edges'] = [];
  for (let c = 0; c < corner.length; c++) {
    const face = (c / 3) | 0;
    const a = corner[c] as number;
    const b = corner[c % 3 === 2 ? c - 2 : c + 1] as number;
    const key = a < b ? a * vertex.length + b : b * vertex.length + a;
    const edge = seen.get(key);
    // A rim, until its other triangle comes.
    if (!edge) seen.set(key, { a, b, first: face, sharp: true });
    else edge.sharp = faces.creased(edge.first, face);
  }
  const at = (v: number) => vertices[vertex[v] as number] as Vec3;
  for (const { a, b, sharp } of seen.values()) {
    if (sharp) edges.push({ start: at(a), end: at(b) });
  }
  return edges;
}
