import type { ReadingEnd } from './types';

/**
 * Whether two ends of readings are the same point, however they are written. In a file of its own:
 * a plan is checked before anything else stands, and the survey need not be loaded for that.
 */
export const sameEnd = (a: ReadingEnd, b: ReadingEnd): boolean =>
  JSON.stringify(ordered(a)) === JSON.stringify(ordered(b));

const ordered = (end: ReadingEnd): unknown[] => [
  end.kind,
  end.kind === 'speaker' ? end.speaker : end.kind === 'reference' ? end.reference : end.seat,
  end.kind === 'ear' ? end.side : '',
];
