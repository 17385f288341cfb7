import { optionTitle } from '../../plan/edits';
import type { PageSize } from '../../store/paper-settings';
import type { PlanPicture } from '../../store/plan-pictures';
import type { TuneChoice } from '../../store/tune-choice';
import { compareBlocks } from '../customer/compare-block';
import { knownBlocks } from '../customer/known-blocks';
import { listenerName } from '../customer/listener';
import { Picture } from '../customer/pictures';
import type { Prepared } from '../drawing/prepare';
import type { PaperFacts } from '../facts';
import { type Block, contentBox, heading, paragraphs, piece } from '../page';
import { cautionBlocks } from '../parts/cautions';
import { zoneBlocks } from '../parts/zones';
import { tuneOf } from '../tune/tune-facts';
import type { PrintedWords } from '../words/use-words';
import { chartBlocks } from './arrival-chart';
import { type Chapter, contentsBlock } from './contents';
import { measuredBlocks } from './measured';
import { pictureBlocks } from './picture-blocks';
import { positionBlocks } from './positions';
import { summaryBlocks } from './summary';
import { tuneBlocks } from './tune';

export interface BookChoices {
  pictures: readonly PlanPicture[];
  /** Whom the tune is for, and in which steps. */
  choice: TuneChoice;
}

/** The build book, from cover to cautions. */
export function bookBlocks(
  facts: PaperFacts,
  prepared: Prepared,
  { pictures, choice }: BookChoices,
  words: PrintedWords,
  size: PageSize,
): Block[] {
  const { t } = words;
  const { width } = contentBox(size);
  const chapters: Block[] = [
    ...summaryBlocks(facts, words, choice),
    ...positionBlocks(facts, words),
    ...drawingBlocks(facts, prepared, words, size),
    ...compareBlocks(facts, prepared.measured, words),
    ...chartBlocks(facts, delaysOf(facts, choice), words, width),
    ...tuneBlocks(facts, words, choice),
    ...measuredBlocks(facts, words),
    ...pictureBlocks(pictures, words, width),
    ...knownBlocks(facts, words),
    ...withZones(cautionBlocks(words, facts.option, t('customer.cautions')), facts, words),
  ];
  const titles: readonly (readonly [string, string])[] = [
    ['summary', t('book.summary')],
    ['positions', t('book.positions')],
    ['compare', t('customer.compare', { count: facts.plan.options.length - 1 })],
    ['chart', t('book.chart')],
    ['tune', t('book.tune')],
    ['measured', t('book.measured')],
    ['pictures', t('book.pictures')],
    ['known', t('customer.known')],
    ['cautions', t('customer.cautions')],
  ];
  const contents: Chapter[] = titles
    .filter(([id]) => chapters.some((block) => block.id === id))
    .map(([id, title]) => ({ id, title }));
  return [...cover(facts, prepared, contents, words, width), ...chapters];
}

function cover(
  facts: PaperFacts,
  prepared: Prepared,
  contents: readonly Chapter[],
  words: PrintedWords,
  width: number,
): Block[] {
  const { plan, option } = facts;
  const { t, names } = words;
  return [
    heading('title', plan.title, 1),
    piece(
      'subtitle',
      <p className="paper-lead">
        {t('book.subtitle', {
          body: names.body(plan.cabin.template),
          option: optionTitle(option),
        })}
      </p>,
      { keepWithNext: true },
    ),
    piece(
      'cover',
      <figure className="paper-figure">
        <Picture
          facts={facts}
          prepared={prepared}
          words={words}
          view="behind"
          width={width}
          height={100}
        />
        <figcaption>
          {facts.seat
            ? t('customer.behind', { person: listenerName(facts, words) })
            : t('customer.behind.nobody')}
        </figcaption>
      </figure>,
    ),
    ...paragraphs('story', plan.story ?? ''),
    heading('contents', t('book.contents')),
    contentsBlock(contents, words),
  ];
}

/** From above and from the side, as wide as the page. */
const drawingBlocks = (
  facts: PaperFacts,
  prepared: Prepared,
  words: PrintedWords,
  size: PageSize,
): Block[] =>
  (['above', 'side'] as const).map((view) =>
    piece(
      `drawing-${view}`,
      <figure className="paper-figure">
        <Picture
          facts={facts}
          prepared={prepared}
          words={words}
          view={view}
          width={contentBox(size).width}
          height={size === 'A4' ? 78 : 70}
        />
        <figcaption>{words.t(`customer.${view}`)}</figcaption>
      </figure>,
    ),
  );

/** Warnings about places kept clear come first under the heading of the cautions. */
function withZones([title, ...cautions]: Block[], facts: PaperFacts, words: PrintedWords): Block[] {
  return title ? [title, ...zoneBlocks(facts, words), ...cautions] : [];
}

/** What the tune delays each speaker by, ms. */
function delaysOf(facts: PaperFacts, choice: TuneChoice): ReadonlyMap<string, number> {
  const tune = facts.option.speakers.length > 0 ? tuneOf(facts, choice) : null;
  return new Map(
    tune && 'rows' in tune ? tune.rows.map(({ speaker, rounded }) => [speaker, rounded.ms]) : [],
  );
}
