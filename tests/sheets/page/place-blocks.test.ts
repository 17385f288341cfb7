import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Measured, type PlacedPage, placeBlocks } from '../../../src/sheets/page/place-blocks';

const PAGE = 250;
const GAP = 4;

const piece = (id: string, height: number, rules: Partial<Measured> = {}): Measured => ({
  id,
  kind: 'piece',
  height,
  ...rules,
});
const table = (id: string, rows: number, height = 8): Measured => ({
  id,
  kind: 'table',
  height: 10,
  rows: Array.from({ length: rows }, () => height),
});

/** Height of what stands on a page, by its own sum. */
function heightOf({ puts }: PlacedPage, blocks: readonly Measured[]): number {
  const heights = puts.map(({ block, rows, shrink }) => {
    const { height, rows: all = [] } = blocks[block] as Measured;
    const shown = rows ? all.slice(...rows) : [];
    return (height + shown.reduce((sum, one) => sum + one, 0)) * shrink;
  });
  return heights.reduce((sum, one) => sum + one, 0) + GAP * (puts.length - 1);
}

describe('blocks on pages', () => {
  test.each([0, 1, 40])('a table of %i speakers: every row once, in order, whole', (count) => {
    const blocks = [piece('head', 20, { keepWithNext: true }), table('speakers', count)];
    const pages = placeBlocks(blocks, PAGE, GAP);
    const rows = pages.flatMap(({ puts }) =>
      puts.flatMap(({ block, rows }) =>
        block === 1 && rows ? Array.from({ length: rows[1] - rows[0] }, (_, i) => i + rows[0]) : [],
      ),
    );
    expect(rows).toEqual(Array.from({ length: count }, (_, i) => i));
    expect(pages).toHaveLength(count === 40 ? 2 : 1);
  });

  test('a heading goes with the first row it heads', () => {
    const blocks = [
      piece('text', 225),
      piece('heading', 6, { keepWithNext: true }),
      table('speakers', 2),
    ];
    const [first, second] = placeBlocks(blocks, PAGE, GAP);
    expect(first?.puts.map(({ block }) => block)).toEqual([0]);
    expect(second?.puts.map(({ block }) => block)).toEqual([1, 2]);
  });

  test('a whole page stands alone, and a block may begin a page', () => {
    const blocks: Measured[] = [
      piece('a', 10),
      { id: 'template', kind: 'page', height: 0 },
      piece('b', 10),
      piece('c', 10, { startsPage: true }),
    ];
    const pages = placeBlocks(blocks, PAGE, GAP);
    expect(pages.map(({ puts }) => puts.map(({ block }) => block))).toEqual([[0], [1], [2], [3]]);
  });

  test('what is taller than a page shrinks to one', () => {
    expect(placeBlocks([piece('poster', 500)], PAGE, GAP)[0]?.puts[0]?.shrink).toBe(0.5);
  });

  test('nothing to print is no page', () => {
    expect(placeBlocks([], PAGE, GAP)).toEqual([]);
  });

  test('a page without height is refused', () => {
    expect(() => placeBlocks([], 0, GAP)).toThrow(/placeBlocks: expected a page height above 0/);
  });

  test('whatever the blocks: none lost, none cut, no page empty or overfull, no heading last', () => {
    const some = fc.oneof(
      fc.record({
        kind: fc.constant('piece' as const),
        height: fc.double({ min: 1, max: 300, noNaN: true }),
        keepWithNext: fc.boolean(),
        startsPage: fc.boolean(),
      }),
      fc.record({
        kind: fc.constant('table' as const),
        height: fc.constant(10),
        rows: fc.array(fc.double({ min: 3, max: 60, noNaN: true }), { maxLength: 60 }),
      }),
      fc.record({ kind: fc.constant('page' as const), height: fc.constant(0) }),
    );
    fc.assert(
      fc.property(fc.array(some, { maxLength: 25 }), (list) => {
        const blocks = list.map((one, i): Measured => ({ id: String(i), ...one }));
        const pages = placeBlocks(blocks, PAGE, GAP);
        const order = pages.flatMap(({ puts }) => puts);
        expect([...new Set(order.map(({ block }) => block))]).toEqual(blocks.map((_, i) => i));
        for (const [i, block] of blocks.entries()) {
          const rows = order.filter((put) => put.block === i).map((put) => put.rows);
          if (block.kind !== 'table') expect(rows).toEqual([undefined]);
          else {
            expect(rows[0]?.[0]).toBe(0);
            expect(rows.at(-1)?.[1]).toBe(block.rows?.length);
            for (let k = 1; k < rows.length; k++) expect(rows[k]?.[0]).toBe(rows[k - 1]?.[1]);
          }
        }
        for (const page of pages) {
          expect(page.puts.length).toBeGreaterThan(0);
          expect(heightOf(page, blocks)).toBeLessThanOrEqual(PAGE + 1e-6);
        }
      }),
      { numRuns: 300 },
    );
  });
});
