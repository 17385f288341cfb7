import type { DelayExport } from '../../exchange';
import { optionTitle } from '../../plan/edits';
import type { TuneChoice } from '../../store/tune-choice';
import type { PaperFacts } from '../facts';
import { type Block, heading, paragraphs, piece } from '../page';
import { capital } from '../parts/capital';
import { cautionBlocks } from '../parts/cautions';
import { zoneBlocks } from '../parts/zones';
import type { PrintedWords } from '../words/use-words';
import { tuneOf } from './tune-facts';
import {
  asSet,
  filterOnPaper,
  speakerOnPaper,
  stepSentences,
  tuneWarnings,
  whomSentence,
} from './tune-words';

/** What to set on each channel, with room to write down what was entered. */
export function tuneSheetBlocks(
  facts: PaperFacts,
  words: PrintedWords,
  choice: TuneChoice,
): Block[] {
  const { t } = words;
  const tune = facts.option.speakers.length > 0 ? tuneOf(facts, choice) : null;
  const body = !tune
    ? paragraphs('none', t('customer.speakers.none'))
    : 'problem' in tune
      ? paragraphs('none', t('book.tune.problem', { problem: tune.problem }))
      : setBlocks(facts, words, tune);
  const [cautionsTitle, ...cautions] = cautionBlocks(words, facts.option, t('customer.cautions'));
  return [
    heading('title', t('tune.title', { option: optionTitle(facts.option) }), 1),
    ...body,
    ...(cautionsTitle ? [cautionsTitle] : []),
    ...zoneBlocks(facts, words),
    ...cautions,
  ];
}

/** Whom the tune is for, in which steps, what to be warned of, and what to set on each channel. */
export function channelBlocks(facts: PaperFacts, words: PrintedWords, tune: DelayExport): Block[] {
  const { t } = words;
  return [
    piece('whom', <p className="paper-lead">{whomSentence(words, tune)}</p>),
    ...paragraphs('step', stepSentences(words, tune)),
    ...tuneWarnings(facts, words, tune).map((text, i) =>
      piece(`warning-${i}`, <p className="paper-warning">{`⚠ ${text}`}</p>),
    ),
    channelTable(facts, words, tune),
    ...paragraphs('note-left', t('tune.note.left'), 'paper-small'),
    ...paragraphs('note-poles', t('tune.note.poles'), 'paper-small'),
  ];
}

function setBlocks(facts: PaperFacts, words: PrintedWords, tune: DelayExport): Block[] {
  const { t } = words;
  return [
    ...channelBlocks(facts, words, tune),
    ...(tune.by === 'seats' ? seatBlocks(words, tune) : []),
    ...paragraphs('order', t('tune.order')),
    heading('units', t('tune.units')),
    unitTable(facts, words, tune),
  ];
}

function channelTable(facts: PaperFacts, words: PrintedWords, tune: DelayExport): Block {
  const { t, n } = words;
  return {
    kind: 'table',
    id: 'channels',
    caption: t('tune.set'),
    className: 'tune-channels',
    head: (
      <tr>
        <th scope="col">{t('tune.col.speaker')}</th>
        <th scope="col" className="number">
          {t('tune.col.set')}
        </th>
        <th scope="col" className="number">
          {t('tune.col.left')}
        </th>
        <th scope="col" className="number">
          {t('tune.col.gain')}
        </th>
        <th scope="col">{t('tune.col.polarity')}</th>
        <th scope="col">{t('tune.col.highpass')}</th>
        <th scope="col">{t('tune.col.lowpass')}</th>
        <th scope="col" className="tune-entered">
          {t('tune.col.entered')}
        </th>
      </tr>
    ),
    rows: tune.rows.map((row) => (
      <tr key={row.speaker}>
        <th scope="row">{capital(speakerOnPaper(facts, words, row))}</th>
        <td className="number">
          <strong>{asSet(words, row, tune)}</strong>
          {row.clamped && <span className="tune-most">{t('tune.most')}</span>}
        </td>
        <td className="number">{`${n.signed(row.residual.ms * 1000)}\u00a0µs`}</td>
        <td className="number">{n.level(row.gainDb)}</td>
        <td>
          {row.inverted ? (
            <strong>{t('tune.polarity', { inverted: 'yes' })}</strong>
          ) : (
            t('tune.polarity', { inverted: 'no' })
          )}
        </td>
        <td>{filterOnPaper(words, row.highPass)}</td>
        <td>{filterOnPaper(words, row.lowPass)}</td>
        <td className="tune-entered" />
      </tr>
    )),
  };
}

/** For a processor that counts otherwise than was thought. */
function unitTable(facts: PaperFacts, words: PrintedWords, tune: DelayExport): Block {
  const { t, n } = words;
  const samples = t('tune.col.samples', { rate: n.frequency(tune.sampleRateHz) });
  return {
    kind: 'table',
    id: 'units-table',
    caption: t('tune.units'),
    head: (
      <tr>
        <th scope="col">{t('tune.col.speaker')}</th>
        {['ms', samples, 'mm', 'cm', 'in'].map((unit) => (
          <th scope="col" className="number" key={unit}>
            {unit}
          </th>
        ))}
      </tr>
    ),
    rows: tune.rows.map(({ speaker, delay, ...row }) => (
      <tr key={speaker}>
        <th scope="row">{capital(speakerOnPaper(facts, words, { speaker, delay, ...row }))}</th>
        <td className="number">{n.number(delay.ms, 3)}</td>
        <td className="number">{n.number(delay.samples, 1)}</td>
        <td className="number">{n.number(delay.mm)}</td>
        <td className="number">{n.number(delay.cm, 1)}</td>
        <td className="number">{n.number(delay.inches, 2)}</td>
      </tr>
    )),
  };
}

function seatBlocks(words: PrintedWords, tune: DelayExport): Block[] {
  const { t, n, names } = words;
  return [
    heading('seats', t('tune.seats')),
    {
      kind: 'table',
      id: 'seats-table',
      caption: t('tune.seats'),
      head: (
        <tr>
          <th scope="col">{t('tune.col.seat')}</th>
          <th scope="col" className="number">
            {t('tune.col.late')}
          </th>
          <th scope="col" className="number">
            {t('tune.col.path')}
          </th>
        </tr>
      ),
      rows: tune.seats.map((seat) => (
        <tr key={seat.id}>
          <th scope="row">{capital(names.seat(seat.id))}</th>
          <td className="number">{n.time(seat.largestErrorSetMs, 3)}</td>
          <td className="number">{n.length(seat.largestErrorSetMs * tune.speedOfSound)}</td>
        </tr>
      )),
    },
  ];
}
