import { useMemo, useState } from 'react';
import { type Misfits, misfitsOf } from '../../geometry';
import type { PageSize } from '../../store/paper-settings';
import { type PaperFacts, usePaperFacts } from '../facts';
import { type Block, Flow, heading, paragraphs, piece } from '../page';
import { capital } from '../parts/capital';
import { cautionBlocks } from '../parts/cautions';
import { usePaperSettings } from '../settings';
import { type PrintedWords, useWords } from '../words/use-words';
import { type SpeakerMarks, speakerMarks } from './mark-data';
import { misfitSentences } from './misfits';
import { PrinterCheck } from './printer-check';
import type { PrinterScale } from './printer-scale';
import { SpotBlock } from './spot-block';
import { templateTiles } from './template-layout';
import { TemplatePage } from './template-page';
import './mark-out.css';

/** For the installer in the car: where each spot is, which way it looks, and a template to cut by. */
export default function MarkOutSheet() {
  const words = useWords();
  const answer = usePaperFacts();
  const size = usePaperSettings(({ pageSize }) => pageSize);
  const [scale, setScale] = useState<PrinterScale | null>(null);
  const refused = scale !== null && !scale.ok;
  // Half a second for forty speakers: not again for each word, page size or ruler.
  const found = useMemo(() => (answer.ok ? findMarks(answer.facts) : undefined), [answer]);
  const blocks = useMemo(
    () =>
      answer.ok
        ? markOutBlocks(words, answer.facts, size, refused, found)
        : paragraphs('nothing', words.t('paper.nothing', { reason: answer.reason })),
    [answer, found, words, size, refused],
  );
  return (
    <>
      {answer.ok && <PrinterCheck words={words} onChange={setScale} />}
      <Flow blocks={blocks} />
    </>
  );
}

interface FoundMarks {
  marks: readonly SpeakerMarks[];
  misfits: Misfits;
}

/** All that is worked out for the sheet, whatever its words and its size. */
export const findMarks = ({ cabin, option, result: { placed } }: PaperFacts): FoundMarks => ({
  marks: speakerMarks(cabin, option, placed),
  misfits: misfitsOf({ cabin, option, placed }),
});

/** All of the sheet: the spots one after another, the cautions, the templates. */
export function markOutBlocks(
  words: PrintedWords,
  facts: PaperFacts,
  size: PageSize,
  refused = false,
  { marks, misfits }: FoundMarks = findMarks(facts),
): Block[] {
  const { plan, cabin, option } = facts;
  const { t, names } = words;
  const title = heading('title', t('mark.title', { option: option.title ?? option.id }), 1);
  if (marks.length === 0) return [title, ...paragraphs('none', t('mark.none'))];
  const nameOf = ({ speaker }: SpeakerMarks) => names.speaker(speaker, option.speakers);
  return [
    title,
    ...paragraphs('intro', t('mark.intro'), 'paper-small'),
    ...marks.flatMap((one): Block[] => {
      const { id } = one.speaker;
      const speaker = capital(nameOf(one));
      const head = one.panel
        ? t('mark.speaker', { speaker, panel: names.panel(one.panel) })
        : t('mark.speaker-free', { speaker });
      return [
        heading(`head-${id}`, head),
        piece(
          `spot-${id}`,
          <SpotBlock
            {...{ one, cabin, words }}
            name={nameOf(one)}
            misfits={misfitSentences(words, misfits.get(id) ?? [], facts)}
          />,
        ),
      ];
    }),
    ...cautionBlocks(words, option, t('mark.cautions')),
    ...marks.flatMap((one): Block[] => {
      const { template, speaker, zones } = one;
      if (!template) return [];
      const tiling = templateTiles(template, size, zones.length > 0);
      return tiling.tiles.map((tile) => ({
        kind: 'page',
        id: `template-${speaker.id}-${tile.name}`,
        bare: true,
        content: (told) => (
          <TemplatePage
            {...{ template, tiling, tile, size, zones, words, told, refused }}
            name={capital(nameOf(one))}
            plan={plan.title}
          />
        ),
      }));
    }),
  ];
}
