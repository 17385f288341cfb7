import { describe, expect, test } from 'vitest';
import { buildCabin, carFromAbove, slowMotion, windowOf } from '../../../src/geometry';
import { cutAt, type Spot } from '../../../src/geometry/slow-motion/cut';
import { hullOf } from '../../../src/geometry/slow-motion/hull';
import { demoPlan } from '../../../src/plan/demo';
import { stageOf } from '../study/stages';

/** A pyramid on a square of 200, 100 high, its corners at ±100. */
const PYRAMID = {
  vertices: [
    [-100, -100, 0],
    [-100, 100, 0],
    [100, 100, 0],
    [100, -100, 0],
    [0, 0, 100],
  ],
  triangles: [
    [0, 1, 4],
    [1, 2, 4],
    [2, 3, 4],
    [3, 0, 4],
  ],
} as const;

const along = (line: readonly Spot[]): number =>
  line.reduce((sum, [x, y], i) => {
    const [a, b] = line[i - 1] ?? [x, y];
    return sum + Math.hypot(x - a, y - b);
  }, 0);

describe('a cut through a mesh', () => {
  test('halfway up a pyramid is a square half as wide, in one line', () => {
    const lines = cutAt(PYRAMID, 50);
    expect(lines).toHaveLength(1);
    expect(Math.abs(along(lines[0] ?? []) - 400)).toBeLessThan(1e-9);
  });

  test('above it is nothing', () => {
    expect(cutAt(PYRAMID, 100.1)).toEqual([]);
    expect(cutAt(PYRAMID, -0.1)).toEqual([]);
  });
});

test('the hull of a square with a place inside is the square', () => {
  const square: Spot[] = [
    [0, 0],
    [2, 0],
    [2, 2],
    [0, 2],
    [1, 1],
    [1, 0],
  ];
  expect(hullOf(square)).toHaveLength(4);
});

describe('the car from above', () => {
  const plan = demoPlan();
  const at = stageOf(plan);
  const seat = at.cabin.seats[0];
  if (!seat) throw new Error('the demo has no seat');
  const car = carFromAbove(at.cabin, seat.head[2]);

  test('is cut through windscreen and side glass at the height of the ears', () => {
    const glass = car.lines.filter(({ kind }) => kind === 'glass');
    expect(glass.length).toBeGreaterThanOrEqual(3);
    expect(car.lines.some(({ kind }) => kind === 'wall')).toBe(true);
    // What is cut stands round the listener on all sides.
    const spots = glass.flatMap(({ points }) => points);
    const [x, y] = [seat.head[1], seat.head[0]];
    expect(spots.some((spot) => spot[0] < x)).toBe(true);
    expect(spots.some((spot) => spot[0] > x)).toBe(true);
    expect(spots.some((spot) => spot[1] < y)).toBe(true);
    expect(spots.some((spot) => spot[1] > y)).toBe(true);
  });

  test('is the same object as long as cabin and height are', () => {
    expect(carFromAbove(at.cabin, seat.head[2])).toBe(car);
    expect(carFromAbove(at.cabin, seat.head[2] + 1)).not.toBe(car);
  });

  test('lies alike on both sides but for the wheel', () => {
    const mirrored = buildCabin({ ...plan, cabin: { ...plan.cabin, wheelSide: 'right' } });
    if (!mirrored.ok) throw new Error(mirrored.error.message);
    const other = carFromAbove(mirrored.cabin, seat.head[2]);
    const widest = (one: typeof car) =>
      Math.max(...one.outline.map(([across]) => Math.abs(across)));
    expect(Math.abs(widest(other) - widest(car))).toBeLessThan(1e-6);
    const wheel = (one: typeof car) => one.lines.find(({ kind }) => kind === 'wheel')?.points ?? [];
    expect(wheel(car).every(([across]) => across < 0)).toBe(true);
    expect(wheel(other).every(([across]) => across > 0)).toBe(true);
  });

  test('the part looked at holds every speaker and the listener, and the whole width', () => {
    const motion = slowMotion(at, seat.id, 'none');
    const { left, right, front, rear } = windowOf(car, seat, [motion]);
    for (const { centre } of motion.waves) {
      expect(centre[1]).toBeGreaterThan(left);
      expect(centre[1]).toBeLessThan(right);
      expect(centre[0]).toBeGreaterThan(front);
      expect(centre[0]).toBeLessThan(rear);
    }
    expect(rear).toBeGreaterThan(seat.head[0] + 200);
    expect(rear).toBeLessThan(Math.max(...car.outline.map(([, y]) => y)));
  });
});

test('a plan without panels has a listener and speakers to look at all the same', () => {
  const plan = demoPlan();
  const bare = stageOf({
    ...plan,
    cabin: { template: 'none', wheelSide: 'left' },
    seats: [{ id: 'front-left', head: [900, -370, 900] }],
    options: [
      {
        id: 'a',
        speakers: [
          {
            id: 's',
            role: 'wideband',
            position: [200, 0, 900],
            aim: { kind: 'seat', seat: 'front-left' },
          },
        ],
      },
    ],
  });
  const [seat] = bare.cabin.seats;
  if (!seat) throw new Error('there is no seat');
  const car = carFromAbove(bare.cabin, 900);
  expect(car.outline).toEqual([]);
  const window = windowOf(car, seat, [slowMotion(bare, 'front-left', 'none')]);
  expect(Object.values(window).every(Number.isFinite)).toBe(true);
  expect(window.rear).toBeGreaterThan(window.front);
});
