/** Everything that stands close beside a straight line. */
import type { Obstacle, Panel } from '../../cabin/model';
import type { Shape } from '../../input';
import { add, along, distance, mix, sub, type Vec3 } from '../../vector';
import type { SpotStart } from '../cast';
import { boundsOf } from '../segment-hits';
import { solidBodies } from './bodies';
import { buildEdgeTree, type EdgeTree } from './edge-tree';
import { leastOver, type NearMiss, nearestEdge, type Zone, zoneRound } from './near-miss';
import { ridgesOf } from './ridges';

type Ask<T> = (
  from: Vec3,
  to: Vec3,
  listener: string | null,
  spot: SpotStart | null,
  wavelength: number,
) => T;

/** See {@link WayFinder.nearMisses} and {@link WayFinder.nearestMiss}. */
export interface AskNearMisses {
  all: Ask<NearMiss[]>;
  nearest: Ask<NearMiss | null>;
  least: AskLeast;
}

/** See {@link WayFinder.leastDetour}. */
export type AskLeast = (
  from: Vec3,
  to: Vec3,
  listener: string | null,
  spot: SpotStart | null,
  wavelength: number,
  below: number,
) => number | null;

/** A ridge of two panels and one that meets it end in the same corner: the first listed is told. */
const SAME_DETOUR = 1e-9;

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
  const bounds = obstacles.map(({ shape }) => boundsOfShape(shape));
  const balls = new Float64Array(4 * obstacles.length);
  bounds.forEach(({ center, radius }, i) => {
    balls.set([...center, radius], 4 * i);
  });
  const found = new Float64Array(6);

  /** Asks `each` about the edges of everything of which a part may be in the zone, as listed. */
  function visit(
    zone: Zone,
    listener: string | null,
    spot: SpotStart | null,
    under: () => number,
    each: (id: string, tree: EdgeTree) => void,
  ): void {
    for (let i = 0; i < obstacles.length; i++) {
      if (!(leastOver(zone, balls, i) < under())) continue;
      const { id, shape, occupant } = obstacles[i] as Obstacle;
      if (occupant && occupant.seat === listener && occupant.part !== 'legs') continue;
      if (!mayReach(zone, bounds[i] as Bounds)) continue;
      // Faces cost far more to make than to ask about: only now.
      const tree = treeOf(id, shape);
      if (tree) each(id, tree);
    }
    for (const { id, panels: of, tree } of ridgesOf(panels)) {
      // The speaker's own panel is its baffle.
      if (!(leastOver(zone, tree.balls, 0) < under()) || (spot && of.includes(spot.panel)))
        continue;
      each(id, tree);
    }
  }

  return {
    all(from, to, listener, spot, wavelength) {
      const zone = zoneRound(from, to, wavelength);
      if (!zone) return [];
      const nearest = new Map<string, NearMiss>();
      visit(
        zone,
        listener,
        spot,
        () => zone.detour,
        (id, tree) => {
          if (nearestEdge(zone, tree, nearest.get(id)?.detour ?? Infinity, found))
            nearest.set(id, missOf(id, zone, found));
        },
      );
      return [...nearest.values()].sort((a, b) => a.detour - b.detour);
    },
    nearest(from, to, listener, spot, wavelength) {
      const zone = zoneRound(from, to, wavelength);
      if (!zone) return null;
      let best: NearMiss | null = null;
      let under = zone.detour;
      visit(
        zone,
        listener,
        spot,
        () => under,
        (id, tree) => {
          if (!nearestEdge(zone, tree, under, found)) return;
          best = missOf(id, zone, found);
          under = best.detour - SAME_DETOUR;
        },
      );
      return best;
    },
    least(from, to, listener, spot, wavelength, below) {
      const zone = zoneRound(from, to, wavelength);
      if (!zone) return null;
      let isFound = false;
      let under = Math.min(below, zone.detour);
      visit(
        zone,
        listener,
        spot,
        () => under,
        (_, tree) => {
          if (!nearestEdge(zone, tree, under, found)) return;
          isFound = true;
          under = found[0] as number;
        },
      );
      return isFound ? under : null;
    },
  };
}

function missOf(id: string, zone: Zone, found: Float64Array): NearMiss {
  const [detour = 0, gap = 0, at = 0, x = 0, y = 0, z = 0] = found;
  const onLine = along(zone.from, [zone.x, zone.y, zone.z], at);
  return { id, detour, distance: gap, point: [x, y, z], onLine, at };
}

/** By its box, where its ball may reach: false where no part of it can be in the zone. */
function mayReach({ from, to, radius: wide }: Zone, { low, high }: Bounds): boolean {
  for (const k of [0, 1, 2] as const) {
    if (low[k] - wide > Math.max(from[k], to[k])) return false;
    if (high[k] + wide < Math.min(from[k], to[k])) return false;
  }
  return true;
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
