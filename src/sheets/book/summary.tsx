import { pairsOf } from '../../geometry';
import type { PaperFacts } from '../facts';
import { type Block, heading, paragraphs } from '../page';
import { capital } from '../parts/capital';
import type { PrintedWords } from '../words/use-words';

/** The system in a few sentences, and a table of its speakers by pair. */
export function summaryBlocks(facts: PaperFacts, words: PrintedWords): Block[] {
  const { plan, option, result } = facts;
  const { t, n, names } = words;
  const { speakers, pockets = [] } = option;
  const pairs = new Set(speakers.flatMap(({ pair }) => (pair === undefined ? [] : [pair])));
  const groups = groupsOf(facts);
  return [
    heading('summary', t('book.summary'), 2, { startsPage: true }),
    ...paragraphs(
      'summary-text',
      [
        t('book.summary.count', {
          count: speakers.length,
          pairs: pairs.size,
          seats: result.seats.length,
        }),
        alignedFor(facts, words),
        t('book.summary.air', {
          speed: n.number(result.speedOfSound, 1),
          temperature: n.temperature(plan.air.temperatureC),
        }),
      ].join(' '),
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
            rows: groups.map(({ id, pair, members }) => {
              const [one] = members;
              const boxes = pockets.filter(({ speakers: inside }) =>
                members.some((member) => inside.includes(member.id)),
              );
              return (
                <tr key={id}>
                  <th scope="row">
                    {capital(
                      pair === null || !one
                        ? one
                          ? names.speaker(one, speakers)
                          : id
                        : names.pair(pair, speakers),
                    )}
                  </th>
                  <td className="number">{n.number(members.length)}</td>
                  <td>
                    {one?.bandHz
                      ? t('book.range', {
                          from: n.frequency(one.bandHz[0]),
                          to: n.frequency(one.bandHz[1]),
                        })
                      : '–'}
                  </td>
                  <td className="number">{n.length(one?.body?.cutout)}</td>
                  <td className="number">{n.length(one?.body?.depth)}</td>
                  <td>{t('book.pocket', { count: boxes.length })}</td>
                </tr>
              );
            }),
          },
        ]),
  ];
}

function alignedFor({ plan, result }: PaperFacts, { t, n, names }: PrintedWords): string {
  const { by, seat, seats = [] } = plan.alignment;
  const all = result.seats.map(({ id }) => id);
  if (by === 'seats') {
    const ids = seats.length > 0 ? seats.map(({ id }) => id) : all;
    return t('book.summary.aligned.seats', { seats: n.list(ids.map(names.seat)) });
  }
  const one = seat ?? all[0];
  return one === undefined ? '' : t('book.summary.aligned.seat', { seat: names.seat(one) });
}

/** Pairs and speakers without a twin, in the option's order. */
export function groupsOf({ option: { speakers } }: PaperFacts) {
  const pairs = pairsOf(speakers).map(({ pair }) => pair);
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
