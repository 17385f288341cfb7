/** Random plans, points and solids for property tests: mm, car axes, no template. */
import fc from 'fast-check';
import type {
  BoxShape,
  CapsuleShape,
  OptionInput,
  PlanInput,
  RingShape,
  Role,
  Side,
  SpeakerInput,
  Vec3,
} from '../../src/geometry';

const FINE = 2 ** 30;

/**
 * Spread evenly from `min` to `max`, with a liking for the ends. The library's own doubles are even
 * in their bits: nearly all of them lie next to zero, where hardly two solids ever meet.
 */
export const real = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: FINE }).map((k) => min + ((max - min) * k) / FINE);

export const coordinate = real(-2000, 2000);
export const point: fc.Arbitrary<Vec3> = fc.tuple(coordinate, coordinate, coordinate);

/** Never near zero length, so that it has a direction. */
export const heading: fc.Arbitrary<Vec3> = fc
  .tuple(...([0, 1, 2].map(() => real(-1, 1)) as [never, never, never]))
  .map((v) => v as unknown as Vec3)
  .filter((v) => v[0] ** 2 + v[1] ** 2 + v[2] ** 2 > 0.01);

const size = real(5, 900);
const angle = real(-180, 180);

export const box: fc.Arbitrary<BoxShape> = fc.record({
  shape: fc.constant('box' as const),
  center: point,
  size: fc.tuple(size, size, size),
  turnDeg: fc.tuple(angle, angle, angle),
});

export const capsule: fc.Arbitrary<CapsuleShape> = fc.record({
  shape: fc.constant('capsule' as const),
  from: point,
  to: point,
  radius: real(5, 300),
});

export const ring: fc.Arbitrary<RingShape> = fc.record({
  shape: fc.constant('ring' as const),
  center: point,
  axis: heading,
  diameter: real(100, 900),
  thickness: real(10, 90),
});

const ROLES: readonly Role[] = ['tweeter', 'midrange', 'midbass'];

/** A left and a right speaker for each pair, at free points with an axis. */
export const option: fc.Arbitrary<OptionInput> = fc
  .array(fc.tuple(point, point, heading, heading), { minLength: 1, maxLength: 3 })
  .map((pairs) => ({
    id: 'a',
    speakers: pairs.flatMap(([left, right, leftAim, rightAim], i): SpeakerInput[] => {
      const role = ROLES[i] ?? 'midbass';
      const one = (side: Side, position: Vec3, direction: Vec3): SpeakerInput => ({
        id: `${role}-${side}`,
        role,
        pair: role,
        side,
        position,
        aim: { kind: 'direction', direction },
      });
      return [one('left', left, leftAim), one('right', right, rightAim)];
    }),
  }));

/** One option, one or two seats, and a few solids in the way. */
export const plan: fc.Arbitrary<PlanInput> = fc
  .record({
    option,
    heads: fc.array(fc.tuple(point, angle), { minLength: 1, maxLength: 2 }),
    solids: fc.array(fc.oneof(box, capsule, ring), { maxLength: 3 }),
    temperatureC: real(-20, 50),
    sampleRateHz: fc.constantFrom(44100, 48000, 96000, 192000),
  })
  .map(({ option, heads, solids, temperatureC, sampleRateHz }) => ({
    air: { temperatureC, relativeHumidityPercent: 50, pressureKPa: 101.325 },
    cabin: { template: 'none', wheelSide: 'left' },
    seats: heads.map(([head, facingDeg], i) => ({
      id: i === 0 ? 'front-left' : 'front-right',
      head,
      facingDeg,
      earSpacing: 152,
    })),
    obstacles: solids.map((shape, i) => ({ id: `solid-${i}`, ...shape })),
    options: [option],
    alignment: { seat: 'front-left', sampleRateHz },
  }));
