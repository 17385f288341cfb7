/** What a paper is made of, from top to bottom. */
import type { ReactElement, ReactNode } from 'react';

/** What a block is told when it is printed. While blocks are measured no page is known yet. */
export interface Told {
  /** The page it stands on, from 1; 0 while measured. */
  page: number;
  /** How many pages there are; 0 while measured. */
  pages: number;
  /** The page on which the block of that id begins, or `null`. */
  pageOf(id: string): number | null;
}

interface Placed {
  /** Of its own within the paper. */
  id: string;
  /** Begins a new page. */
  startsPage?: boolean;
  /** Stands closer under what comes before: one of a list. */
  tight?: boolean;
}

/** One piece that is never cut: a paragraph, a heading, a drawing. Its height may not change later. */
export interface PieceBlock extends Placed {
  kind: 'piece';
  content: ReactNode | ((told: Told) => ReactNode);
  /** A heading: never the last thing on a page. */
  keepWithNext?: boolean;
}

/** A table whose rows are never cut, with its head again on every page it goes on to. */
export interface TableBlock extends Placed {
  kind: 'table';
  /** For screen readers. */
  caption: string;
  /** `<tr>` of the head. */
  head: ReactElement;
  /** `<tr>` each, with a key of its own. */
  rows: readonly ReactElement[];
  className?: string;
}

/** A whole page of its own, the size of the content box: a template at true size. */
export interface PageBlock extends Placed {
  kind: 'page';
  content: ReactNode | ((told: Told) => ReactNode);
  /** Takes the sheet from edge to edge, without head and foot. */
  bare?: boolean;
}

export type Block = PieceBlock | TableBlock | PageBlock;
