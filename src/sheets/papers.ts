/** What can be printed. A paper more: a folder, its words, and one line here. */
import { type ComponentType, type LazyExoticComponent, lazy } from 'react';
import type { WordKey } from './words/catalogue';

export interface Paper {
  /** Kept in the session while the paper is looked at. */
  id: string;
  title: WordKey;
  /**
   * The paper itself: takes its plan from `usePaperFacts()` and its words from `useWords()`, and
   * answers with one `<Flow>`.
   */
  Body: LazyExoticComponent<ComponentType>;
  /** What stands beside the pages for this paper alone, and is not printed. */
  Fields?: LazyExoticComponent<ComponentType>;
}

export const PAPERS: readonly Paper[] = [
  {
    id: 'customer',
    title: 'paper.customer',
    Body: lazy(() => import('./customer')),
    Fields: lazy(() => import('./customer/fields')),
  },
  { id: 'mark-out', title: 'paper.mark-out', Body: lazy(() => import('./mark-out')) },
  { id: 'ring', title: 'paper.ring', Body: lazy(() => import('./ring')) },
  {
    id: 'tune',
    title: 'paper.tune',
    Body: lazy(() => import('./tune')),
    Fields: lazy(() => import('./tune/fields')),
  },
  {
    id: 'book',
    title: 'paper.book',
    Body: lazy(() => import('./book')),
    Fields: lazy(() => import('./book/fields')),
  },
];

/** The paper of that id, or the first. */
export const paperOf = (id: string | null): Paper =>
  PAPERS.find((paper) => paper.id === id) ?? (PAPERS[0] as Paper);
