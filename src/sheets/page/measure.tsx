import type { Ref } from 'react';
import { BlockOnPage, type Columns, PaperTable } from './block-on-page';
import type { Block, Told } from './blocks';
import type { Measured } from './place-blocks';

/** No page is known yet. */
const NOT_YET: Told = { page: 0, pages: 0, pageOf: () => null };

interface MeasureProps {
  ref: Ref<HTMLDivElement>;
  blocks: readonly Block[];
  /** mm */
  box: { width: number; height: number };
  gap: number;
}

/** All blocks one under another, as wide as on a page, for being measured: seen by nobody. */
export function Measure({ ref, blocks, box, gap }: MeasureProps) {
  return (
    <div
      ref={ref}
      className="page-content measure"
      aria-hidden="true"
      style={{ width: `${box.width}mm` }}
    >
      <div data-measure="page" style={{ height: `${box.height}mm` }} />
      <div data-measure="gap" style={{ height: `${gap}mm` }} />
      {blocks.map((block) => (
        <div key={block.id} data-measure={block.kind} className="measured">
          {block.kind === 'table' ? (
            <PaperTable block={block} from={0} to={block.rows.length} columns={null} />
          ) : (
            block.kind === 'piece' && (
              <BlockOnPage
                block={block}
                put={{ block: 0, shrink: 1 }}
                told={NOT_YET}
                columns={null}
              />
            )
          )}
        </div>
      ))}
    </div>
  );
}

const heightOf = (element: Element | null | undefined): number =>
  element?.getBoundingClientRect().height ?? 0;

/** Heights of all blocks in px, read from what {@link Measure} put there. */
export function measured(root: HTMLElement, blocks: readonly Block[]) {
  const [page, gap, ...boxes] = [...root.children];
  const heights = blocks.map((block, i): Measured => {
    const box = boxes[i];
    const { id, kind, startsPage, tight } = block;
    if (block.kind === 'table') {
      return {
        id,
        kind,
        startsPage,
        tight,
        height: heightOf(box?.querySelector('thead')),
        rows: [...(box?.querySelectorAll('tbody > tr') ?? [])].map(heightOf),
      };
    }
    const keepWithNext = block.kind === 'piece' && block.keepWithNext;
    return { id, kind, startsPage, tight, keepWithNext, height: heightOf(box) };
  });
  const columns = blocks.map((block, i) => (block.kind === 'table' ? columnsOf(boxes[i]) : null));
  return { heights, columns, pageHeight: heightOf(page), gap: heightOf(gap) };
}

/** Widths of the columns, from the head's cells; one that spans several is shared out evenly. */
function columnsOf(box: Element | undefined): Columns {
  return [
    ...(box?.querySelectorAll<HTMLTableCellElement>('thead > tr:first-child > *') ?? []),
  ].flatMap((cell) =>
    Array.from({ length: cell.colSpan }, () => cell.getBoundingClientRect().width / cell.colSpan),
  );
}
