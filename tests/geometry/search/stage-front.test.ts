import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SPOT_AIMS } from '../../../src/geometry';
import type { ReadySearch } from '../../../src/geometry/search/prepare';
import { matching, stageFrontInSteps } from '../../../src/geometry/search/stage-front';
import type { StagePair } from '../../../src/geometry/search/stage-pairs';

const WEIGHTS = [0.01, 0.004];
const LANES = 2 * WEIGHTS.length;
const AIMS = SPOT_AIMS.length;

interface Given {
  penalties: number[];
  paths: number[];
  position: [number, number, number];
}

const spot: fc.Arbitrary<Given> = fc.record({
  penalties: fc.array(fc.integer({ min: 0, max: 6 }), { minLength: AIMS, maxLength: AIMS }),
  paths: fc.array(
    fc.integer({ min: 5, max: 15 }).map((n) => 100 * n),
    { minLength: LANES, maxLength: LANES },
  ),
  position: fc.tuple(fc.nat(80), fc.nat(80), fc.constant(0)),
});
const stage = fc.array(fc.array(spot, { minLength: 1, maxLength: 6 }), {
  minLength: 1,
  maxLength: 3,
});

const sum = (all: readonly number[]) => all.reduce((a, b) => a + b, 0);

function pairOf(given: readonly Given[]): StagePair {
  const sorted = [...given].sort((a, b) => sum(a.penalties) - sum(b.penalties));
  return {
    ready: {
      wants: Object.fromEntries(SPOT_AIMS.map((aim) => [aim, 1])),
    } as unknown as ReadySearch,
    candidates: {
      scores: Float64Array.from(sorted, ({ penalties }) => sum(penalties)),
      paths: Float64Array.from(sorted.flatMap(({ paths }) => paths)),
    },
    penalties: Float64Array.from(sorted.flatMap(({ penalties }) => penalties)),
    positions: Float64Array.from(sorted.flatMap(({ position }) => [...position, ...position])),
    spotsAt: () => {
      throw new Error('not asked here');
    },
  };
}

/** All costs of a choice, by the plain definition. */
function costsOf(pairs: readonly StagePair[], picks: readonly number[]): number[] {
  const costs = SPOT_AIMS.map((_, a) =>
    sum(picks.map((i, p) => pairs[p]?.penalties[AIMS * i + a] as number)),
  );
  const spreads = Array.from({ length: LANES }, (_, lane) => {
    const here = picks.map((i, p) => pairs[p]?.candidates.paths[LANES * i + lane] as number);
    return (WEIGHTS[Math.floor(lane / 2)] as number) * (Math.max(...here) - Math.min(...here));
  });
  return [...costs, Math.max(...spreads)];
}

const combinations = (lists: readonly (readonly number[])[]): number[][] =>
  lists.reduce<number[][]>(
    (all, list) => all.flatMap((begun) => list.map((i) => [...begun, i])),
    [[]],
  );

const beats = (one: readonly number[], other: readonly number[]) =>
  one.every((x, k) => x <= (other[k] as number)) && one.some((x, k) => x < (other[k] as number));

function frontOf(
  pairs: readonly StagePair[],
  fits: (picks: readonly number[]) => boolean,
  known: number[][] = [],
  most?: number,
) {
  const steps = stageFrontInSteps(pairs, WEIGHTS, fits, known, most);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

const everyOne = ({ candidates }: StagePair) => [...candidates.scores.keys()];

describe('the trade-off front of several pairs together', () => {
  test('is what is left when every combination is held against every other', () => {
    fc.assert(
      fc.property(stage, fc.integer({ min: 2, max: 5 }), (given, nth) => {
        const pairs = given.map(pairOf);
        const fits = (picks: readonly number[]) =>
          picks.includes(-1) || sum([...picks]) % nth !== 1;
        const all = combinations(pairs.map(everyOne)).filter(fits);
        const naive = all.filter(
          (picks) => !all.some((other) => beats(costsOf(pairs, other), costsOf(pairs, picks))),
        );
        const front = frontOf(pairs, fits);
        expect(front).toMatchObject({ combinations: all.length, spacing: 0, within: 0 });
        expect(front.picks.map(String).sort()).toEqual(naive.map(String).sort());
      }),
      { numRuns: 200 },
    );
  });

  test('where they are too many, is that of the spots left when thinned to the spacing it names', () => {
    let thinner = 0;
    fc.assert(
      fc.property(stage, fc.integer({ min: 1, max: 60 }), (given, most) => {
        const pairs = given.map(pairOf);
        const known = [pairs.map(({ candidates }) => candidates.scores.length - 1)];
        const front = frontOf(pairs, () => true, known, most);
        const kept = pairs.map(({ candidates, positions }) => {
          const left: number[] = [];
          for (const i of candidates.scores.keys()) {
            const far = (j: number) =>
              Math.hypot(
                ...[0, 1, 2].map((k) => (positions[6 * i + k] ?? 0) - (positions[6 * j + k] ?? 0)),
              );
            if (left.every((j) => far(j) >= front.spacing)) left.push(i);
          }
          return left;
        });
        const product = combinations(kept);
        expect(product.length).toBeLessThanOrEqual(most);
        const all = [
          ...new Map([...known, ...product].map((picks) => [String(picks), picks])).values(),
        ];
        expect(front.combinations).toBe(all.length);
        const naive = all.filter(
          (picks) => !all.some((other) => beats(costsOf(pairs, other), costsOf(pairs, picks))),
        );
        expect(front.picks.map(String).sort()).toEqual(naive.map(String).sort());
        if (front.spacing > 0) thinner += 1;
      }),
      { numRuns: 200 },
    );
    expect(thinner).toBeGreaterThan(20);
  });

  test('told in part still matches every row of it within what it says, the best first', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.array(fc.double({ min: 0, max: 3, noNaN: true }), { minLength: 3, maxLength: 3 }),
          {
            minLength: 1,
            maxLength: 60,
          },
        ),
        fc.integer({ min: 1, max: 20 }),
        (table, most) => {
          const rows = [...table.keys()].sort((a, b) => sum(table[a] ?? []) - sum(table[b] ?? []));
          const told = matching(rows, table.flat(), 3, most);
          expect(told.rows.length).toBeLessThanOrEqual(most);
          expect(told.rows[0]).toBe(rows[0]);
          if (rows.length <= most) expect(told).toEqual({ rows, within: 0 });
          for (const row of table)
            expect(
              told.rows.some((one) =>
                (table[one] ?? []).every((x, k) => x <= (row[k] as number) + told.within),
              ),
            ).toBe(true);
        },
      ),
      { numRuns: 300 },
    );
  });
});
