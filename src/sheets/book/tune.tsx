import { type ChannelFilter, delayExport, exportedFor } from '../../exchange';
import type { PaperFacts } from '../facts';
import { type Block, heading, paragraphs } from '../page';
import { capital } from '../parts/capital';
import type { PrintedWords } from '../words/use-words';

/** Decibels an octave for each order of a filter: 20 log 2. */
const DB_PER_ORDER = 6.02;

/** Delays, gains, poles and filters of each channel, in samples of the plan's own rate. */
export function tuneBlocks(facts: PaperFacts, words: PrintedWords): Block[] {
  const { plan, cabin, option, result } = facts;
  const { t, n, names } = words;
  const title = heading('tune', t('book.tune'));
  if (option.speakers.length === 0 || result.seats.length === 0)
    return [title, ...paragraphs('tune-none', t('customer.speakers.none'))];
  const stage = { plan, cabin, option, result };
  const rateHz = plan.alignment.sampleRateHz;
  const tune = delayExport(stage, {
    for: exportedFor(stage),
    step: { kind: 'samples', rateHz },
  });
  if ('problem' in tune)
    return [title, ...paragraphs('tune-none', t('book.tune.problem', { problem: tune.problem }))];
  const filter = (one: ChannelFilter | null) =>
    one
      ? t('book.filter', {
          family: one.family === 'butterworth' ? 'Butterworth' : 'Linkwitz-Riley',
          slope: `${n.number(one.order * DB_PER_ORDER)}\u00a0dB/oct`,
          frequency: n.frequency(one.frequencyHz),
        })
      : t('book.filter.none');
  return [
    title,
    ...paragraphs('tune-step', t('book.tune.step', { rate: n.frequency(rateHz) }), 'paper-note'),
    {
      kind: 'table',
      id: 'tune-table',
      caption: t('book.tune'),
      head: (
        <tr>
          <th scope="col">{t('customer.col.speaker')}</th>
          <th scope="col" className="number">
            {t('book.col.delay')}
          </th>
          <th scope="col" className="number">
            {t('book.col.samples')}
          </th>
          <th scope="col" className="number">
            {t('book.col.gain')}
          </th>
          <th scope="col">{t('book.col.polarity')}</th>
          <th scope="col">{t('book.col.highpass')}</th>
          <th scope="col">{t('book.col.lowpass')}</th>
        </tr>
      ),
      rows: tune.rows.map((row) => {
        const speaker = option.speakers.find(({ id }) => id === row.speaker);
        return (
          <tr key={row.speaker}>
            <th scope="row">
              {capital(speaker ? names.speaker(speaker, option.speakers) : row.name)}
            </th>
            <td className="number">{n.time(row.rounded.ms, 3)}</td>
            <td className="number">{n.number(row.rounded.steps)}</td>
            <td className="number">{n.level(row.gainDb)}</td>
            <td>{t('book.polarity', { inverted: row.inverted ? 'yes' : 'no' })}</td>
            <td>{filter(row.highPass)}</td>
            <td>{filter(row.lowPass)}</td>
          </tr>
        );
      }),
    },
    ...paragraphs('tune-caution', t('caution.tune.text'), 'paper-small'),
  ];
}
