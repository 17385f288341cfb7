/** Everything that stands close beside a straight line. */
import type { Obstacle, Panel } from '../../cabin/model';
import type { Shape } from '../../input';
import { along, type Vec3 } from '../../vector';
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

interface Ball {
  center: Vec3;
  radius: number;
}

const balls = new WeakMap<Shape, Ball>();
const trees = new WeakMap<Shape, EdgeTree | null>();

export function buildNearMisses(
  panels: readonly Panel[],
  obstacles: readonly Obstacle[],
): AskNearMisses {
  const rounds = obstacles.map(({ shape }) => ballOf(shape));
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
      if (!mayReach(zone, rounds[i] as Ball)) return;
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
function mayReach(zone: Zone, { center, radius }: Ball): boolean {
  const [dx, dy, dz] = [
    center[0] - zone.from[0],
    center[1] - zone.from[1],
    center[2] - zone.from[2],
  ];
  const at = dx * zone.x + dy * zone.y + dz * zone.z;
  if (at + radius <= 0 || at - radius >= zone.reach) return false;
  const wide = zone.radius + radius;
  return dx * dx + dy * dy + dz * dz - at * at < wide * wide;
}

function ballOf(shape: Shape): Ball {
  let ball = balls.get(shape);
  if (!ball) {
    const low = [Infinity, Infinity, Infinity];
    const high = [-Infinity, -Infinity, -Infinity];
    const ends = shape.shape === 'mesh' ? shape.vertices : boundsOf(shape);
    for (const v of ends)
      for (const k of [0, 1, 2] as const) {
        low[k] = Math.min(low[k] as number, v[k]);
        high[k] = Math.max(high[k] as number, v[k]);
      }
    const half = low.map((x, k) => ((high[k] as number) - x) / 2) as [number, number, number];
    const center = half.map((h, k) => (low[k] as number) + h) as unknown as Vec3;
    const radius = Math.sqrt(half[0] ** 2 + half[1] ** 2 + half[2] ** 2);
    ball = { center, radius: radius * (1 + FACES) };
    balls.set(shape, ball);
  }
  return ball;
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
