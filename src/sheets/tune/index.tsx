import { useMemo } from 'react';
import { usePlan } from '../../store';
import { useTuneChoice } from '../../store/tune-choice';
import { usePaperFacts } from '../facts';
import { Flow, paragraphs } from '../page';
import { useWords } from '../words/use-words';
import { tuneSheetBlocks } from './blocks';
import './tune.css';

/** For whoever sets up the processor: the tune to start from, channel by channel. */
export default function TuneSheet() {
  const words = useWords();
  const answer = usePaperFacts();
  const choice = useTuneChoice(usePlan((state) => state.openedAs));
  const blocks = useMemo(
    () =>
      answer.ok
        ? tuneSheetBlocks(answer.facts, words, choice)
        : paragraphs('nothing', words.t('paper.nothing', { reason: answer.reason })),
    [answer, words, choice],
  );
  return <Flow blocks={blocks} />;
}
