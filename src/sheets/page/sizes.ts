import type { PageSize } from '../../store/paper-settings';

/** Width and height in mm: ISO 216 A4; Letter is 8.5 × 11 in (ANSI/ASME Y14.1 size A). */
export const PAGE_SIZES: Readonly<Record<PageSize, { width: number; height: number }>> = {
  A4: { width: 210, height: 297 },
  Letter: { width: 215.9, height: 279.4 },
};

/** White round what is printed, mm: more than the 5 or so that desktop printers cannot reach. */
export const MARGIN = { top: 10, side: 15, bottom: 10 };

/** Heights of a page's head and foot, mm. */
export const HEAD = 11;
export const FOOT = 8;

/** Left at the foot of every page for what a printer's rounding may add, mm. */
const SLACK = 1;

/** What blocks have for themselves on one page, mm. */
export function contentBox(size: PageSize): { width: number; height: number } {
  const { width, height } = PAGE_SIZES[size];
  return {
    width: width - 2 * MARGIN.side,
    height: height - MARGIN.top - MARGIN.bottom - HEAD - FOOT - SLACK,
  };
}
