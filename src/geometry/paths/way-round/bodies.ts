/**
 * Shapes and panels as bodies of flat faces. Round shapes get faces that lie just outside them, so
 * that a string over the faces never cuts into the shape itself.
 */
import type { Panel } from '../../cabin/model';
import { tessellatePanel } from '../../cabin/tessellate-panel';
import type { BoxShape, MeshShape, RingShape, Shape } from '../../input';
import { add, along, cross, direction, dot, scale, sub, type Vec3 } from '../../vector';
import { boxAxes } from '../segment-hits';
import { type Body, bodyOf } from './body';
import { capsuleBody } from './capsule-body';
import { piecesOf } from './pieces';
import { across, closeRings } from './rings';

type Triangle = readonly [number, number, number];

/** Faces round a ring's tube. */
const TUBE = 12;
/** Faces along a ring, and the parts it is cut into: a string through the hole meets only some. */
const ALONG = 48;
const ARCS = 8;

const solids = new WeakMap<Shape, readonly Body[]>();
const sheets = new WeakMap<Panel, Body>();

/** The bodies a shape is made of, kept by its identity. */
export function solidBodies(id: string, shape: Shape): readonly Body[] {
  let made = solids.get(shape);
  if (!made) {
    made = make(id, shape);
    solids.set(shape, made);
  }
  return made[0] === undefined || made[0].id === id ? made : made.map((b) => ({ ...b, id }));
}

/** A panel as a thin sheet that can be passed on either side, kept by its identity. */
export function sheetBody(panel: Panel): Body {
  let made = sheets.get(panel);
  if (!made) {
    const { vertices, triangles } = tessellatePanel(panel);
    made = bodyOf(panel.id, vertices, triangles, true);
    sheets.set(panel, made);
  }
  return made;
}

function make(id: string, shape: Shape): Body[] {
  switch (shape.shape) {
    case 'box':
      return [boxBody(id, shape)];
    case 'capsule':
      return [capsuleBody(id, shape)];
    case 'ring':
      return ringBodies(id, shape);
    case 'mesh':
      return meshBodies(id, shape);
  }
}

function meshBodies(id: string, mesh: MeshShape): Body[] {
  return piecesOf(mesh.vertices, mesh.triangles).map(({ vertices, triangles }) => {
    const volume = signedVolume(vertices, triangles);
    // An open mesh has no inside: a sheet. One wound inward is turned.
    if (!isClosed(vertices.length, triangles)) return bodyOf(id, vertices, triangles, true);
    const wound = volume < 0 ? triangles.map(([a, b, c]) => [a, c, b] as const) : triangles;
    return bodyOf(id, vertices, wound, false);
  });
}

/** Every edge is run along once each way. */
function isClosed(corners: number, triangles: readonly Triangle[]): boolean {
  const ways = new Set<number>();
  for (const [a, b, c] of triangles)
    ways
      .add(a * corners + b)
      .add(b * corners + c)
      .add(c * corners + a);
  if (ways.size === 0 || ways.size < 3 * triangles.length) return false;
  for (const way of ways) {
    const to = way % corners;
    if (!ways.has(to * corners + (way - to) / corners)) return false;
  }
  return true;
}

function signedVolume(vertices: readonly Vec3[], triangles: readonly Triangle[]): number {
  let sum = 0;
  const o = vertices[0] ?? [0, 0, 0];
  for (const [a, b, c] of triangles) {
    const p = sub(vertices[a] as Vec3, o);
    sum += dot(p, cross(sub(vertices[b] as Vec3, o), sub(vertices[c] as Vec3, o)));
  }
  return sum;
}

function boxBody(id: string, box: BoxShape): Body {
  const [x, y, z] = boxAxes(box);
  const vertices: Vec3[] = [];
  for (let k = 0; k < 8; k++) {
    const [i, j, l] = [k & 1 ? 0.5 : -0.5, k & 2 ? 0.5 : -0.5, k & 4 ? 0.5 : -0.5];
    const p = along(along(box.center, x, i * box.size[0]), y, j * box.size[1]);
    vertices.push(along(p, z, l * box.size[2]));
  }
  const quads = [
    [0, 4, 6, 2],
    [1, 3, 7, 5],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 2, 3, 1],
    [4, 5, 7, 6],
  ] as const;
  return bodyOf(
    id,
    vertices,
    quads.flatMap(([a, b, c, d]): Triangle[] => [
      [a, b, c],
      [a, c, d],
    ]),
    false,
  );
}

function ringBodies(id: string, ring: RingShape): Body[] {
  const axis = direction(ring.axis);
  if (!axis) return [];
  const [u, v] = across(axis);
  const radius = ring.diameter / 2;
  const tube =
    ring.thickness / 2 / Math.cos(Math.PI / TUBE) + radius * (1 - Math.cos(Math.PI / ALONG));
  const section = (k: number): Vec3[] => {
    const t = (2 * Math.PI * k) / ALONG;
    const out = add(scale(u, Math.cos(t)), scale(v, Math.sin(t)));
    // Right-handed about the way along the ring.
    return Array.from({ length: TUBE }, (_, j) => {
      const s = (2 * Math.PI * j) / TUBE;
      const p = along(ring.center, out, radius + tube * Math.cos(s));
      return along(p, axis, -tube * Math.sin(s));
    });
  };
  const middle = (points: readonly Vec3[]): Vec3 =>
    scale(points.reduce<Vec3>(add, [0, 0, 0]), 1 / points.length);
  const step = ALONG / ARCS;
  return Array.from({ length: ARCS }, (_, arc) => {
    const rings: Vec3[][] = [];
    // One face over at either end: neighbours overlap.
    for (let k = arc * step - 1; k <= (arc + 1) * step + 1; k++) rings.push(section(k));
    const ends = [middle(rings[0] as Vec3[]), middle(rings[rings.length - 1] as Vec3[])] as const;
    const { vertices, triangles } = closeRings(rings, ends);
    const volume = signedVolume(vertices, triangles);
    const wound = volume < 0 ? triangles.map(([a, b, c]) => [a, c, b] as const) : triangles;
    return bodyOf(id, vertices, wound, false);
  });
}
