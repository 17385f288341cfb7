import { describe, expect, test } from 'vitest';
import {
  compared,
  type Measure,
  measureOf,
  measureOptions,
  type SpeakerInput,
  sensitivityOf,
  trialsOf,
  type Uncertainty,
  USUAL_UNCERTAINTIES,
  uncertaintyBetween,
  uncertaintyOf,
  type Vec3,
} from '../../../src/geometry';
import { distance, sub } from '../../../src/geometry/vector';
import { ASIDE } from '../study/stages';
import { boardPlan, onBoards, pointOn, type Spot, stagesOf } from './boards';

const { spot: SPOT, seat: SEAT } = USUAL_UNCERTAINTIES;
const MID = { role: 'midrange' as const, nth: 0 };
const DIFFERENCE = measureOf('difference', 'seat', { who: MID });

/** Unit vector from a spot to the head: how the path changes as either moves. */
function towards(side: -1 | 1, spot: Spot): Vec3 {
  const point = pointOn(side, spot);
  const [x, y, z] = sub(ASIDE, point);
  const length = distance(point, ASIDE);
  return [x / length, y / length, z / length];
}

function standardOf(
  options: readonly SpeakerInput[][],
  measure: Measure = DIFFERENCE,
): Uncertainty {
  const measured = measureOptions(stagesOf(boardPlan(options)));
  const [a, b] = measured;
  if (!a || !b) throw new Error('two options are wanted');
  return uncertaintyOf(measure, a, b, trialsOf(measured, 'seat'));
}

const known = (uncertainty: Uncertainty): number => {
  if ('why' in uncertainty) throw new Error(uncertainty.why);
  return uncertainty.standard;
};

const A: Spot = [0.9, 0.5];
const B: Spot = [0.2, 0.9];

test('four spots off by themselves and the seat off under both, added in squares, by hand', () => {
  let squares = 0;
  for (const spot of [A, B])
    for (const side of [-1, 1] as const) {
      const [, y, z] = towards(side, spot);
      squares += (SPOT * y) ** 2 + (SPOT * z) ** 2;
    }
  // The left is nearer in both, so |difference| = right − left; the seat moves along X.
  const [alongA, alongB] = [A, B].map((spot) => towards(1, spot)[0] - towards(-1, spot)[0]) as [
    number,
    number,
  ];
  squares += (SEAT * (alongA - alongB)) ** 2;
  const found = known(standardOf([onBoards('midrange', A), onBoards('midrange', B)]));
  // One standard uncertainty is no small step to a tenth of a percent.
  expect(Math.abs(found / Math.sqrt(squares) - 1)).toBeLessThan(0.01);
});

test('what both options share is off in both at once: a pair on the same spots does not differ', () => {
  const both = [...onBoards('midrange', A), ...onBoards('tweeter', [0.5, 0.5])];
  const moved = [...onBoards('midrange', A), ...onBoards('tweeter', B)];
  expect(known(standardOf([both, moved]))).toBe(0);
});

test('temperature changes times and no lengths, so a difference in mm is not unsure of it', () => {
  const measured = measureOptions(
    stagesOf(boardPlan([onBoards('midrange', A), onBoards('midrange', B)])),
  );
  const [a, b] = measured;
  if (!a || !b) throw new Error('two options are wanted');
  const with5 = trialsOf(measured, 'seat');
  const without = trialsOf(measured, 'seat', { ...USUAL_UNCERTAINTIES, temperatureC: 0 });
  expect(uncertaintyOf(DIFFERENCE, a, b, with5)).toEqual(uncertaintyOf(DIFFERENCE, a, b, without));
});

test('twice the uncertainty of the spots is about twice the uncertainty they make', () => {
  const measured = measureOptions(
    stagesOf(boardPlan([onBoards('midrange', A), onBoards('midrange', B)])),
  );
  const [a, b] = measured;
  if (!a || !b) throw new Error('two options are wanted');
  const of = (spot: number) =>
    known(
      uncertaintyOf(
        DIFFERENCE,
        a,
        b,
        trialsOf(measured, 'seat', { spot, seat: 0, temperatureC: 0 }),
      ),
    );
  expect(Math.abs(of(4) / of(2) - 2)).toBeLessThan(0.02);
});

test('a spot off by itself does what the study of what matters says it does', () => {
  const measured = measureOptions(
    stagesOf(boardPlan([onBoards('midrange', A), onBoards('midrange', B)])),
  );
  const [a] = measured;
  if (!a) throw new Error('an option is wanted');
  const ten = { spot: 10, seat: 0, temperatureC: 0 };
  const trials = trialsOf([a], 'seat', ten).options.get('a');
  const [study] = sensitivityOf(a.stage, 'seat');
  const changes = [...(trials ?? [])]
    .filter(([cause]) => cause.startsWith('midrange'))
    .map(
      ([, tried]) =>
        ([1, -1] as const)
          .map(
            (sign) =>
              (tried[sign]?.get(DIFFERENCE.id)?.value ?? Number.NaN) -
              (a.values.get(DIFFERENCE.id)?.value ?? Number.NaN),
          )
          .sort((p, q) => Math.abs(q) - Math.abs(p))[0],
    );
  const { left, right } = study?.alone ?? { left: null, right: null };
  const said = [left?.alongU, left?.alongV, right?.alongU, right?.alongV].map(
    (change) => change?.difference,
  );
  expect(changes).toHaveLength(4);
  changes.forEach((change, i) => {
    expect(Math.abs((change ?? Number.NaN) - (said[i] ?? Number.NaN))).toBeLessThan(1e-6);
  });
});

test('near nothing a difference is not told surer than it is', () => {
  // On the centreline left and right are even: |difference| has a kink there.
  const options = [onBoards('midrange', A), onBoards('midrange', B)];
  const plan = boardPlan(options, { seats: [{ id: 'seat', head: [1500, 0, 1000] }] });
  const measured = measureOptions(stagesOf(plan));
  const [a, b] = measured;
  if (!a || !b) throw new Error('two options are wanted');
  expect(a.values.get(DIFFERENCE.id)?.value).toBeCloseTo(0, 9);
  const { standard } = uncertaintyOf(DIFFERENCE, a, b, trialsOf(measured, 'seat')) as {
    standard: number;
  };
  expect(standard).toBeGreaterThan(SPOT * 0.3);
});

test('a free point is off along all three axes of the car', () => {
  const free = (x: number): SpeakerInput[] =>
    ([-1, 1] as const).map((side) => ({
      id: `mid-${side < 0 ? 'left' : 'right'}`,
      role: 'midrange',
      pair: 'mid',
      side: side < 0 ? 'left' : 'right',
      position: [x, side * 600, 700],
    }));
  const measured = measureOptions(
    stagesOf(boardPlan([free(0), free(300)], { cabin: { template: 'none', wheelSide: 'left' } })),
  );
  const [a, b] = measured;
  if (!a || !b) throw new Error('two options are wanted');
  const seatless = { ...USUAL_UNCERTAINTIES, seat: 0 };
  const found = known(uncertaintyOf(DIFFERENCE, a, b, trialsOf(measured, 'seat', seatless)));
  // Three axes together: the whole of the path's change, whichever way it points; four spots.
  expect(Math.abs(found - SPOT * 2)).toBeLessThan(0.02);
});

test('what comes or goes when something is a little off has no number, but a reason', () => {
  const measured = measureOptions(
    stagesOf(boardPlan([onBoards('midrange', A), onBoards('midrange', B)])),
  );
  const [a, b] = measured;
  if (!a || !b) throw new Error('two options are wanted');
  const trials = trialsOf(measured, 'seat');
  const near = uncertaintyBetween(a, b, trials, (values) => (values === a.values ? 1 : Infinity));
  expect(near).toHaveProperty('why');
});

describe('against a Monte Carlo of the same causes, seeded', () => {
  const TRIES = 4000;

  /** Mulberry32, a common small generator; then Box and Muller's pair (Ann. Math. Stat. 29, 1958). */
  function normals(seed: number): () => number {
    let state = seed;
    const uniform = () => {
      state = (state + 0x6d2b79f5) | 0;
      let t = Math.imul(state ^ (state >>> 15), 1 | state);
      t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
      return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
    };
    return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  }

  function spread(of: (next: () => number) => number): number {
    const next = normals(20240607);
    const values = Array.from({ length: TRIES }, () => of(next));
    const mean = values.reduce((sum, one) => sum + one, 0) / TRIES;
    return Math.sqrt(values.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (TRIES - 1));
  }

  /** Both speakers of a spot a little off, and what that makes of them at a head. */
  function shaken(spot: Spot, next: () => number): Record<'left' | 'right', Vec3> {
    const one = (side: -1 | 1): Vec3 => {
      const [x, y, z] = pointOn(side, spot);
      return [x, y + SPOT * next(), z + SPOT * next()];
    };
    return { left: one(-1), right: one(1) };
  }

  const headOff = (next: () => number): Vec3 => [ASIDE[0] + SEAT * next(), ASIDE[1], ASIDE[2]];

  // 4000 tries know a spread to about 1 %; the causes are not small to another few.
  const WITHIN = 0.05;

  test('the difference of a pair', () => {
    const drawn = spread((next) => {
      const head = headOff(next);
      const [a, b] = [A, B].map((spot) => {
        const { left, right } = shaken(spot, next);
        return Math.abs(distance(left, head) - distance(right, head));
      }) as [number, number];
      return a - b;
    });
    const found = known(standardOf([onBoards('midrange', A), onBoards('midrange', B)]));
    expect(Math.abs(found / drawn - 1)).toBeLessThan(WITHIN);
  });

  test('the larger angle of a pair', () => {
    const drawn = spread((next) => {
      const head = headOff(next);
      const [a, b] = [A, B].map((spot) => {
        const { left, right } = shaken(spot, next);
        const angle = (point: Vec3) =>
          (Math.acos((head[0] - point[0]) / distance(point, head)) * 180) / Math.PI;
        return Math.max(angle(left), angle(right));
      }) as [number, number];
      return a - b;
    });
    const measure = measureOf('offAxisDeg', 'seat', { who: MID });
    const found = known(standardOf([onBoards('midrange', A), onBoards('midrange', B)], measure));
    expect(Math.abs(found / drawn - 1)).toBeLessThan(WITHIN);
  });

  test('the spread of the paths of one side, one spot of which both share', () => {
    const shared: Spot = [0.5, 0.2];
    const drawn = spread((next) => {
      const head = headOff(next);
      const tweeter = shaken(shared, next).right;
      const [a, b] = [A, B].map((spot) => {
        const { right } = shaken(spot, next);
        return Math.abs(distance(right, head) - distance(tweeter, head));
      }) as [number, number];
      return a - b;
    });
    const option = (spot: Spot) => [...onBoards('midrange', spot), ...onBoards('tweeter', shared)];
    const measure = measureOf('pathSpread', 'seat', { side: 'right' });
    const found = known(standardOf([option(A), option(B)], measure));
    expect(Math.abs(found / drawn - 1)).toBeLessThan(WITHIN);
  });

  test('the difference in level', () => {
    const drawn = spread((next) => {
      const head = headOff(next);
      const [a, b] = [A, B].map((spot) => {
        const { left, right } = shaken(spot, next);
        return Math.abs(20 * Math.log10(distance(right, head) / distance(left, head)));
      }) as [number, number];
      return a - b;
    });
    const measure = measureOf('levelDifferenceDb', 'seat', { who: MID });
    const found = known(standardOf([onBoards('midrange', A), onBoards('midrange', B)], measure));
    expect(Math.abs(found / drawn - 1)).toBeLessThan(WITHIN);
  });
});

test('what is compared of a difference is how large it is, not its sign', () => {
  expect(compared(DIFFERENCE, { value: -283 })).toBe(283);
  expect(compared(measureOf('crossoverDipDb', 'seat'), { value: -3 })).toBe(-3);
  expect(compared(measureOf('firstReflectionTime', 'seat'), { value: null, none: true })).toBe(
    Infinity,
  );
  expect(compared(DIFFERENCE, { value: null, reason: 'not known' })).toBeNull();
});
