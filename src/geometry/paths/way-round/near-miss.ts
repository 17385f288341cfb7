/** How near an edge comes to a straight line that nothing crosses, by what the way over it costs. */
import { GRAZING_RADII } from '../../sound/obstruction';
import { SAME_POINT } from '../../tolerance';
import type { Vec3 } from '../../vector';
import type { EdgeTree } from './edge-tree';

export interface NearMiss {
  /** The obstacle, or the panel; of two panels that make a ridge, the one the cabin lists first. */
  id: string;
  /** The way over the edge less the straight line, mm, at its smallest over the thing's edges. */
  detour: number;
  /** From the line to that place on the edge, mm. */
  distance: number;
  /** The place on the edge. */
  point: Vec3;
  /** The place on the line, and how far that is from its start. */
  onLine: Vec3;
  at: number;
}

/** A straight line and the zone round it: {@link GRAZING_RADII} of the first Fresnel radius. */
export interface Zone {
  from: Vec3;
  to: Vec3;
  /** Unit vector, and the line's length. */
  x: number;
  y: number;
  z: number;
  reach: number;
  /** The zone's squared radius is this times the parts before and after, over the whole line. */
  width: number;
  /** Its radius in the middle, where it is widest. */
  radius: number;
  /** No way over a place in the zone is longer than the straight line by this, mm. */
  detour: number;
}

/** @returns null for a line without length or a zone without width */
export function zoneRound(from: Vec3, to: Vec3, wavelength: number): Zone | null {
  const [dx, dy, dz] = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
  const reach = Math.sqrt(dx * dx + dy * dy + dz * dz);
  if (!(reach > SAME_POINT && wavelength > 0)) return null;
  const width = GRAZING_RADII * GRAZING_RADII * wavelength;
  return {
    from,
    to,
    x: dx / reach,
    y: dy / reach,
    z: dz / reach,
    reach,
    width,
    radius: Math.sqrt(width * reach) / 2,
    // √(d² + h²) − d ≤ h² / 2d on either side, and h² < width · d₁d₂ / (d₁ + d₂).
    detour: width / 2,
  };
}

/** What rounding may add to the difference of lengths of some metres, mm. */
const ROUNDING = 1e-9;

/** Nodes still to be looked into, and what a way over them is longer at least. */
const waiting = new Int32Array(64);
const waitingFor = new Float64Array(64);

/**
 * The least a way over a place of the zone within a ball can be longer than the straight line, mm;
 * Infinity where the ball has no such place.
 */
export function leastOver(zone: Zone, balls: Float64Array, node: number): number {
  const { from, reach } = zone;
  const m = 4 * node;
  const r = balls[m + 3] as number;
  const dx = (balls[m] as number) - from[0];
  const dy = (balls[m + 1] as number) - from[1];
  const dz = (balls[m + 2] as number) - from[2];
  const along = dx * zone.x + dy * zone.y + dz * zone.z;
  if (along + r <= 0 || along - r >= reach) return Infinity;
  const square = dx * dx + dy * dy + dz * dz - along * along;
  const off = square > 0 ? Math.sqrt(square) - r : -r;
  if (off <= 0) return 0;
  // At one distance from the line a place costs least in the middle, and the zone is widest there.
  const half = reach / 2;
  const at = along + r < half ? along + r : Math.max(along - r, half);
  const rest = reach - at;
  const gap = off * off;
  if (gap * reach >= zone.width * at * rest) return Infinity;
  return Math.sqrt(at * at + gap) + Math.sqrt(rest * rest + gap) - reach - ROUNDING;
}

/**
 * The edge in the zone over which the way is shortest. The sum of the distances from the two ends is
 * convex along an edge, and least where the line is straight once both ends are turned into one
 * plane about the edge (Heron).
 * @param under only detours below this, mm, count
 * @returns its detour in `found`, with the distance from the line, the place along it and the place
 * on the edge; false where there is none
 */
export function nearestEdge(zone: Zone, tree: EdgeTree, under: number, found: Float64Array) {
  const { balls, link, count } = tree;
  found[0] = Math.min(under, zone.detour);
  let isFound = false;
  let top = 1;
  waiting[0] = 0;
  waitingFor[0] = leastOver(zone, balls, 0);
  while (top > 0) {
    top -= 1;
    let node = waiting[top] as number;
    if (!((waitingFor[top] as number) < (found[0] as number))) continue;
    // Down by the child that may hold the better place; the other waits.
    while (count[node] === 0) {
      const one = node + 1;
      const two = link[node] as number;
      const p = leastOver(zone, balls, one);
      const q = leastOver(zone, balls, two);
      node = p <= q ? one : two;
      const later = Math.max(p, q);
      if (later < (found[0] as number)) {
        waiting[top] = p <= q ? two : one;
        waitingFor[top] = later;
        top += 1;
      }
      if (!(Math.min(p, q) < (found[0] as number))) break;
    }
    const some = count[node] as number;
    const first = link[node] as number;
    for (let e = first; e < first + some; e++)
      if (overEdge(zone, tree.edges, 7 * e, found)) isFound = true;
  }
  return isFound;
}

/** Puts the best place on an edge into `found` where it is better than what that holds. */
function overEdge(zone: Zone, edges: Float64Array, e: number, found: Float64Array): boolean {
  const { from, to, reach } = zone;
  const px = edges[e] as number;
  const py = edges[e + 1] as number;
  const pz = edges[e + 2] as number;
  const ex = edges[e + 3] as number;
  const ey = edges[e + 4] as number;
  const ez = edges[e + 5] as number;
  let dx = from[0] - px;
  let dy = from[1] - py;
  let dz = from[2] - pz;
  const s1 = dx * ex + dy * ey + dz * ez;
  const d1 = Math.sqrt(Math.max(0, dx * dx + dy * dy + dz * dz - s1 * s1));
  dx = to[0] - px;
  dy = to[1] - py;
  dz = to[2] - pz;
  const s2 = dx * ex + dy * ey + dz * ez;
  const d2 = Math.sqrt(Math.max(0, dx * dx + dy * dy + dz * dz - s2 * s2));
  let s = d1 + d2 > 0 ? (s1 * d2 + s2 * d1) / (d1 + d2) : (s1 + s2) / 2;
  s = Math.max(0, Math.min(edges[e + 6] as number, s));
  const qx = px + s * ex;
  const qy = py + s * ey;
  const qz = pz + s * ez;
  dx = qx - from[0];
  dy = qy - from[1];
  dz = qz - from[2];
  const at = dx * zone.x + dy * zone.y + dz * zone.z;
  const rest = reach - at;
  const gap = Math.max(0, dx * dx + dy * dy + dz * dz - at * at);
  if (!(at > 0 && rest > 0 && gap * reach < zone.width * at * rest)) return false;
  // Both roots less what they stand over, each as gap / (root + part): no digits are lost.
  const detour =
    gap / (Math.sqrt(at * at + gap) + at) + gap / (Math.sqrt(rest * rest + gap) + rest);
  if (!(detour < (found[0] as number))) return false;
  found[0] = detour;
  found[1] = Math.sqrt(gap);
  found[2] = at;
  found[3] = qx;
  found[4] = qy;
  found[5] = qz;
  return true;
}
