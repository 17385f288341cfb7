/**
 * What stands on a straight line: panels go into one tree of triangles, mesh obstacles into one
 * each (so moving a seat rebuilds only its own), and boxes, capsules and rings are tested exactly.
 */
import type { Obstacle, Panel } from '../cabin/model';
import { tessellatePanel } from '../cabin/tessellate-panel';
import type { MeshShape, Shape } from '../input';
import { END_CLEARANCE, OWN_PANEL_CLEARANCE } from '../tolerance';
import { distance, dot, sub, type Vec3 } from '../vector';
import { buildTriangleTree } from './build-triangle-tree';
import { boundsOf, segmentBox, segmentCapsule, segmentRing } from './segment-hits';
import { type TriangleTree, visitCrossed } from './triangle-tree';

/** Where a line begins, when that is a spot on a panel. */
export interface SpotStart {
  panel: string;
  standoff: number;
  normal: Vec3;
}

export interface Caster {
  /** Ids of all that crosses the segment, nearest `from` first, each once. */
  crossings(from: Vec3, to: Vec3, listener: string | null, spot: SpotStart | null): string[];
  /** True when nothing does; stops at the first hit. */
  isFree(from: Vec3, to: Vec3): boolean;
  triangleCount: number;
}

interface Hit {
  id: string;
  at: number;
}

interface PanelTree {
  tree: TriangleTree;
  /** Which panel each triangle is of. */
  ownerOf: Uint16Array;
}

const meshTrees = new WeakMap<MeshShape, TriangleTree | null>();

function meshTree(shape: MeshShape): TriangleTree | null {
  let tree = meshTrees.get(shape);
  if (tree === undefined) {
    tree = buildTriangleTree(shape.vertices, shape.triangles);
    meshTrees.set(shape, tree);
  }
  return tree;
}

const panelTrees = new WeakMap<readonly Panel[], PanelTree | null>();

function panelTree(panels: readonly Panel[]): PanelTree | null {
  const known = panelTrees.get(panels);
  if (known !== undefined) return known;
  const vertices: Vec3[] = [];
  const triangles: [number, number, number][] = [];
  const owner: number[] = [];
  panels.forEach((panel, p) => {
    const mesh = tessellatePanel(panel);
    const base = vertices.length;
    for (const v of mesh.vertices) vertices.push(v);
    for (const [a, b, c] of mesh.triangles) {
      triangles.push([base + a, base + b, base + c]);
      owner.push(p);
    }
  });
  const tree = buildTriangleTree(vertices, triangles);
  const made = tree && { tree, ownerOf: Uint16Array.from(owner) };
  panelTrees.set(panels, made);
  return made;
}

/** Whether a segment passes through box number `i`; six numbers a box, low then high. */
function touches(boxes: Float64Array, i: number, from: Vec3, to: Vec3): boolean {
  let enter = 0;
  let leave = 1;
  for (let k = 0; k < 3; k++) {
    const s = from[k] as number;
    const d = (to[k] as number) - s;
    const lo = boxes[6 * i + k] as number;
    const hi = boxes[6 * i + 3 + k] as number;
    if (d === 0) {
      if (s < lo || s > hi) return false;
      continue;
    }
    const t0 = (lo - s) / d;
    const t1 = (hi - s) / d;
    if (t0 < t1) {
      if (t0 > enter) enter = t0;
      if (t1 < leave) leave = t1;
    } else {
      if (t1 > enter) enter = t1;
      if (t0 < leave) leave = t0;
    }
    if (enter > leave) return false;
  }
  return true;
}

function meshBounds(shape: MeshShape): readonly [Vec3, Vec3] {
  const low = [Infinity, Infinity, Infinity] as [number, number, number];
  const high = [-Infinity, -Infinity, -Infinity] as [number, number, number];
  for (const v of shape.vertices) {
    for (const k of [0, 1, 2] as const) {
      low[k] = Math.min(low[k], v[k]);
      high[k] = Math.max(high[k], v[k]);
    }
  }
  return [low, high];
}

const boundsCache = new WeakMap<Shape, readonly [Vec3, Vec3]>();

function shapeBounds(shape: Shape): readonly [Vec3, Vec3] {
  let bounds = boundsCache.get(shape);
  if (!bounds) {
    bounds = shape.shape === 'mesh' ? meshBounds(shape) : boundsOf(shape);
    boundsCache.set(shape, bounds);
  }
  return bounds;
}

function hitMesh(shape: MeshShape, from: Vec3, to: Vec3, reach: number): number | null {
  const tree = meshTree(shape);
  if (!tree) return null;
  const end = END_CLEARANCE / reach;
  let first: number | null = null;
  visitCrossed(tree, from, to, end, 1 - end, (_, at) => {
    if (first === null || at < first) first = at;
    return false;
  });
  return first === null ? null : first * reach;
}

function hitShape(shape: Shape, from: Vec3, to: Vec3, reach: number): number | null {
  switch (shape.shape) {
    case 'box':
      return segmentBox(from, to, shape);
    case 'capsule':
      return segmentCapsule(from, to, shape);
    case 'ring':
      return segmentRing(from, to, shape);
    case 'mesh':
      return hitMesh(shape, from, to, reach);
  }
}

/** The listener's own head, torso and arms never stand before their own ears; the legs may. */
function isListenersOwn(obstacle: Obstacle, listener: string | null): boolean {
  const own = obstacle.occupant;
  return !!own && own.seat === listener && own.part !== 'legs';
}

/**
 * Builds the caster for a cabin. Trees are kept by the identity of `panels` and of each mesh, so
 * building it again after a move costs only what moved.
 */
export function buildCaster(panels: readonly Panel[], obstacles: readonly Obstacle[]): Caster {
  const known = panelTree(panels);
  const boxes = Float64Array.from(obstacles.flatMap(({ shape }) => shapeBounds(shape).flat()));

  function panelHits(from: Vec3, to: Vec3, reach: number, spot: SpotStart | null, hits: Hit[]) {
    if (!known) return;
    const end = END_CLEARANCE / reach;
    visitCrossed(known.tree, from, to, end, 1 - end, (triangle, part, emerging) => {
      const at = part * reach;
      // Coming out of a panel's back just after the start: the spot lies on the true curve, a hair
      // outside the triangles. Nothing real is crossed.
      if (spot && emerging && at < OWN_PANEL_CLEARANCE) return false;
      const panel = panels[known.ownerOf[triangle] as number];
      if (panel) hits.push({ id: panel.id, at });
      return false;
    });
    if (spot && spot.standoff < OWN_PANEL_CLEARANCE && dot(sub(to, from), spot.normal) < 0)
      hits.push({ id: spot.panel, at: 0 });
  }

  return {
    triangleCount: known?.ownerOf.length ?? 0,
    crossings(from, to, listener, spot) {
      const reach = distance(from, to);
      if (reach <= 2 * END_CLEARANCE) return [];
      const hits: Hit[] = [];
      panelHits(from, to, reach, spot, hits);
      for (let i = 0; i < obstacles.length; i++) {
        if (!touches(boxes, i, from, to)) continue;
        const obstacle = obstacles[i] as Obstacle;
        if (isListenersOwn(obstacle, listener)) continue;
        const at = hitShape(obstacle.shape, from, to, reach);
        if (at !== null) hits.push({ id: obstacle.id, at });
      }
      if (hits.length === 0) return [];
      hits.sort((x, y) => x.at - y.at);
      return [...new Set(hits.map((hit) => hit.id))];
    },
    isFree(from, to) {
      const reach = distance(from, to);
      if (reach <= 2 * END_CLEARANCE) return true;
      const end = END_CLEARANCE / reach;
      if (known && visitCrossed(known.tree, from, to, end, 1 - end, () => true)) return false;
      return !obstacles.some(
        ({ shape }, i) => touches(boxes, i, from, to) && hitShape(shape, from, to, reach) !== null,
      );
    },
  };
}
