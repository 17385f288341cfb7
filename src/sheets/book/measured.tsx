import { compareMeasured, type MeasuredChannelResult, type MeasuredSet } from '../../geometry';
import type { PaperFacts } from '../facts';
import { type Block, heading, paragraphs, piece } from '../page';
import { capital } from '../parts/capital';
import type { WordKey } from '../words/catalogue';
import type { PrintedWords } from '../words/use-words';

/** What was measured in the car beside what was predicted; said so where nothing was. */
export function measuredBlocks(facts: PaperFacts, words: PrintedWords): Block[] {
  const { t } = words;
  const { plan, option, result } = facts;
  const sets = compareMeasured(option.measured ?? [], result, plan.air.temperatureC);
  return [
    heading('measured', t('book.measured')),
    ...(sets.length === 0
      ? paragraphs('measured-none', t('book.measured.none'))
      : sets.flatMap((set) => setBlocks(set, facts, words))),
  ];
}

function setBlocks(set: MeasuredSet, facts: PaperFacts, words: PrintedWords): Block[] {
  const { t, n, names } = words;
  const { speakers } = facts.option;
  const id = `measured-${set.seat}-${set.at}`;
  const place = t('book.measured.place', {
    place: t(`book.measured.${set.at}`),
    seat: names.seat(set.seat),
  });
  const name = (speaker: string) => {
    const one = speakers.find((other) => other.id === speaker);
    return one ? names.speaker(one, speakers) : speaker;
  };
  const speed = facts.result.speedOfSound;
  return [
    heading(id, capital(place), 3),
    piece(`${id}-whole`, <p className="paper-note">{verdictOn(set, name, words)}</p>, {
      keepWithNext: true,
    }),
    {
      kind: 'table',
      id: `${id}-table`,
      caption: place,
      head: (
        <tr>
          <th scope="col">{t('customer.col.speaker')}</th>
          {(['predicted', 'measured', 'difference', 'expected'] as const).map((column) => (
            <th key={column} scope="col" className="number">
              {t(`book.col.${column}`)}
            </th>
          ))}
          <th scope="col">{t('book.col.verdict')}</th>
        </tr>
      ),
      rows: set.channels.map((one) => (
        <tr key={one.id}>
          <th scope="row">{capital(name(one.id))}</th>
          <td className="number">{n.time(one.predictedMs, 3)}</td>
          <td className="number">{n.time(one.predictedMs + one.differenceMs, 3)}</td>
          <td className="number">
            {`${n.signed(one.differenceMs, 3)}\u00a0ms (${n.signedLength(one.differenceMs * speed)})`}
          </td>
          <td className="number">{`±${n.time(2 * one.sdMs, 3)}`}</td>
          <td>{one.outlier ? <strong>{t(verdictKey(one))}</strong> : t(verdictKey(one))}</td>
        </tr>
      )),
    },
    piece(
      `${id}-loop`,
      <p className="paper-small">{t('book.measured.loop', { offset: n.time(set.offsetMs, 3) })}</p>,
    ),
  ];
}

const verdictKey = ({ outlier, within }: MeasuredChannelResult): WordKey =>
  outlier ? 'book.verdict.outlier' : within ? 'book.verdict.within' : 'book.verdict.beyond';

function verdictOn(
  { channels, outliers, agrees, whole, tooFew }: MeasuredSet,
  name: (speaker: string) => string,
  { t, n }: PrintedWords,
): string {
  if (tooFew !== null) return t('book.measured.few', { count: channels.length });
  if (outliers.length > 0) {
    return t('book.measured.outliers', {
      names: n.list(outliers.map(name)),
      count: outliers.length,
    });
  }
  return agrees && whole?.within
    ? t('book.measured.agrees', { count: channels.length })
    : t('book.measured.beyond');
}
