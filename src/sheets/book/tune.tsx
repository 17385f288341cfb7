import type { TuneChoice } from '../../store/tune-choice';
import type { PaperFacts } from '../facts';
import { type Block, heading, paragraphs } from '../page';
import { channelBlocks } from '../tune/blocks';
import { tuneOf } from '../tune/tune-facts';
import type { PrintedWords } from '../words/use-words';

/** What to set on each channel, as the tune sheet has it, for the same choice of whom and step. */
export function tuneBlocks(facts: PaperFacts, words: PrintedWords, choice: TuneChoice): Block[] {
  const { t } = words;
  const title = heading('tune', t('book.tune'), 2, { startsPage: true });
  const tune = facts.option.speakers.length > 0 ? tuneOf(facts, choice) : null;
  if (!tune) return [title, ...paragraphs('tune-none', t('customer.speakers.none'))];
  if ('problem' in tune)
    return [title, ...paragraphs('tune-none', t('book.tune.problem', { problem: tune.problem }))];
  return [
    title,
    ...channelBlocks(facts, words, tune),
    ...paragraphs('tune-caution', t('caution.tune.text'), 'paper-small'),
  ];
}
