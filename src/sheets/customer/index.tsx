import { use, useMemo } from 'react';
import { prepare } from '../drawing/prepare';
import { type PaperFacts, usePaperFacts } from '../facts';
import { Flow, paragraphs } from '../page';
import { usePaperSettings } from '../settings';
import { useWords } from '../words/use-words';
import { customerBlocks } from './blocks';

/** For the owner of the car: where the speakers go, and why, in plain words. */
export default function CustomerSheet() {
  const { t } = useWords();
  const answer = usePaperFacts();
  const nothing = useMemo(
    () => (answer.ok ? [] : paragraphs('nothing', t('paper.nothing', { reason: answer.reason }))),
    [answer, t],
  );
  return answer.ok ? <Sheet facts={answer.facts} /> : <Flow blocks={nothing} />;
}

function Sheet({ facts }: { facts: PaperFacts }) {
  const words = useWords();
  const size = usePaperSettings(({ pageSize }) => pageSize);
  const withStrip = usePaperSettings(({ arrivalStrip }) => arrivalStrip);
  const prepared = use(prepare(facts));
  const blocks = useMemo(
    () => customerBlocks(facts, prepared, words, size, withStrip),
    [facts, prepared, words, size, withStrip],
  );
  return <Flow blocks={blocks} />;
}
