import { optionTitle } from '../../plan/edits';
import type { PageSize } from '../../store/paper-settings';
import type { Prepared } from '../drawing/prepare';
import type { PaperFacts } from '../facts';
import { type Block, contentBox, heading, piece } from '../page';
import { cautionBlocks } from '../parts/cautions';
import { zoneBlocks } from '../parts/zones';
import { stripBlocks } from '../strip/strip-blocks';
import type { WordKey } from '../words/catalogue';
import type { PrintedWords } from '../words/use-words';
import { compareBlocks } from './compare-block';
import { knownBlocks } from './known-blocks';
import { listenerName } from './listener';
import { pictureBlocks } from './pictures';
import { sayChoice } from './say-choice';
import { sayTime } from './say-time';
import { sayWay } from './say-way';
import { speakerBlocks } from './speaker-table';

/** The customer sheet, from top to bottom. */
export function customerBlocks(
  facts: PaperFacts,
  prepared: Prepared,
  words: PrintedWords,
  size: PageSize,
  withStrip: boolean,
): Block[] {
  const { t } = words;
  const { width } = contentBox(size);
  const [caution, ...cautions] = cautionBlocks(words, facts.option, t('customer.cautions'));
  return [
    heading('title', t('customer.title'), 1),
    piece('subtitle', <p className="paper-lead">{subtitle(facts, words)}</p>, {
      keepWithNext: true,
    }),
    ...pictureBlocks(facts, prepared, words, width, size === 'A4'),
    ...sentenceBlocks(facts, prepared, words),
    ...(withStrip ? stripBlocks(facts, words, width) : []),
    ...speakerBlocks(facts, words),
    ...compareBlocks(facts, prepared.measured, words),
    ...knownBlocks(facts, words),
    ...(caution ? [caution] : []),
    ...zoneBlocks(facts, words),
    ...cautions,
  ];
}

function subtitle(facts: PaperFacts, words: PrintedWords): string {
  const { plan, option, seat } = facts;
  const parts = { body: words.names.body(plan.cabin.template), option: optionTitle(option) };
  return seat
    ? words.t('customer.subtitle', { ...parts, person: listenerName(facts, words) })
    : `${parts.body} · ${parts.option}`;
}

/** Three sentences for the owner, each under its own word. */
function sentenceBlocks(facts: PaperFacts, prepared: Prepared, words: PrintedWords): Block[] {
  if (facts.option.speakers.length === 0) return [];
  const { t } = words;
  const said: readonly (readonly [WordKey, string])[] = [
    ...(facts.seat
      ? ([
          ['customer.says.time', sayTime(facts, words)],
          ['customer.says.way', sayWay(facts, words)],
        ] as const)
      : []),
    ['customer.says.choice', sayChoice(facts, prepared.measured, words)],
  ];
  return [
    heading('says', t('customer.says')),
    ...said.map(([key, text]) =>
      piece(
        key,
        <p className="paper-says">
          <strong>{t(key)}.</strong> {text}
        </p>,
      ),
    ),
  ];
}
