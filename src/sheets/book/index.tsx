import { use, useMemo } from 'react';
import { usePlan } from '../../store';
import { useTuneChoice } from '../../store/tune-choice';
import { prepare } from '../drawing/prepare';
import { type PaperFacts, usePaperFacts } from '../facts';
import { Flow, paragraphs } from '../page';
import { usePaperSettings } from '../settings';
import { useWords } from '../words/use-words';
import { bookBlocks } from './blocks';
import '../tune/tune.css';
import './book.css';
import { usePictures } from './pictures-store';

/** For the owner, and for judging: all there is to know of one option, with contents and pictures. */
export default function BuildBook() {
  const { t } = useWords();
  const answer = usePaperFacts();
  const nothing = useMemo(
    () => (answer.ok ? [] : paragraphs('nothing', t('paper.nothing', { reason: answer.reason }))),
    [answer, t],
  );
  return answer.ok ? <Book facts={answer.facts} /> : <Flow blocks={nothing} />;
}

function Book({ facts }: { facts: PaperFacts }) {
  const words = useWords();
  const size = usePaperSettings(({ pageSize }) => pageSize);
  const pictures = usePictures((state) => state.pictures);
  const choice = useTuneChoice(usePlan((state) => state.openedAs));
  const prepared = use(prepare(facts));
  const blocks = useMemo(
    () => bookBlocks(facts, prepared, { pictures, choice }, words, size),
    [facts, prepared, pictures, choice, words, size],
  );
  return <Flow blocks={blocks} />;
}
