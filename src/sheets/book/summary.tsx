import { pairsOf, type SpeakerInput } from '../../geometry';
import { NO_VALUE } from '../../plan/units';
import type { TuneChoice } from '../../store/tune-choice';
import type { PaperFacts } from '../facts';
import { type Block, heading, paragraphs } from '../page';
import { capital } from '../parts/capital';
import { fine } from '../parts/fine';
import { tuneOf } from '../tune/tune-facts';
import type { PrintedWords } from '../words/use-words';

/** The system in a few sentences, and a table of its speakers by pair. */
export function summaryBlocks(facts: PaperFacts, words: PrintedWords, choice: TuneChoice): Block[] {
  const { plan, option, result } = facts;
  const { t, n, names } = words;
  const { speakers, pockets = [] } = option;
  const groups = groupsOf(facts);
  return [
    heading('summary', t('book.summary'), 2, { startsPage: true }),
    ...paragraphs(
      'summary-text',
      [
        t('book.summary.count', {
          count: speakers.length,
          pairs: wholePairs(speakers).length,
          seats: result.seats.length,
        }),
        alignedFor(facts, choice, words),
        t('book.summary.air', {
          speed: n.number(result.speedOfSound, 1),
          temperature: n.temperature(plan.air.temperatureC),
        }),
      ]
        .filter(Boolean)
        .join(' '),
    ),
    ...(groups.length === 0
      ? []
      : [
          {
            kind: 'table' as const,
            id: 'summary-table',
            caption: t('book.summary'),
            head: (
              <tr>
                <th scope="col">{t('book.col.what')}</th>
                <th scope="col" className="number">
                  {t('book.col.count')}
                </th>
                <th scope="col">{t('book.col.band')}</th>
                <th scope="col" className="number">
                  {t('book.col.cutout')}
                </th>
                <th scope="col" className="number">
                  {t('book.col.depth')}
                </th>
                <th scope="col">{t('book.col.pocket')}</th>
              </tr>
            ),
            rows: groups.flatMap(({ id, pair, members }) => {
              const lines = members.map((one) => ({ one, told: toldOf(one, words) }));
              // A hole is cut and a depth looked for by these: what differs is told of each.
              const alike = new Set(lines.map(({ told }) => told.join('|'))).size === 1;
              const rows = alike ? lines.slice(0, 1) : lines;
              return rows.map(({ one, told: [band, cutout, depth] }) => {
                const these = alike ? members : [one];
                const boxes = pockets.filter(({ speakers: inside }) =>
                  these.some((member) => inside.includes(member.id)),
                );
                return (
                  <tr key={alike ? id : one.id}>
                    <th scope="row">
                      {capital(
                        pair === null || !alike
                          ? names.speaker(one, speakers)
                          : names.pair(pair, speakers),
                      )}
                    </th>
                    <td className="number">{n.number(these.length)}</td>
                    <td>{band}</td>
                    <td className="number">{cutout}</td>
                    <td className="number">{depth}</td>
                    <td>{t('book.pocket', { count: boxes.length })}</td>
                  </tr>
                );
              });
            }),
          },
        ]),
  ];
}

/** Band, cut-out and depth as printed. */
function toldOf({ bandHz, body }: SpeakerInput, words: PrintedWords): [string, string, string] {
  const { t, n } = words;
  return [
    bandHz
      ? t('book.range', { from: n.frequency(bandHz[0]), to: n.frequency(bandHz[1]) })
      : NO_VALUE,
    body ? fine(words, body.cutout) : NO_VALUE,
    body ? fine(words, body.depth) : NO_VALUE,
  ];
}

/** For whom the tune in this book is: as chosen for it, not as the plan would have it. */
function alignedFor(facts: PaperFacts, choice: TuneChoice, { t, n, names }: PrintedWords): string {
  const tune = facts.option.speakers.length > 0 ? tuneOf(facts, choice) : null;
  if (!tune || 'problem' in tune) return '';
  const seats = tune.seats.map(({ id }) => names.seat(id));
  return tune.by === 'seat'
    ? t('book.summary.aligned.seat', { seat: seats[0] ?? '' })
    : t('book.summary.aligned.seats', { seats: n.list(seats) });
}

/** The pairs that have both their speakers. */
const wholePairs = (speakers: readonly SpeakerInput[]) =>
  pairsOf(speakers).filter(({ left, right }) => left !== null && right !== null);

/** Pairs and speakers without a twin, in the option's order. */
export function groupsOf({ option: { speakers } }: PaperFacts) {
  const pairs = wholePairs(speakers).map(({ pair }) => pair);
  const seen = new Set<string>();
  return speakers.flatMap((speaker) => {
    const pair = speaker.pair !== undefined && pairs.includes(speaker.pair) ? speaker.pair : null;
    const id = pair ?? speaker.id;
    if (seen.has(id)) return [];
    seen.add(id);
    const members = pair === null ? [speaker] : speakers.filter((one) => one.pair === pair);
    return [{ id, pair, members }];
  });
}
