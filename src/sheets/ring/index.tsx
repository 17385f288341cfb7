import { useMemo } from 'react';
import { FLANGE_LIFT, MOST_WEDGE_DEG, misfitsOf, panelFrame, RIM_RADIUS } from '../../geometry';
import { MM_PER_INCH } from '../../plan/units';
import type { PageSize } from '../../store/paper-settings';
import { type PaperFacts, usePaperFacts } from '../facts';
import { misfitSentences } from '../mark-out/misfits';
import { type Block, contentBox, Flow, heading, paragraphs, piece } from '../page';
import { cautionBlocks } from '../parts/cautions';
import { clockWords } from '../parts/clock';
import { standoffWords } from '../parts/standoff-words';
import { usePaperSettings } from '../settings';
import { type PrintedWords, useWords } from '../words/use-words';
import { type SpeakerOnRing, speakersOnRings } from './ring-data';
import { boardSentence, type RingRow, ringRows } from './ring-rows';
import { SectionOnPaper, scaleFor } from './section-on-paper';
import './ring.css';

/** For whoever makes the rings: each in section with its measures. */
export default function RingSheet() {
  const words = useWords();
  const answer = usePaperFacts();
  const size = usePaperSettings(({ pageSize }) => pageSize);
  const blocks = useMemo(
    () =>
      answer.ok
        ? ringBlocks(words, answer.facts, size)
        : paragraphs('nothing', words.t('paper.nothing', { reason: answer.reason })),
    [answer, words, size],
  );
  return <Flow blocks={blocks} />;
}

/** Highest a section is drawn, mm: with its table it stays on one page. */
const HIGHEST = 112;

export function ringBlocks(
  words: PrintedWords,
  { cabin, option, result }: PaperFacts,
  size: PageSize,
): Block[] {
  const { t } = words;
  const title = heading('title', t('ring.title', { option: option.title ?? option.id }), 1);
  const rings = speakersOnRings(cabin, option, result.placed);
  const free = option.speakers
    .filter(({ ring, mount }) => ring && !mount)
    .flatMap((speaker) =>
      paragraphs(
        `free-${speaker.id}`,
        t('ring.free', { speaker: words.names.speaker(speaker, option.speakers) }),
      ),
    );
  if (rings.length === 0)
    return [title, ...(free.length > 0 ? free : paragraphs('none', t('ring.none')))];
  const subject = { cabin, option, placed: result.placed };
  const misfits = misfitsOf(subject);
  return [
    title,
    ...paragraphs('intro', t('ring.intro'), 'paper-small'),
    ...rings.flatMap((one, i) =>
      blocksOf(words, one, {
        name: words.names.speaker(one.speaker, option.speakers),
        misfits: misfitSentences(words, misfits.get(one.speaker.id) ?? [], subject),
        size,
        startsPage: i > 0,
      }),
    ),
    ...free,
    ...paragraphs(
      'rim',
      t('ring.rim-advice', { mm: words.n.length(RIM_RADIUS, words.n.unit === 'mm' ? 1 : 2) }),
      'paper-small',
    ),
    ...cautionBlocks(words, option, t('mark.cautions')),
  ];
}

function blocksOf(
  words: PrintedWords,
  one: SpeakerOnRing,
  about: { name: string; misfits: readonly string[]; size: PageSize; startsPage: boolean },
): Block[] {
  const { name, misfits, size, startsPage } = about;
  const { t, n, names } = words;
  const { speaker, panel, input, place, answer, zones } = one;
  const { id } = speaker;
  const mm = (value: number) => n.length(value, n.unit === 'mm' ? 1 : 2);
  const told = [
    t('ring.where', { panel: names.panel(panel), mm: mm(place.standoff) }),
    ...(answer.ok ? madeSentences(words, one) : [refusedSentence(words, one)]),
  ];
  const head: Block[] = [
    heading(`head-${id}`, t('ring.of', { speaker: name }), 2, { startsPage }),
    piece(
      `told-${id}`,
      <>
        <p>{told.join(' ')}</p>
        {misfits.length > 0 && (
          <p className="ring-misfits">
            <strong>{t('mark.misfits')}: </strong>
            {misfits.join('; ')}.
          </p>
        )}
        {zones.map((zone) => (
          <p key={zone.id} className="ring-zone">
            <strong>{t('ring.zone', { zone: names.zone(zone) })}</strong>{' '}
            {t(zone.given ? 'caution.zone.given' : 'caution.zone.usual')}
          </p>
        ))}
      </>,
    ),
  ];
  if (!answer.ok) return head;
  const form = answer.ring;
  const room = [contentBox(size).width, HIGHEST] as const;
  const scale = scaleFor(input, form, room);
  const bar = barOf(words);
  return [
    ...head,
    piece(
      `section-${id}`,
      <figure className="ring-figure">
        <SectionOnPaper
          {...{ input, form, room, words }}
          label={t('ring.section', { speaker: name })}
        />
        <figcaption className="paper-small">
          {scale === 1
            ? t('ring.true-size')
            : t('ring.scaled', { percent: `${n.number(scale * 100)}\u00a0%` })}
          <ScaleBar width={bar * scale} label={t('ring.bar', { mm: n.length(bar) })} />
          {n.length(bar)}
        </figcaption>
      </figure>,
    ),
    piece(
      `measures-${id}`,
      <MeasureTables
        rows={ringRows(words, input, form, one.behind)}
        caption={t('ring.section', { speaker: name })}
        words={words}
      />,
    ),
    ...paragraphs(`boards-${id}`, boardSentence(words, input, form)),
  ];
}

/** Two tables beside each other, so that section and measures stand on one page. */
function MeasureTables(props: { rows: readonly RingRow[]; caption: string; words: PrintedWords }) {
  const { rows, caption, words } = props;
  const { t } = words;
  const half = Math.ceil(rows.length / 2);
  return (
    <div className="ring-tables">
      {[rows.slice(0, half), rows.slice(half)].map((part) => (
        <table className="paper-table" key={part[0]?.id}>
          <caption className="unseen">{caption}</caption>
          <thead>
            <tr>
              <th scope="col">{t('ring.measure')}</th>
              <th scope="col" className="number">
                {t('ring.value')}
              </th>
            </tr>
          </thead>
          <tbody>
            {part.map(({ id, name, value, isWords = false }) => (
              <tr key={id}>
                {isWords ? (
                  <th scope="row" colSpan={2}>
                    {name}
                    <span className="ring-sentence">{value}</span>
                  </th>
                ) : (
                  <>
                    <th scope="row">{name}</th>
                    <td className="number">{value}</td>
                  </>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      ))}
    </div>
  );
}

/** Of the ring: a round length in what lengths are told in, mm. */
const barOf = ({ n }: PrintedWords): number => (n.unit === 'in' ? 2 * MM_PER_INCH : 50);

function ScaleBar({ width, label }: { width: number; label: string }) {
  return (
    <svg
      className="ring-bar"
      width={`${width + 2}mm`}
      height="4mm"
      viewBox={`-1 0 ${width + 2} 4`}
      role="img"
      aria-label={label}
    >
      <path data-ruler="bar" d={`M0 2.5h${width}`} />
      <path d={`M0 1v3M${width} 1v3`} />
    </svg>
  );
}

function madeSentences(words: PrintedWords, { answer, place, lift }: SpeakerOnRing): string[] {
  const { t, n } = words;
  if (!answer.ok) return [];
  const { overLimit, thickSide } = answer.ring;
  const frame = panelFrame(place.normal);
  return [
    ...(thickSide ? [t('ring.thick', clockWords(words, frame, thickSide))] : []),
    ...(overLimit ? [t('ring.steep', { deg: n.angle(MOST_WEDGE_DEG) })] : []),
    ...(lift > FLANGE_LIFT
      ? [t('ring.lift', { mm: n.length(lift, n.unit === 'mm' ? 1 : 2) })]
      : []),
  ];
}

function refusedSentence({ t, n }: PrintedWords, { answer, place }: SpeakerOnRing): string {
  if (answer.ok) return '';
  return answer.standoffNeeded === null
    ? t('ring.refused-measures')
    : t('ring.refused-standoff', {
        mm: standoffWords(n, answer.standoffNeeded - place.standoff),
      });
}
