import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  add,
  evaluatePlan,
  mirrorY,
  type OptionResult,
  type PlanInput,
  type SeatResult,
  type Shape,
  type Vec3,
} from '../../../src/geometry';
import { turn } from '../../../src/geometry/paths/segment-hits';
import * as any from '../arbitraries';

/** Lengths may differ by rounding alone, mm. */
const ROUNDING = 1e-6;

/** How exact a way round is promised to be: 0.5 % or 2 mm, whichever is more, on either side. */
const wayTolerance = (path: number) => 2 * Math.max(2, 0.005 * path);

/** Straight lines to rounding; ways round, which are searched for, to what is promised of them. */
function expectSamePath(a: EarLine, b: EarLine): void {
  expect(Math.abs(a.direct - b.direct)).toBeLessThan(ROUNDING);
  const most = a.line === 'blocked' ? wayTolerance(a.path) : ROUNDING;
  expect(Math.abs(a.path - b.path)).toBeLessThan(most);
}
type EarLine = Pick<SeatResult['arrivals'][number], 'direct' | 'path' | 'line'>;

function resultOf(plan: PlanInput): OptionResult {
  const answer = evaluatePlan(plan);
  if (!answer.ok) throw new Error(`${answer.error.path}: ${answer.error.message}`);
  return answer.options[0] as OptionResult;
}

/** Both results' seats, arrival by arrival. */
function eachArrival(a: OptionResult, b: OptionResult, check: (x: Arrival, y: Arrival) => void) {
  expect(a.seats.length).toBe(b.seats.length);
  for (const [s, seat] of a.seats.entries())
    for (const [i, arrival] of seat.arrivals.entries())
      check(arrival, b.seats[s]?.arrivals[i] as Arrival);
}
type Arrival = SeatResult['arrivals'][number];

/** The plan with every point moved and every direction turned; seats turn by `facing` degrees. */
function moved(
  plan: PlanInput,
  place: (p: Vec3) => Vec3,
  turned: (v: Vec3) => Vec3,
  facing = 0,
): PlanInput {
  return {
    ...plan,
    seats: plan.seats?.map((seat) => ({
      ...seat,
      head: place(seat.head as Vec3),
      facingDeg: (seat.facingDeg ?? 0) + facing,
    })),
    obstacles: plan.obstacles?.map(({ id, ...shape }) => ({
      id,
      ...movedShape(shape, place, turned),
    })),
    options: plan.options.map((option) => ({
      ...option,
      speakers: option.speakers.map((speaker) => ({
        ...speaker,
        position: place(speaker.position as Vec3),
        ...(speaker.aim?.kind === 'direction' && {
          aim: { kind: 'direction' as const, direction: turned(speaker.aim.direction) },
        }),
      })),
    })),
  };
}

/** Boxes only take turns about Z here, which is all the tests below ask for. */
function movedShape(shape: Shape, place: (p: Vec3) => Vec3, turned: (v: Vec3) => Vec3): Shape {
  switch (shape.shape) {
    case 'capsule':
      return { ...shape, from: place(shape.from), to: place(shape.to) };
    case 'ring':
      return { ...shape, center: place(shape.center), axis: turned(shape.axis) };
    case 'mesh':
      return { ...shape, vertices: shape.vertices.map(place) };
    case 'box': {
      const about = turned([1, 0, 0]);
      const z = (Math.atan2(about[1], about[0]) * 180) / Math.PI;
      const t = shape.turnDeg ?? [0, 0, 0];
      return { ...shape, center: place(shape.center), turnDeg: [t[0], t[1], t[2] + z] };
    }
  }
}

describe('what a move of the whole car changes', () => {
  test('nothing: shifted as a whole, every path, angle and obstruction stays', () => {
    fc.assert(
      fc.property(any.plan, any.point, (plan, by) => {
        const shifted = moved(
          plan,
          (p) => add(p, by),
          (v) => v,
        );
        eachArrival(resultOf(plan), resultOf(shifted), (a, b) => {
          expectSamePath(a, b);
          expectSamePath(a.ears.left, b.ears.left);
          expect(Math.abs((a.offAxisDeg ?? 0) - (b.offAxisDeg ?? 0))).toBeLessThan(1e-5);
          expect(b.blockedBy).toEqual(a.blockedBy);
        });
      }),
      { numRuns: 200 },
    );
  });

  test('nothing: turned about the vertical, every path, angle and obstruction stays', () => {
    fc.assert(
      fc.property(any.plan, fc.double({ min: -180, max: 180, noNaN: true }), (plan, deg) => {
        const round = (p: Vec3) => turn(p, [0, 0, deg]);
        // Seen from above X points rearward and Y right, so a turn about Z is one to the left.
        const turned = moved(plan, round, round, -deg);
        eachArrival(resultOf(plan), resultOf(turned), (a, b) => {
          expectSamePath(a, b);
          expectSamePath(a.ears.left, b.ears.left);
          expectSamePath(a.ears.right, b.ears.right);
          expect(Math.abs((a.offAxisDeg ?? 0) - (b.offAxisDeg ?? 0))).toBeLessThan(1e-5);
          expect(b.blockedBy).toEqual(a.blockedBy);
        });
      }),
      { numRuns: 200 },
    );
  });

  test('a car and its mirror image: left and right swap, and nothing else changes', () => {
    fc.assert(
      fc.property(any.plan, (plan) => {
        // A box turned about X, Y, Z has its mirror image turned about −X, Y, −Z.
        const image = moved(plan, mirrorY, mirrorY);
        const mirrored: PlanInput = {
          ...image,
          seats: image.seats?.map((seat) => ({ ...seat, facingDeg: -(seat.facingDeg ?? 0) })),
          obstacles: image.obstacles?.map((solid, i) => {
            const original = plan.obstacles?.[i];
            if (solid.shape !== 'box' || original?.shape !== 'box') return solid;
            const [x, y, z] = original.turnDeg ?? [0, 0, 0];
            return { ...solid, turnDeg: [-x, y, -z] };
          }),
          options: image.options.map((option) => ({
            ...option,
            speakers: option.speakers.map((speaker) => ({
              ...speaker,
              side: speaker.side === 'left' ? ('right' as const) : ('left' as const),
            })),
          })),
        };
        const [here, there] = [resultOf(plan), resultOf(mirrored)];
        eachArrival(here, there, (a, b) => {
          expectSamePath(a, b);
          expectSamePath(a.ears.left, b.ears.right);
          expectSamePath(a.ears.right, b.ears.left);
          const [h, k] = [a.offAxisHorizontalDeg ?? 0, b.offAxisHorizontalDeg ?? 0];
          // −180° and 180° are the same direction.
          expect(Math.abs(Math.sin(((h + k) * Math.PI) / 180))).toBeLessThan(1e-6);
          expect(Math.abs((a.offAxisVerticalDeg ?? 0) - (b.offAxisVerticalDeg ?? 0))).toBeLessThan(
            1e-5,
          );
          expect(b.blockedBy).toEqual(a.blockedBy);
        });
        for (const [s, seat] of here.seats.entries())
          for (const [i, pair] of seat.pairs.entries()) {
            const image = there.seats[s]?.pairs[i];
            const off = Math.abs((pair.difference ?? 0) + (image?.difference ?? 0));
            const blocked = seat.arrivals.some(({ line }) => line === 'blocked');
            const longest = Math.max(...seat.arrivals.map(({ path }) => path));
            expect(off).toBeLessThan(blocked ? 2 * wayTolerance(longest) : ROUNDING);
          }
      }),
      { numRuns: 200 },
    );
  });
});

describe('delays', () => {
  test('the longest path has no delay, and nobody’s delay is negative', () => {
    fc.assert(
      fc.property(any.plan, (plan) => {
        for (const seat of resultOf(plan).seats) {
          const longest = seat.arrivals.reduce((a, b) => (b.path > a.path ? b : a));
          expect(seat.delays.find(({ speaker }) => speaker === longest.speaker)?.delay).toBe(0);
          for (const delay of seat.delays) expect(delay.delay).toBeGreaterThanOrEqual(0);
        }
      }),
      { numRuns: 200 },
    );
  });

  test('once delayed all arrive together; once rounded, within half a sample', () => {
    fc.assert(
      fc.property(any.plan, (plan) => {
        const half = 500 / plan.alignment.sampleRateHz;
        for (const seat of resultOf(plan).seats) {
          const latest = Math.max(...seat.arrivals.map(({ time }) => time));
          for (const [i, arrival] of seat.arrivals.entries()) {
            const delay = seat.delays[i];
            expect(delay?.speaker).toBe(arrival.speaker);
            expect(Math.abs(arrival.time + (delay?.delay ?? 99) - latest)).toBeLessThan(1e-9);
            const rounded = arrival.time + (delay?.roundedDelay ?? 99);
            expect(Math.abs(rounded - latest)).toBeLessThanOrEqual(half + 1e-9);
          }
        }
      }),
      { numRuns: 200 },
    );
  });

  test('gains only turn down, and leave both of a pair equally loud', () => {
    fc.assert(
      fc.property(any.plan, (plan) => {
        for (const { arrivals, delays } of resultOf(plan).seats) {
          for (const delay of delays) expect(delay.gainDb).toBeLessThanOrEqual(0);
          // The generated option lists left and right of a pair in turn.
          for (let i = 0; i < arrivals.length; i += 2) {
            const [left, right] = [arrivals[i]?.levelDb ?? null, arrivals[i + 1]?.levelDb ?? null];
            // A speaker at the listener has no level to go by.
            if (left === null || right === null) continue;
            const [l, r] = [
              left + (delays[i]?.gainDb ?? 99),
              right + (delays[i + 1]?.gainDb ?? 99),
            ];
            expect(Math.abs(l - r)).toBeLessThan(1e-9);
          }
        }
      }),
      { numRuns: 100 },
    );
  });
});

describe('differences and paths', () => {
  test('with left and right speaker exchanged, the difference changes its sign', () => {
    fc.assert(
      fc.property(any.plan, (plan) => {
        const exchanged: PlanInput = {
          ...plan,
          options: plan.options.map((option) => ({
            ...option,
            speakers: option.speakers.map((speaker) => ({
              ...speaker,
              side: speaker.side === 'left' ? ('right' as const) : ('left' as const),
            })),
          })),
        };
        const [here, there] = [resultOf(plan), resultOf(exchanged)];
        for (const [s, seat] of here.seats.entries())
          for (const [i, pair] of seat.pairs.entries()) {
            const other = there.seats[s]?.pairs[i];
            expect((pair.difference ?? 1) + (other?.difference ?? 1)).toBe(0);
            expect((pair.differenceTime ?? 1) + (other?.differenceTime ?? 1)).toBe(0);
            // No level where a speaker stands at the listener: then on both sides of the exchange.
            if (pair.levelDifferenceDb === null) expect(other?.levelDifferenceDb).toBeNull();
            else expect(pair.levelDifferenceDb + (other?.levelDifferenceDb ?? 99)).toBe(0);
          }
      }),
      { numRuns: 100 },
    );
  });

  test('moving a speaker by d changes no straight line by more than d', () => {
    fc.assert(
      fc.property(any.plan, any.point, fc.nat(5), (plan, by, which) => {
        const d = Math.hypot(...by);
        const index = which % (plan.options[0]?.speakers.length ?? 1);
        const pushed: PlanInput = {
          ...plan,
          options: plan.options.map((option) => ({
            ...option,
            speakers: option.speakers.map((speaker, i) =>
              i === index ? { ...speaker, position: add(speaker.position as Vec3, by) } : speaker,
            ),
          })),
        };
        eachArrival(resultOf(plan), resultOf(pushed), (a, b) => {
          const most = a.speaker === plan.options[0]?.speakers[index]?.id ? d : 0;
          expect(Math.abs(a.direct - b.direct)).toBeLessThanOrEqual(most + ROUNDING);
          expect(Math.abs(a.ears.left.direct - b.ears.left.direct)).toBeLessThanOrEqual(
            most + ROUNDING,
          );
          // A speaker that stays, between things that stay, has the same way round as before.
          if (most === 0) expect(b.path).toBe(a.path);
        });
      }),
      { numRuns: 200 },
    );
  });

  test('the head’s straight line lies between the ears’, and no path is shorter than straight', () => {
    fc.assert(
      fc.property(any.plan, (plan) => {
        for (const { arrivals } of resultOf(plan).seats)
          for (const { direct, path, line, ears } of arrivals) {
            const { left, right } = ears;
            expect(Math.abs(left.direct - direct)).toBeLessThanOrEqual(76 + ROUNDING);
            // The median of a triangle is no longer than the mean of its two sides.
            expect(direct).toBeLessThanOrEqual((left.direct + right.direct) / 2 + ROUNDING);
            for (const one of [{ direct, path, line }, left, right]) {
              expect(one.path).toBeGreaterThanOrEqual(one.direct);
              if (one.line !== 'blocked') expect(one.path).toBe(one.direct);
            }
          }
      }),
      { numRuns: 100 },
    );
  });

  test('warmer air changes no path, only times', () => {
    fc.assert(
      fc.property(any.plan, (plan) => {
        const warm = { ...plan, air: { ...plan.air, temperatureC: plan.air.temperatureC + 10 } };
        eachArrival(resultOf(plan), resultOf(warm), (a, b) => {
          expect(b.path).toBe(a.path);
          if (a.path > 0) expect(b.time).toBeLessThan(a.time);
        });
      }),
      { numRuns: 50 },
    );
  });

  test('nothing ever comes out as NaN or Infinity', () => {
    fc.assert(
      fc.property(any.plan, (plan) => {
        JSON.stringify(resultOf(plan), (key, value) => {
          if (typeof value === 'number' && !Number.isFinite(value))
            throw new Error(`${key}: ${value}`);
          return value;
        });
      }),
      { numRuns: 100 },
    );
  });
});
