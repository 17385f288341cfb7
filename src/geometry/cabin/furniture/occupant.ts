import type { MeshShape, Shape } from '../../input';
import { add, along, clamp, mix, radians, scale, type Vec3 } from '../../vector';
import type { Drawn, Obstacle, Seat, SeatPosture } from '../model';
import { type Figure, figureIn, type Holds } from './figure';
import { limb, loft, merge, ring } from './solid';

/**
 * The head from chin to crown: height against the ears, half length, half breadth against the
 * ears', and how far its middle lies behind them. A head 195 long and 225 high; typical, from memory.
 */
const HEAD: readonly (readonly [number, number, number, number])[] = [
  [-100, 14, 0.22, -66],
  [-90, 34, 0.46, -58],
  [-64, 56, 0.68, -43],
  [-30, 76, 0.84, -26],
  [0, 90, 0.97, -12],
  [32, 97, 1, -7],
  [62, 96, 0.99, -6],
  [92, 82, 0.86, -5],
  [114, 56, 0.58, -4],
  [126, 22, 0.22, -3],
];

/** Stops just inside the ears, so that no ear touches its own head. */
function headMesh(seat: Seat, size: number, around: number): MeshShape {
  const breadth = clamp(seat.earSpacing / 2 - 3, 4, 95);
  const t = radians(seat.facingDeg);
  const rearward: Vec3 = [Math.cos(t), -Math.sin(t), 0];
  const right: Vec3 = [Math.sin(t), Math.cos(t), 0];
  const k = clamp(size, 0.9, 1.08);
  return loft(
    HEAD.map(([z, length, wide, behind]) => {
      const level: Vec3 = [seat.head[0], seat.head[1], seat.head[2] + z * k];
      const middle = along(level, rearward, behind * k);
      return ring(middle, scale(rearward, length * k), scale(right, breadth * wide), around, 2.2);
    }),
  );
}

/** Up the trunk: place along it, half breadth, half depth. Typical values, from memory. */
const TRUNK: readonly (readonly [number, number, number])[] = [
  [-0.12, 120, 70],
  [-0.05, 168, 100],
  [0.08, 180, 112],
  [0.25, 162, 108],
  [0.42, 158, 108],
  [0.6, 174, 116],
  [0.76, 186, 112],
  [0.88, 176, 92],
  [0.95, 118, 66],
  [1, 64, 54],
];

function onSpine(f: Figure, t: number): Vec3 {
  const [a, b, c] = f.spine;
  const through = along(b, add(scale(b, 2), scale(add(a, c), -1)), 0.5);
  return mix(mix(a, through, t), mix(through, c, t), t);
}

function torsoMesh(f: Figure, around: number): MeshShape {
  const head = f.head;
  const neckTop: Vec3 = [head[0] - 6, head[1], head[2] - 44];
  const rings = TRUNK.map(([t, wide, deep]) => {
    const p = onSpine(f, t);
    const q = onSpine(f, t + 0.02);
    const axis: Vec3 = [q[0] - p[0], 0, q[2] - p[2]];
    const l = Math.sqrt(axis[0] ** 2 + axis[2] ** 2) || 1;
    const fore: Vec3 = [-axis[2] / l, 0, axis[0] / l];
    return ring(p, [0, wide * f.size, 0], scale(fore, deep * f.size), around, 2.5);
  });
  rings.push(ring(neckTop, [0, 54, 0], [-46, 0, 6], around));
  return loft(rings);
}

const SIDES = ['left', 'right'] as const;

/**
 * The person in a seat as obstacles: head, torso, and for each leg a thigh, a shin and a foot; arms.
 * The sound in their own seat passes head, torso and arms, which move with the listener; the
 * thighs and shins are in its way like anybody's.
 */
export function occupant(seat: Seat, posture: SeatPosture, holds: Holds): Obstacle[] {
  const f = figureIn(seat, posture, holds);
  const out: Obstacle[] = [];
  const put = (
    part: 'head' | 'torso' | 'legs' | 'arms',
    suffix: string,
    shape: Shape,
    drawn: Drawn[],
  ) =>
    out.push({
      id: `occupant-${seat.id}-${suffix}`,
      name: `${seat.name} occupant's ${suffix.replaceAll('-', ' ')}`,
      shape,
      drawn,
      occupant: { seat: seat.id, part },
      given: false,
    });
  put('head', 'head', headMesh(seat, f.size, 10), [
    { material: 'skin', mesh: headMesh(seat, f.size, 20) },
  ]);
  put('torso', 'torso', torsoMesh(f, 10), [{ material: 'cloth', mesh: torsoMesh(f, 20) }]);
  const s = f.size;
  for (const side of SIDES) {
    const { hip, knee, ankle, heel, toe } = f.legs[side];
    put('legs', `${side}-thigh`, { shape: 'capsule', from: hip, to: knee, radius: 66 * s }, [
      {
        material: 'cloth',
        mesh: limb([hip, mix(hip, knee, 0.55), knee], [80 * s, 71 * s, 57 * s], 14),
      },
    ]);
    put('legs', `${side}-shin`, { shape: 'capsule', from: knee, to: ankle, radius: 48 * s }, [
      {
        material: 'cloth',
        mesh: limb([knee, mix(knee, ankle, 0.35), ankle], [55 * s, 53 * s, 38 * s], 14),
      },
    ]);
    put('legs', `${side}-foot`, { shape: 'capsule', from: heel, to: toe, radius: 34 * s }, [
      {
        material: 'rubber',
        mesh: limb([heel, mix(heel, toe, 0.6), toe], [38 * s, 40 * s, 26 * s], 12),
      },
    ]);
  }
  for (const side of SIDES) {
    const { shoulder, elbow, hand } = f.arms[side];
    const wrist = mix(elbow, hand, 0.8);
    put(
      'arms',
      `${side}-arm`,
      merge(limb([shoulder, elbow], [50 * s, 42 * s], 8), limb([elbow, hand], [40 * s, 34 * s], 8)),
      [
        {
          material: 'cloth',
          mesh: merge(
            limb([shoulder, mix(shoulder, elbow, 0.5), elbow], [56 * s, 48 * s, 40 * s], 12),
            limb([elbow, mix(elbow, wrist, 0.4), wrist], [40 * s, 39 * s, 29 * s], 12),
          ),
        },
        { material: 'skin', mesh: limb([wrist, mix(wrist, hand, 0.7), hand], [27, 35, 30], 10) },
      ],
    );
  }
  return out;
}
