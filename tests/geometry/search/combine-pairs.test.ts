import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bestChoice, type Candidates } from '../../../src/geometry/search/combine-pairs';

const WEIGHTS = [0.01, 0.004];
const LANES = 2 * WEIGHTS.length;

const candidate = fc.record({
  score: fc.integer({ min: 0, max: 20 }).map((n) => n / 4),
  paths: fc.array(fc.integer({ min: 500, max: 1500 }), { minLength: LANES, maxLength: LANES }),
});
const stage = fc.array(fc.array(candidate, { maxLength: 7 }), { minLength: 1, maxLength: 4 });

const ready = (all: readonly { score: number; paths: number[] }[]): Candidates => {
  const sorted = [...all].sort((a, b) => a.score - b.score);
  return {
    scores: Float64Array.from(sorted, ({ score }) => score),
    paths: Float64Array.from(sorted.flatMap(({ paths }) => paths)),
  };
};

/** Every combination, one after the other. */
function naive(
  pairs: readonly Candidates[],
  allowed: (picks: readonly number[]) => boolean,
): number {
  let best = Infinity;
  const go = (picks: number[]): void => {
    if (picks.length < pairs.length) {
      const { scores } = pairs[picks.length] as Candidates;
      for (let i = 0; i < scores.length; i++) go([...picks, i]);
      return;
    }
    if (!allowed(picks)) return;
    let sum = 0;
    let spread = 0;
    picks.forEach((i, p) => {
      sum += pairs[p]?.scores[i] as number;
    });
    for (let lane = 0; lane < LANES; lane++) {
      const here = picks.map((i, p) => pairs[p]?.paths[LANES * i + lane] as number);
      const weight = WEIGHTS[Math.floor(lane / 2)] as number;
      spread = Math.max(spread, weight * (Math.max(...here) - Math.min(...here)));
    }
    best = Math.min(best, sum + spread);
  };
  go([]);
  return best;
}

function found(
  pairs: readonly Candidates[],
  stand: Parameters<typeof bestChoice>[2],
  wanted: Parameters<typeof bestChoice>[3],
) {
  const steps = bestChoice(pairs, WEIGHTS, stand, wanted);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

describe('the best choice for several pairs', () => {
  test('is that of all combinations, whatever may not stand together', () => {
    fc.assert(
      fc.property(stage, fc.integer({ min: 2, max: 5 }), (given, nth) => {
        const pairs = given.map(ready);
        const stand = (p: number, i: number, q: number, j: number) =>
          (p + q + 3 * (i + j)) % nth !== 0;
        const wanted = (picks: readonly number[]) =>
          picks.includes(-1) || picks.reduce((a, b) => a + b, 0) % nth !== 1;
        const allowed = (picks: readonly number[]) =>
          wanted(picks) &&
          picks.every((i, p) => picks.every((j, q) => q <= p || stand(p, i, q, j)));
        const { choice, complete } = found(pairs, stand, wanted);
        expect(complete).toBe(true);
        expect(choice?.score ?? Infinity).toBeCloseTo(naive(pairs, allowed), 9);
        if (choice) expect(allowed(choice.picks)).toBe(true);
      }),
      { numRuns: 500 },
    );
  });
});
