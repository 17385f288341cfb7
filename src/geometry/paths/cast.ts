/**
 * What stands on a straight line. The only file that knows the ray library: panels go into one
 * bounding volume tree, mesh obstacles into one each (so moving a seat rebuilds only its own), and
 * boxes, capsules and rings are tested exactly.
 */
import { BufferAttribute, BufferGeometry, DoubleSide, Ray } from 'three';
import { MeshBVH, SAH } from 'three-mesh-bvh';
import type { Obstacle, Panel } from '../cabin/model';
import { tessellatePanel } from '../cabin/tessellate-panel';
import type { MeshShape, Shape } from '../input';
import { END_CLEARANCE, OWN_PANEL_CLEARANCE } from '../tolerance';
import { distance, dot, sub, type Vec3 } from '../vector';
import { boundsOf, segmentBox, segmentCapsule, segmentRing } from './segment-hits';

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

interface Tree {
  bvh: MeshBVH;
  /** First triangle of each panel, to find whose a triangle is; unused for obstacles. */
  ownerOf: Uint16Array | null;
}

const ray = new Ray();

function treeOf(vertices: ArrayLike<number>, index: number[], ownerOf: Uint16Array | null): Tree {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(new Float64Array(vertices), 3));
  geometry.setIndex(index);
  // `indirect` keeps the index as given, so `ownerOf` can be read by triangle number.
  return { bvh: new MeshBVH(geometry, { strategy: SAH, indirect: true }), ownerOf };
}

const meshTrees = new WeakMap<MeshShape, Tree | null>();

function meshTree(shape: MeshShape): Tree | null {
  let tree = meshTrees.get(shape);
  if (tree === undefined) {
    tree =
      shape.triangles.length === 0
        ? null
        : treeOf(shape.vertices.flat(), shape.triangles.flat(), null);
    meshTrees.set(shape, tree);
  }
  return tree;
}

const panelTrees = new WeakMap<readonly Panel[], Tree | null>();

function panelTree(panels: readonly Panel[]): Tree | null {
  const known = panelTrees.get(panels);
  if (known !== undefined) return known;
  const vertices: number[] = [];
  const index: number[] = [];
  const owner: number[] = [];
  panels.forEach((panel, p) => {
    const mesh = tessellatePanel(panel);
    const base = vertices.length / 3;
    for (const v of mesh.vertices) vertices.push(...v);
    for (const t of mesh.triangles) {
      index.push(base + t[0], base + t[1], base + t[2]);
      owner.push(p);
    }
  });
  const tree = owner.length === 0 ? null : treeOf(vertices, index, Uint16Array.from(owner));
  panelTrees.set(panels, tree);
  return tree;
}

function aim(from: Vec3, to: Vec3, reach: number): void {
  ray.origin.set(from[0], from[1], from[2]);
  ray.direction.set(
    (to[0] - from[0]) / reach,
    (to[1] - from[1]) / reach,
    (to[2] - from[2]) / reach,
  );
}

function touchesBounds(from: Vec3, to: Vec3, low: Vec3, high: Vec3): boolean {
  let enter = 0;
  let leave = 1;
  for (let k = 0; k < 3; k++) {
    const s = from[k] as number;
    const d = (to[k] as number) - s;
    const lo = low[k] as number;
    const hi = high[k] as number;
    if (d === 0) {
      if (s < lo || s > hi) return false;
      continue;
    }
    const t0 = (lo - s) / d;
    const t1 = (hi - s) / d;
    enter = Math.max(enter, Math.min(t0, t1));
    leave = Math.min(leave, Math.max(t0, t1));
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
  aim(from, to, reach);
  const hit = tree.bvh.raycastFirst(ray, DoubleSide, END_CLEARANCE, reach - END_CLEARANCE);
  return hit ? hit.distance : null;
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
  const tree = panelTree(panels);
  const solids = obstacles.map((obstacle) => ({ obstacle, bounds: shapeBounds(obstacle.shape) }));

  function panelHits(from: Vec3, to: Vec3, reach: number, spot: SpotStart | null, hits: Hit[]) {
    if (!tree) return;
    aim(from, to, reach);
    const found = tree.bvh.raycast(ray, DoubleSide, END_CLEARANCE, reach - END_CLEARANCE);
    for (const hit of found) {
      // Coming out of a panel's back just after the start: the spot lies on the true curve, a hair
      // outside the triangles. Nothing real is crossed.
      const emerging = hit.face ? hit.face.normal.dot(ray.direction) > 0 : false;
      if (spot && emerging && hit.distance < OWN_PANEL_CLEARANCE) continue;
      const panel = panels[tree.ownerOf?.[hit.faceIndex ?? 0] ?? 0];
      if (panel) hits.push({ id: panel.id, at: hit.distance });
    }
    if (spot && spot.standoff < OWN_PANEL_CLEARANCE && dot(sub(to, from), spot.normal) < 0)
      hits.push({ id: spot.panel, at: 0 });
  }

  return {
    triangleCount: tree?.ownerOf?.length ?? 0,
    crossings(from, to, listener, spot) {
      const reach = distance(from, to);
      if (reach <= 2 * END_CLEARANCE) return [];
      const hits: Hit[] = [];
      panelHits(from, to, reach, spot, hits);
      for (const { obstacle, bounds } of solids) {
        if (isListenersOwn(obstacle, listener)) continue;
        if (!touchesBounds(from, to, bounds[0], bounds[1])) continue;
        const at = hitShape(obstacle.shape, from, to, reach);
        if (at !== null) hits.push({ id: obstacle.id, at });
      }
      hits.sort((x, y) => x.at - y.at);
      return [...new Set(hits.map((hit) => hit.id))];
    },
    isFree(from, to) {
      const reach = distance(from, to);
      if (reach <= 2 * END_CLEARANCE) return true;
      aim(from, to, reach);
      if (tree?.bvh.raycastFirst(ray, DoubleSide, END_CLEARANCE, reach - END_CLEARANCE))
        return false;
      return !solids.some(
        ({ obstacle, bounds }) =>
          touchesBounds(from, to, bounds[0], bounds[1]) &&
          hitShape(obstacle.shape, from, to, reach) !== null,
      );
    },
  };
}
