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
  /** Whether {@link crossings} would name nothing; stops at the first hit, so it is quicker. */
  isFree(from: Vec3, to: Vec3, listener?: string | null, spot?: SpotStart | null): boolean;
  triangleCount: number;
}

interface Hit {
  id: string;
  at: number;
}

export interface PanelTree {
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

/** All panels as one tree, kept by the identity of `panels`; null where there is none. */
export function panelTree(panels: readonly Panel[]): PanelTree | null {
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

/**
 * The first box from number `i` on that a segment passes through; six numbers a box, low then high.
 * @returns their number where there is none
 */
function nextTouched(boxes: Float64Array, i: number, from: Vec3, to: Vec3): number {
  const ox = from[0];
  const oy = from[1];
  const oz = from[2];
  const ix = 1 / (to[0] - ox);
  const iy = 1 / (to[1] - oy);
  const iz = 1 / (to[2] - oz);
  const x0 = ix < 0 ? 3 : 0;
  const y0 = iy < 0 ? 4 : 1;
  const z0 = iz < 0 ? 5 : 2;
  const end = boxes.length;
  let b = 6 * i;
  for (; b < end; b += 6) {
    // A segment within a face's plane gives 0 · ∞: not a number, which narrows nothing here.
    let enter = 0;
    let leave = 1;
    let s = ((boxes[b + x0] as number) - ox) * ix;
    let e = ((boxes[b + 3 - x0] as number) - ox) * ix;
    if (s > enter) enter = s;
    if (e < leave) leave = e;
    if (enter > leave) continue;
    s = ((boxes[b + y0] as number) - oy) * iy;
    e = ((boxes[b + 5 - y0] as number) - oy) * iy;
    if (s > enter) enter = s;
    if (e < leave) leave = e;
    if (enter > leave) continue;
    s = ((boxes[b + z0] as number) - oz) * iz;
    e = ((boxes[b + 7 - z0] as number) - oz) * iz;
    if (s > enter) enter = s;
    if (e < leave) leave = e;
    if (enter <= leave) break;
  }
  return b / 6;
}

/** Bounds are taken this much larger, mm: what lies in a face must not be missed by rounding. */
const PAD = 1e-6;

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

/** Axis-aligned bounds of any solid: [low, high]. Kept by the shape. */
export function shapeBounds(shape: Shape): readonly [Vec3, Vec3] {
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

const STOP = () => true;

function isMet(shape: Shape, from: Vec3, to: Vec3, reach: number): boolean {
  if (shape.shape !== 'mesh') return hitShape(shape, from, to, reach) !== null;
  const tree = meshTree(shape);
  const end = END_CLEARANCE / reach;
  return tree !== null && visitCrossed(tree, from, to, end, 1 - end, STOP);
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

/** Whose own lines an obstacle never blocks: a head, torso or arms their own ears', but legs may. */
const ownerOf = ({ occupant }: Obstacle): string | null =>
  occupant && occupant.part !== 'legs' ? occupant.seat : null;

/**
 * Coming out of a panel's back just after the start: the spot lies on the true curve, a hair outside
 * the triangles. Nothing real is crossed.
 */
const isOwnBack = (at: number, emerging: boolean): boolean => emerging && at < OWN_PANEL_CLEARANCE;

const isCrossing = (reach: number) => (_: number, part: number, emerging: boolean) =>
  !isOwnBack(part * reach, emerging);

/** Whether a line from a spot on a panel sets out through that panel. */
const leavesThrough = ({ standoff, normal }: SpotStart, from: Vec3, to: Vec3): boolean =>
  standoff < OWN_PANEL_CLEARANCE && dot(sub(to, from), normal) < 0;

/**
 * Builds the caster for a cabin. Trees are kept by the identity of `panels` and of each mesh, so
 * building it again after a move costs only what moved.
 */
export function buildCaster(panels: readonly Panel[], obstacles: readonly Obstacle[]): Caster {
  const known = panelTree(panels);
  const boxes = new Float64Array(6 * obstacles.length);
  obstacles.forEach(({ shape }, i) => {
    const [low, high] = shapeBounds(shape);
    for (let k = 0; k < 3; k++) {
      boxes[6 * i + k] = (low[k] as number) - PAD;
      boxes[6 * i + 3 + k] = (high[k] as number) + PAD;
    }
  });
  const owners = obstacles.map(ownerOf);
  const some = obstacles.length;

  function panelHits(from: Vec3, to: Vec3, reach: number, spot: SpotStart | null, hits: Hit[]) {
    if (!known) return;
    const end = END_CLEARANCE / reach;
    visitCrossed(known.tree, from, to, end, 1 - end, (triangle, part, emerging) => {
      const at = part * reach;
      if (spot && isOwnBack(at, emerging)) return false;
      const panel = panels[known.ownerOf[triangle] as number];
      if (panel) hits.push({ id: panel.id, at });
      return false;
    });
    if (spot && leavesThrough(spot, from, to)) hits.push({ id: spot.panel, at: 0 });
  }

  return {
    triangleCount: known?.ownerOf.length ?? 0,
    crossings(from, to, listener, spot) {
      const reach = distance(from, to);
      if (reach <= 2 * END_CLEARANCE) return [];
      const hits: Hit[] = [];
      panelHits(from, to, reach, spot, hits);
      for (let i = nextTouched(boxes, 0, from, to); i < some; ) {
        if (listener === null || owners[i] !== listener) {
          const { id, shape } = obstacles[i] as Obstacle;
          const at = hitShape(shape, from, to, reach);
          if (at !== null) hits.push({ id, at });
        }
        i = nextTouched(boxes, i + 1, from, to);
      }
      if (hits.length === 0) return [];
      if (hits.length === 1) return [(hits[0] as Hit).id];
      hits.sort((x, y) => x.at - y.at);
      return [...new Set(hits.map((hit) => hit.id))];
    },
    isFree(from, to, listener = null, spot = null) {
      const reach = distance(from, to);
      if (reach <= 2 * END_CLEARANCE) return true;
      if (known) {
        if (spot && leavesThrough(spot, from, to)) return false;
        const end = END_CLEARANCE / reach;
        const visit = spot ? isCrossing(reach) : STOP;
        if (visitCrossed(known.tree, from, to, end, 1 - end, visit)) return false;
      }
      for (let i = nextTouched(boxes, 0, from, to); i < some; ) {
        if (
          (listener === null || owners[i] !== listener) &&
          isMet((obstacles[i] as Obstacle).shape, from, to, reach)
        )
          return false;
        i = nextTouched(boxes, i + 1, from, to);
      }
      return true;
    },
  };
}
