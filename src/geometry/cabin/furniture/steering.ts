import { add, along, radians, scale, type Vec3 } from '../../vector';
import type { Dimensions } from '../dimensions';
import type { Obstacle } from '../model';
import { across, block, loft, merge, ring, rod, torus } from './solid';

/** Thickness of the rim's tube. Typical value, from memory. */
export const RIM_THICKNESS = 32;

/** The steering wheel of the left-hand-drive car: centre, axis towards the person, rim radius. */
export function wheelPlace(d: Dimensions): { center: Vec3; axis: Vec3; radius: number } {
  const a = radians(d.wheelTilt);
  return {
    center: [d.wheelReach, -d.seatOffset, d.wheelHeight],
    axis: [Math.cos(a), 0, Math.sin(a)],
    radius: Math.max(20, (d.wheelDiameter - RIM_THICKNESS) / 2),
  };
}

/** Hub and three spokes, dished away from the person as wheels are. */
function hubAndSpokes(d: Dimensions, fine: boolean) {
  const { center, axis, radius } = wheelPlace(d);
  const [side, up] = across(axis);
  const n = fine ? 28 : 12;
  const dish = -26;
  const hubRing = (depth: number, k: number) =>
    ring(along(center, axis, depth), scale(side, radius * k), scale(up, radius * k * 0.86), n, 2.6);
  const hub = loft([
    hubRing(dish - 46, 0.26),
    hubRing(dish - 20, 0.4),
    hubRing(dish + 4, 0.42),
    hubRing(dish + 16, 0.36),
    hubRing(dish + 19, 0.2),
  ]);
  const spoke = (out: Vec3, wide: Vec3, width: number) => {
    const from = along(along(center, axis, dish), out, radius * 0.34);
    const to = along(center, out, radius * 0.985);
    const cut = (p: Vec3, w: number, t: number) =>
      ring(p, scale(wide, w / 2), scale(axis, t / 2), fine ? 12 : 8, 3);
    return loft([
      cut(from, width * 1.35, 20),
      cut(along(add(scale(from, 0.5), scale(to, 0.5)), axis, -4), width, 15),
      cut(to, width * 0.85, 13),
    ]);
  };
  const down = scale(up, up[2] > 0 ? -1 : 1);
  const spokes = [spoke(side, up, 44), spoke(scale(side, -1), up, 44), spoke(down, side, 56)];
  return { hub, spokes: merge(...spokes), center, axis, side, up, radius };
}

/** Steering wheel, its hub and spokes, and the column with its stalks. */
export function steering(d: Dimensions): Obstacle[] {
  const coarse = hubAndSpokes(d, false);
  const fine = hubAndSpokes(d, true);
  const { center, axis, side, up, radius } = fine;
  // The shroud runs from behind the hub into the dash.
  const end = Math.max(90, Math.min(340, (center[0] - (d.cowlX + 90)) / Math.max(0.3, axis[0])));
  const shroud = (around: number) =>
    loft(
      (
        [
          [-62, 46, 44],
          [-78, 62, 58],
          [-150, 66, 66],
          [-end, 74, 78],
        ] as const
      ).map(([t, w, h]) => ring(along(center, axis, t), scale(side, w), scale(up, h), around, 3)),
    );
  const stalk = (sign: -1 | 1) => {
    const root = along(along(center, axis, -96), side, sign * 58);
    return rod(root, along(along(root, side, sign * 118), axis, 22), 6.5, 10);
  };
  const upward = scale(up, up[2] > 0 ? 1 : -1);
  return [
    {
      id: 'steering-wheel',
      name: 'steering wheel',
      shape: {
        shape: 'ring',
        center,
        axis,
        diameter: 2 * radius,
        thickness: RIM_THICKNESS,
      },
      drawn: [
        { material: 'leather', mesh: torus(center, axis, radius, RIM_THICKNESS / 2, 48, 12) },
      ],
      given: false,
    },
    {
      id: 'steering-wheel-hub',
      name: 'steering wheel hub and spokes',
      shape: merge(coarse.hub, coarse.spokes),
      drawn: [
        { material: 'dark-trim', mesh: fine.hub },
        { material: 'metal', mesh: fine.spokes },
      ],
      given: false,
    },
    {
      id: 'steering-column',
      name: 'steering column',
      shape: shroud(10),
      drawn: [
        { material: 'dark-trim', mesh: shroud(24) },
        { material: 'hard-trim', mesh: merge(stalk(-1), stalk(1)) },
        {
          // The lever that lets the column down.
          material: 'rubber',
          mesh: block(
            along(along(center, axis, -150), upward, -72),
            [side, axis, up],
            [26, 10, 6],
            5,
            10,
          ),
        },
      ],
      given: false,
    },
  ];
}
