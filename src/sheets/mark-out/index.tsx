import { useMemo, useState } from 'react';
import type { PageSize } from '../../store/paper-settings';
import { type PaperFacts, usePaperFacts } from '../facts';
import { type Block, Flow, heading, paragraphs, piece } from '../page';
import { cautionBlocks } from '../parts/cautions';
import { usePaperSettings } from '../settings';
import { type PrintedWords, useWords } from '../words/use-words';
import { type SpeakerMarks, speakerMarks } from './mark-data';
import { misfitSentences, misfitsOf } from './misfits';
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
  const blocks = useMemo(
    () =>
      answer.ok
        ? markOutBlocks(words, answer.facts, size, refused)
        : paragraphs('nothing', words.t('paper.nothing', { reason: answer.reason })),
    [answer, words, size, refused],
  );
  return (
    <>
      {answer.ok && <PrinterCheck words={words} onChange={setScale} />}
      <Flow blocks={blocks} />
    </>
  );
}

/** All of the sheet: the spots one after another, the cautions, the templates. */
export function markOutBlocks(
  words: PrintedWords,
  { plan, cabin, option, result }: PaperFacts,
  size: PageSize,
  refused = false,
): Block[] {
  const { t, names } = words;
  const title = heading('title', t('mark.title', { option: option.title ?? option.id }), 1);
  const marks = speakerMarks(cabin, option, result.placed);
  if (marks.length === 0) return [title, ...paragraphs('none', t('mark.none'))];
  const subject = { cabin, option, placed: result.placed };
  const misfits = misfitsOf(subject);
  const nameOf = ({ speaker }: SpeakerMarks) => names.speaker(speaker, option.speakers);
  return [
    title,
    ...paragraphs('intro', t('mark.intro'), 'paper-small'),
    ...marks.flatMap((one): Block[] => {
      const { id } = one.speaker;
      const speaker = large(nameOf(one));
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
            misfits={misfitSentences(words, misfits.get(id) ?? [], subject)}
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
            name={large(nameOf(one))}
            plan={plan.title}
          />
        ),
      }));
    }),
  ];
}

const large = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
