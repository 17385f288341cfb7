import type { PrintedWords } from '../words/use-words';

/** Lengths to work by are told to a tenth of a millimetre, or a hundredth of an inch. */
export const fine = ({ n }: Pick<PrintedWords, 'n'>, mm: number): string =>
  n.length(mm, n.unit === 'mm' ? 1 : 2);
