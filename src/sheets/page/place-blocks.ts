/**
 * Puts measured blocks on pages: no row is cut, no page is empty, headings stay with what follows,
 * and a table that goes on repeats its head. Plain numbers in one unit, whichever.
 */
export interface Measured {
  id: string;
  kind: 'piece' | 'table' | 'page';
  /** Piece: its height. Table: the head's. */
  height: number;
  /** Table: one height a row. */
  rows?: readonly number[];
  keepWithNext?: boolean;
  startsPage?: boolean;
  /** Only a third of the gap before it. */
  tight?: boolean;
}

/** A block, or some rows of one, on a page. */
export interface Put {
  /** Number of the block. */
  block: number;
  /** Rows from (included) to (excluded), of a table. */
  rows?: readonly [number, number];
  /** How much it has to shrink to fit a page of its own; 1: not at all. */
  shrink: number;
}

export interface PlacedPage {
  puts: Put[];
}

/** How many times less the gap before a tight block is. */
export const TIGHT = 3;

/** @param gap between two blocks on a page */
export function placeBlocks(
  blocks: readonly Measured[],
  pageHeight: number,
  gap: number,
): PlacedPage[] {
  if (!(pageHeight > 0)) {
    throw new RangeError(`placeBlocks: expected a page height above 0, got ${pageHeight}`);
  }
  const pages: PlacedPage[] = [];
  let used = 0;
  let page: PlacedPage | null = null;
  const turn = () => {
    page = null;
    used = 0;
  };
  const before = ({ tight }: Measured) => (tight ? gap / TIGHT : gap);
  const room = (block: Measured) => pageHeight - (page ? used + before(block) : 0);
  const put = (height: number, one: Put) => {
    used += page ? before(blocks[one.block] as Measured) + height : height;
    if (!page) {
      page = { puts: [] };
      pages.push(page);
    }
    page.puts.push(one);
  };

  for (let i = 0; i < blocks.length; i++) {
    const block = blocks[i] as Measured;
    if (block.startsPage) turn();
    if (block.kind === 'page') {
      turn();
      put(pageHeight, { block: i, shrink: 1 });
      turn();
      continue;
    }
    // A heading, and the headings after it, come along with the first of what they head.
    if (room(block) < leastHeight(blocks, i, gap)) turn();
    if (block.kind === 'piece') {
      const shrink = Math.min(1, pageHeight / Math.max(block.height, 1e-9));
      put(block.height * shrink, { block: i, shrink });
      continue;
    }
    const rows = block.rows ?? [];
    if (rows.length === 0) {
      put(block.height, { block: i, rows: [0, 0], shrink: 1 });
      continue;
    }
    for (let from = 0; from < rows.length; ) {
      let to = from + 1;
      let height = block.height + (rows[from] as number);
      if (height > room(block)) turn();
      const shrink = Math.min(1, pageHeight / Math.max(height, 1e-9));
      while (to < rows.length && height + (rows[to] as number) <= room(block)) {
        height += rows[to] as number;
        to++;
      }
      put(height * shrink, { block: i, rows: [from, to], shrink });
      from = to;
      if (from < rows.length) turn();
    }
  }
  return pages;
}

/** The least that may begin at a block: itself, or its first row, with what it must stay with. */
function leastHeight(blocks: readonly Measured[], from: number, gap: number): number {
  let height = 0;
  for (let i = from; i < blocks.length; i++) {
    const block = blocks[i] as Measured;
    if (i > from && (block.startsPage || block.kind === 'page')) return height;
    height +=
      (i > from ? (block.tight ? gap / TIGHT : gap) : 0) + block.height + (block.rows?.[0] ?? 0);
    if (!block.keepWithNext) return height;
  }
  return height;
}

/** On which page (from 1) each block begins, by id. */
export function beginnings(
  blocks: readonly { id: string }[],
  pages: readonly PlacedPage[],
): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  pages.forEach(({ puts }, page) => {
    for (const { block } of puts) {
      const id = blocks[block]?.id;
      if (id !== undefined && !found.has(id)) found.set(id, page + 1);
    }
  });
  return found;
}
