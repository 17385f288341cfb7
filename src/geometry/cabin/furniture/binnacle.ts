import type { Vec3 } from '../../vector';
import type { Dimensions } from '../dimensions';
import type { Obstacle } from '../model';
import { atY, type PatchFinder } from './patches';
import { loft } from './solid';

/** Half width of the hood. Typical value, from memory. */
export const BINNACLE_HALF_WIDTH = 178;
/** How far it reaches down in front of the dash face, to hold the instruments. */
const APRON = 58;
/** How far the instruments lie inside the hood. */
export const RECESS = 13;

/** Where the hood stands on the dash: its rear rim and its front foot, mm. */
export interface BinnaclePlace {
  y: number;
  /** Middle of the instrument face. */
  rear: Vec3;
  top: number;
  bottom: number;
  front: Vec3;
}

export function binnaclePlace(d: Dimensions, find: PatchFinder): BinnaclePlace | null {
  const top = find('dash-top-left');
  if (!top) return null;
  const y = -d.seatOffset;
  const edge = atY(top, y, 1);
  const front = atY(top, y, 0.45);
  // Rearward of the dash's rolled edge, so that the instruments stand free, and clear of the wheel.
  const x = Math.min(edge[0] + 68, d.wheelReach - 100);
  return {
    y,
    rear: [Math.max(x, front[0] + 60), y, edge[2]],
    top: edge[2] + Math.max(10, d.binnacleHeight),
    bottom: edge[2] - APRON,
    front,
  };
}

/** One arch across the car at x: flat foot, round shoulders. */
function arch(x: number, y: number, halfWidth: number, bottom: number, top: number, n: number) {
  const points: Vec3[] = [];
  for (let i = 0; i <= n; i++) {
    const t = (Math.PI * i) / n;
    const [c, s] = [Math.cos(t), Math.sin(t)];
    const w = Math.sign(c) * Math.abs(c) ** 0.62;
    points.push([x, y + halfWidth * w, bottom + (top - bottom) * Math.max(0, s) ** 0.62]);
  }
  return points;
}

/** The hood over the instruments, lofted from the dash top to a shaded, recessed face. */
export function binnacle(d: Dimensions, find: PatchFinder): Obstacle[] {
  const place = binnaclePlace(d, find);
  const dashTop = find('dash-top-left');
  if (!place || !dashTop) return [];
  const { y, rear, top, bottom, front } = place;
  const height = top - rear[2];
  const surface = (x: number): number => {
    const at = (v: number) => atY(dashTop, y, v);
    let [low, high] = [0, 1];
    for (let i = 0; i < 20; i++) {
      const middle = (low + high) / 2;
      if (at(middle)[0] < x) low = middle;
      else high = middle;
    }
    return at(high)[2];
  };
  const profile = [
    [0, 0.62, 0.06],
    [0.2, 0.74, 0.45],
    [0.45, 0.86, 0.8],
    [0.72, 0.95, 0.96],
    [1, 1, 1],
  ] as const;
  const rings = (n: number) =>
    profile.map(([t, wide, high]) => {
      const x = front[0] + t * (rear[0] - front[0]);
      const z = surface(x);
      const low = Math.max(bottom, z - 30 - t * (APRON - 30));
      return arch(x, y, BINNACLE_HALF_WIDTH * wide, low, z + height * high, n);
    });
  const hood = rings(18);
  const lip = (inset: number, x: number) =>
    arch(x, y, BINNACLE_HALF_WIDTH - inset, bottom + inset * 0.5, top - inset, 18);
  hood.push(lip(9, rear[0]), lip(14, rear[0] - RECESS));
  return [
    {
      id: 'binnacle',
      name: 'instrument binnacle',
      shape: loft(rings(8)),
      drawn: [{ material: 'soft-trim', mesh: loft(hood) }],
      given: false,
    },
  ];
}
