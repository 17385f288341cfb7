import { stepUp } from '../../geometry';
import { MM_PER_INCH } from '../../plan/units';
import type { Numbers } from '../words/numbers';

/** Stand-off that a ring still wants, rounded up in what it is told in: with as much it can be made. */
export const standoffWords = (n: Numbers, mm: number): string =>
  n.unit === 'mm'
    ? n.length(stepUp(mm), 1)
    : n.length(stepUp(mm / MM_PER_INCH, 100) * MM_PER_INCH, 2);
