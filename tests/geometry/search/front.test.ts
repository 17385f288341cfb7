import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { tradeOffFront } from '../../../src/geometry';

/** Whole numbers, so that ties are common; infinities where a measure has none. */
const cost = fc.oneof(
  { weight: 8, arbitrary: fc.integer({ min: 0, max: 6 }) },
  { weight: 1, arbitrary: fc.constantFrom(Infinity, -Infinity) },
);

describe('the trade-off front', () => {
  test('is what is left when every row is held against every other', () => {
    fc.assert(
      fc.property(
        fc
          .integer({ min: 1, max: 4 })
          .chain((aims) =>
            fc.array(fc.array(cost, { minLength: aims, maxLength: aims }), { maxLength: 60 }),
          ),
        (rows) => {
          const aims = rows[0]?.length ?? 1;
          const naive = rows.flatMap((row, i) =>
            rows.some(
              (other) =>
                other.every((x, k) => x <= (row[k] as number)) &&
                other.some((x, k) => x < (row[k] as number)),
            )
              ? []
              : [i],
          );
          expect(tradeOffFront(Float64Array.from(rows.flat()), aims)).toEqual(naive);
        },
      ),
      { numRuns: 500 },
    );
  });

  test('two alike in everything both stay', () => {
    expect(tradeOffFront(Float64Array.from([1, 2, 1, 2, 2, 3]), 2)).toEqual([0, 1]);
  });

  test('of nothing is nothing', () => {
    expect(tradeOffFront(new Float64Array(0), 3)).toEqual([]);
  });
});
