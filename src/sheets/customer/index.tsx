import { useMemo } from 'react';
import { usePaperFacts } from '../facts';
import { type Block, Flow, heading, paragraphs } from '../page';
import { cautionBlocks } from '../parts/cautions';
import { useWords } from '../words/use-words';

/** For the owner of the car: where the speakers go, and why, in plain words. */
export default function CustomerSheet() {
  const words = useWords();
  const answer = usePaperFacts();
  const blocks = useMemo((): Block[] => {
    const { t } = words;
    if (!answer.ok) return paragraphs('nothing', t('paper.nothing', { reason: answer.reason }));
    const { option, plan } = answer.facts;
    return [
      heading('title', t('customer.title'), 1),
      ...paragraphs('story', plan.story ?? ''),
      ...cautionBlocks(words, option, t('customer.cautions')),
    ];
  }, [answer, words]);
  return <Flow blocks={blocks} />;
}
