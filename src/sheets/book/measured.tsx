import type { PaperFacts } from '../facts';
import { type Block, heading, paragraphs } from '../page';
import type { PrintedWords } from '../words/use-words';

/** What was measured in the car beside what was predicted; said so where nothing was. */
export function measuredBlocks(_facts: PaperFacts, { t }: PrintedWords): Block[] {
  return [
    heading('measured', t('book.measured')),
    ...paragraphs('measured-none', t('book.measured.none')),
  ];
}
