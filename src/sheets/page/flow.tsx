import { useLayoutEffect, useMemo, useRef, useState } from 'react';
import { usePaperSettings } from '../settings';
import { BlockOnPage, type Columns } from './block-on-page';
import type { Block, Told } from './blocks';
import { Measure, measured } from './measure';
import { Page } from './page';
import { beginnings, type PlacedPage, placeBlocks } from './place-blocks';
import { contentBox } from './sizes';

/** Between two blocks, mm. */
export const BLOCK_GAP = 3.5;

interface Layout {
  of: readonly Block[];
  size: string;
  pages: PlacedPage[];
  columns: readonly Columns[];
}

/** Puts blocks on as many pages as they need: see `place-blocks.ts` for the rules. */
export function Flow({ blocks }: { blocks: readonly Block[] }) {
  const size = usePaperSettings(({ pageSize }) => pageSize);
  const [layout, setLayout] = useState<Layout | null>(null);
  const measure = useRef<HTMLDivElement>(null);
  const current = layout?.of === blocks && layout.size === size ? layout : null;

  useLayoutEffect(() => {
    if (current || !measure.current) return;
    const { heights, columns, pageHeight, gap } = measured(measure.current, blocks);
    setLayout({ of: blocks, size, pages: placeBlocks(heights, pageHeight, gap), columns });
  });

  if (!current)
    return <Measure ref={measure} blocks={blocks} box={contentBox(size)} gap={BLOCK_GAP} />;
  return <Pages layout={current} />;
}

function Pages({ layout: { of: blocks, pages, columns } }: { layout: Layout }) {
  const begins = useMemo(() => beginnings(blocks, pages), [blocks, pages]);
  return (
    <div className="flow" data-pages={pages.length}>
      {pages.map(({ puts }, at) => {
        const told: Told = {
          page: at + 1,
          pages: pages.length,
          pageOf: (id) => begins.get(id) ?? null,
        };
        const only = blocks[puts[0]?.block ?? -1];
        return (
          <Page
            // biome-ignore lint/suspicious/noArrayIndexKey: a page is its number.
            key={at}
            number={at + 1}
            of={pages.length}
            bare={only?.kind === 'page' && only.bare}
          >
            {puts.map((put) => {
              const block = blocks[put.block];
              return (
                block && (
                  <BlockOnPage
                    key={block.id}
                    block={block}
                    put={put}
                    told={told}
                    columns={columns[put.block] ?? null}
                  />
                )
              );
            })}
          </Page>
        );
      })}
    </div>
  );
}
