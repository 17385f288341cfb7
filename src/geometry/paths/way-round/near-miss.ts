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

const waiting = new Int32Array(64);

/**
 * The edge in the zone over which the way is shortest. The sum of the distances from the two ends is
 * convex along an edge, and least where the line is straight once both ends are turned into one
 * plane about the edge (Heron).
 * @param under only detours below this, mm, count
 * @returns its detour in `found`, with the distance from the line, the place along it and the place
 * on the edge; false where there is none
 */
export function nearestEdge(zone: Zone, tree: EdgeTree, under: number, found: Float64Array) {
  const { from, to, x: ux, y: uy, z: uz, reach, width, radius } = zone;
  const [ax, ay, az] = from;
  const [bx, by, bz] = to;
  const { edges, balls, link, count } = tree;
  let best = Math.min(under, zone.detour);
  let isFound = false;
  let top = 0;
  let node = 0;
  for (;;) {
    // Could the ball hold a better place?
    const m = 4 * node;
    const r = balls[m + 3] as number;
    let dx = (balls[m] as number) - ax;
    let dy = (balls[m + 1] as number) - ay;
    let dz = (balls[m + 2] as number) - az;
    const along = dx * ux + dy * uy + dz * uz;
    if (along + r > 0 && along - r < reach) {
      const off = Math.max(0, dx * dx + dy * dy + dz * dz - along * along);
      const wide = radius + r;
      if (off < wide * wide) {
        const ahead = reach - along;
        const least =
          Math.sqrt(along * along + off) + Math.sqrt(ahead * ahead + off) - reach - 2 * r;
        if (least < best) {
          const some = count[node] as number;
          if (some === 0) {
            waiting[top] = link[node] as number;
            top += 1;
            node += 1;
            continue;
          }
          const first = link[node] as number;
          for (let e = 7 * first; e < 7 * (first + some); e += 7) {
            const px = edges[e] as number;
            const py = edges[e + 1] as number;
            const pz = edges[e + 2] as number;
            const ex = edges[e + 3] as number;
            const ey = edges[e + 4] as number;
            const ez = edges[e + 5] as number;
            dx = ax - px;
            dy = ay - py;
            dz = az - pz;
            const s1 = dx * ex + dy * ey + dz * ez;
            const d1 = Math.sqrt(Math.max(0, dx * dx + dy * dy + dz * dz - s1 * s1));
            dx = bx - px;
            dy = by - py;
            dz = bz - pz;
            const s2 = dx * ex + dy * ey + dz * ez;
            const d2 = Math.sqrt(Math.max(0, dx * dx + dy * dy + dz * dz - s2 * s2));
            let s = d1 + d2 > 0 ? (s1 * d2 + s2 * d1) / (d1 + d2) : (s1 + s2) / 2;
            s = Math.max(0, Math.min(edges[e + 6] as number, s));
            const qx = px + s * ex;
            const qy = py + s * ey;
            const qz = pz + s * ez;
            dx = qx - ax;
            dy = qy - ay;
            dz = qz - az;
            const at = dx * ux + dy * uy + dz * uz;
            const gap = Math.max(0, dx * dx + dy * dy + dz * dz - at * at);
            const rest = reach - at;
            if (!(at > 0 && rest > 0 && gap * reach < width * at * rest)) continue;
            // Both roots less what they stand over, each as gap / (root + part): no digits are lost.
            const detour =
              gap / (Math.sqrt(at * at + gap) + at) + gap / (Math.sqrt(rest * rest + gap) + rest);
            if (!(detour < best)) continue;
            best = detour;
            isFound = true;
            found[0] = detour;
            found[1] = Math.sqrt(gap);
            found[2] = at;
            found[3] = qx;
            found[4] = qy;
            found[5] = qz;
          }
        }
      }
    }
    if (top === 0) return isFound;
    top -= 1;
    node = waiting[top] as number;
  }
}
