/** Everything that stands close beside a straight line. */
import type { Obstacle, Panel } from '../../cabin/model';
import type { Shape } from '../../input';
import { add, along, distance, mix, sub, type Vec3 } from '../../vector';
import type { SpotStart } from '../cast';
import { boundsOf } from '../segment-hits';
import { solidBodies } from './bodies';
import { buildEdgeTree, type EdgeTree } from './edge-tree';
import { type NearMiss, nearestEdge, type Zone, zoneRound } from './near-miss';
import { ridgesOf } from './ridges';

/** See {@link WayFinder.nearMisses}. */
export type AskNearMisses = (
  from: Vec3,
  to: Vec3,
  listener: string | null,
  spot: SpotStart | null,
  wavelength: number,
) => NearMiss[];

/** Round shapes' faces lie outside them, by this part of their size at most. */
const FACES = 0.02;

/** A ball and a box that hold a shape's faces. */
interface Bounds {
  center: Vec3;
  radius: number;
  low: Vec3;
  high: Vec3;
}

const known = new WeakMap<Shape, Bounds>();
const trees = new WeakMap<Shape, EdgeTree | null>();

export function buildNearMisses(
  panels: readonly Panel[],
  obstacles: readonly Obstacle[],
): AskNearMisses {
  const rounds = obstacles.map(({ shape }) => boundsOfShape(shape));
  const found = new Float64Array(6);
  return (from, to, listener, spot, wavelength) => {
    const zone = zoneRound(from, to, wavelength);
    if (!zone) return [];
    const nearest = new Map<string, NearMiss>();
    const ask = (id: string, tree: EdgeTree) => {
      if (nearestEdge(zone, tree, nearest.get(id)?.detour ?? Infinity, found))
        nearest.set(id, missOf(id, zone, found));
    };
    obstacles.forEach(({ id, shape, occupant }, i) => {
      if (occupant && occupant.seat === listener && occupant.part !== 'legs') return;
      if (!mayReach(zone, rounds[i] as Bounds)) return;
      const tree = treeOf(id, shape);
      if (tree) ask(id, tree);
    });
    for (const { id, panels: of, tree } of ridgesOf(panels)) {
      // The speaker's own panel is its baffle.
      if (spot && of.includes(spot.panel)) continue;
      ask(id, tree);
    }
    return [...nearest.values()].sort((a, b) => a.detour - b.detour);
  };
}

function missOf(id: string, zone: Zone, found: Float64Array): NearMiss {
  const [detour, gap, at, x, y, z] = found as unknown as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const onLine = along(zone.from, [zone.x, zone.y, zone.z], at);
  return { id, detour, distance: gap, point: [x, y, z], onLine, at };
}

/** Without its faces, which cost far more to make: false where no part of it can be in the zone. */
function mayReach({ from, to, x, y, z, reach, radius: wide }: Zone, bounds: Bounds): boolean {
  const { center, radius, low, high } = bounds;
  for (const k of [0, 1, 2] as const) {
    if (low[k] - wide > Math.max(from[k], to[k])) return false;
    if (high[k] + wide < Math.min(from[k], to[k])) return false;
  }
  const dx = center[0] - from[0];
  const dy = center[1] - from[1];
  const dz = center[2] - from[2];
  const at = dx * x + dy * y + dz * z;
  if (at + radius <= 0 || at - radius >= reach) return false;
  return dx * dx + dy * dy + dz * dz - at * at < (wide + radius) ** 2;
}

function boundsOfShape(shape: Shape): Bounds {
  let bounds = known.get(shape);
  if (!bounds) {
    const least = [Infinity, Infinity, Infinity];
    const most = [-Infinity, -Infinity, -Infinity];
    for (const v of shape.shape === 'mesh' ? shape.vertices : boundsOf(shape))
      for (const k of [0, 1, 2] as const) {
        least[k] = Math.min(least[k] as number, v[k]);
        most[k] = Math.max(most[k] as number, v[k]);
      }
    const low = least as unknown as Vec3;
    const high = most as unknown as Vec3;
    const center = mix(low, high, 0.5);
    const radius = distance(low, center) * (1 + FACES);
    const over: Vec3 = [radius * FACES, radius * FACES, radius * FACES];
    bounds = { center, radius, low: sub(low, over), high: add(high, over) };
    known.set(shape, bounds);
  }
  return bounds;
}

function treeOf(id: string, shape: Shape): EdgeTree | null {
  let tree = trees.get(shape);
  if (tree === undefined) {
    const list: number[] = [];
    for (const { corners, edges } of solidBodies(id, shape))
      for (const corner of edges)
        for (let k = 0; k < 3; k++) list.push(corners[3 * corner + k] as number);
    tree = buildEdgeTree(list);
    trees.set(shape, tree);
  }
  return tree;
}
