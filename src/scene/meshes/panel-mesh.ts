/**
 * Panels → meshes: the one file that turns the engine's surfaces into drawable ones. Triangles
 * keep the engine's winding (they face the cabin), so leaving out back faces opens the car from
 * whichever side it is looked at.
 */
import { BufferAttribute, BufferGeometry } from 'three';
import {
  distance,
  type Panel,
  patchNormal,
  pointOnPatch,
  tessellate,
  type Vec3,
} from '../../geometry';
import { toneNumber } from '../shading/tones';
import type { Stroke } from './ink';

/** Cells are about this long, mm: fine enough for soft shade painted on their corners. */
const CELL = 70;
const MOST_CELLS = 24;

export interface PanelSurface {
  geometry: BufferGeometry;
  /** Panel of each triangle, as its place in the list given. */
  owner: Uint16Array;
}

function cells(panel: Panel): { nu: number; nv: number } {
  const { control } = panel.patch;
  const span = (a: number, b: number, c: number) =>
    distance(control[a] as Vec3, control[b] as Vec3) +
    distance(control[b] as Vec3, control[c] as Vec3);
  const count = (mm: number) => Math.min(MOST_CELLS, Math.max(2, Math.ceil(mm / CELL)));
  return {
    nu: count(Math.max(span(0, 1, 2), span(6, 7, 8))),
    nv: count(Math.max(span(0, 3, 6), span(2, 5, 8))),
  };
}

/** All panels given as one geometry: position, normal, paint, openness, and the spot (u, v). */
export function panelGeometry(panels: readonly Panel[]): PanelSurface {
  const positions: number[] = [];
  const normals: number[] = [];
  const spots: number[] = [];
  const tones: number[] = [];
  const index: number[] = [];
  const owner: number[] = [];
  panels.forEach((panel, p) => {
    const { nu, nv } = cells(panel);
    const mesh = tessellate(panel.patch, nu, nv);
    const base = positions.length / 3;
    const tone = toneNumber(panel.material);
    mesh.vertices.forEach((vertex, i) => {
      const [u, v] = mesh.uv[i] as [number, number];
      positions.push(...vertex);
      normals.push(...patchNormal(panel.patch, u, v));
      spots.push(u, v);
      tones.push(tone);
    });
    for (const t of mesh.triangles) {
      index.push(base + t[0], base + t[1], base + t[2]);
      owner.push(p);
    }
  });
  const geometry = new BufferGeometry();
  const put = (name: string, values: readonly number[], size: number) =>
    geometry.setAttribute(name, new BufferAttribute(new Float32Array(values), size));
  put('position', positions, 3);
  put('normal', normals, 3);
  put('spot', spots, 2);
  put('tone', tones, 1);
  geometry.setAttribute('openness', new BufferAttribute(new Float32Array(tones.length).fill(1), 1));
  geometry.setIndex(index);
  return { geometry, owner: Uint16Array.from(owner) };
}

const EDGES = [
  [0, 1, 2],
  [2, 5, 8],
  [8, 7, 6],
  [6, 3, 0],
] as const;
/** (u, v) where an edge starts and ends. */
const EDGE_SPOTS = [
  [0, 0, 1, 0],
  [1, 0, 1, 1],
  [1, 1, 0, 1],
  [0, 1, 0, 0],
] as const;
const CURVE_STEPS = 14;
/** Points nearer than this are one, mm. */
const SAME = 0.5;

interface Border {
  points: Vec3[];
  panels: Panel[];
  faces: Vec3[];
}

/**
 * The borders of all panels as strokes, each drawn once: bold where two materials or a real fold
 * meet, thin where a border is only a seam between two like panels, boldest at open rims.
 */
export function panelBorders(panels: readonly Panel[]): Stroke[] {
  const borders = new Map<string, Border>();
  for (const panel of panels) {
    EDGES.forEach((edge, e) => {
      const [a, b, c] = edge.map((i) => panel.patch.control[i] as Vec3) as [Vec3, Vec3, Vec3];
      if (distance(a, c) < SAME && distance(a, b) < SAME) return;
      const [u0, v0, u1, v1] = EDGE_SPOTS[e] as readonly [number, number, number, number];
      const face = patchNormal(panel.patch, (u0 + u1) / 2, (v0 + v1) / 2);
      const ends = [keyOf(a), keyOf(c)].sort();
      const key = `${ends[0]}|${keyOf(b)}|${ends[1]}`;
      const known = borders.get(key);
      if (known) {
        known.panels.push(panel);
        known.faces.push(face);
        return;
      }
      const straight = distance(b, [(a[0] + c[0]) / 2, (a[1] + c[1]) / 2, (a[2] + c[2]) / 2]) < 0.5;
      const steps = straight ? 1 : CURVE_STEPS;
      const points: Vec3[] = [];
      for (let k = 0; k <= steps; k++) {
        const t = k / steps;
        points.push(pointOnPatch(panel.patch, u0 + (u1 - u0) * t, v0 + (v1 - v0) * t));
      }
      borders.set(key, { points, panels: [panel], faces: [face] });
    });
  }
  return [...borders.values()].flatMap(({ points, panels: of, faces }) => {
    const pen = penFor(of, faces);
    const strokes: Stroke[] = [];
    for (let i = 1; i < points.length; i++) {
      strokes.push({
        start: points[i - 1] as Vec3,
        end: points[i] as Vec3,
        tone: 'ink',
        faces: faces.slice(0, 2),
        ...pen,
      });
    }
    return strokes;
  });
}

const keyOf = (p: Vec3): string => p.map((x) => Math.round(x / SAME)).join(',');

/** Pen widths in CSS pixels; by eye. */
function penFor(
  panels: readonly Panel[],
  faces: readonly Vec3[],
): { width: number; strength: number } {
  const [a, b] = panels;
  const [n, m] = faces;
  if (!a || !b || !n || !m) return { width: 1.3, strength: 0.9 };
  const fold = n[0] * m[0] + n[1] * m[1] + n[2] * m[2];
  if (a.material === b.material && fold > 0.97) return { width: 0.8, strength: 0.35 };
  if (a.material === b.material && fold > 0.8) return { width: 0.9, strength: 0.55 };
  return { width: 1.2, strength: 0.85 };
}
