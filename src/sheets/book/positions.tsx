import type { Arrival, SpeakerInput } from '../../geometry';
import { listenerName } from '../customer/listener';
import { whereOf } from '../customer/speaker-table';
import { letterOf } from '../drawing/letters';
import type { PaperFacts } from '../facts';
import { type Block, heading, paragraphs, piece } from '../page';
import { capital } from '../parts/capital';
import { thingName } from '../parts/thing-name';
import type { WordKey } from '../words/catalogue';
import type { PrintedWords } from '../words/use-words';
import { groupsOf } from './summary';

const LINES = { clear: 'line.clear', grazing: 'line.grazing', blocked: 'line.blocked' } as const;
/** Closer than this both sides arrive together, ms: half of the last digit printed. */
const TOGETHER = 0.005;

/** Every speaker's place, and why each pair stands where it does. */
export function positionBlocks(facts: PaperFacts, words: PrintedWords): Block[] {
  const { option, seat } = facts;
  const { t, n, names } = words;
  const { speakers } = option;
  if (speakers.length === 0)
    return [
      heading('positions', t('book.positions')),
      ...paragraphs('positions-none', t('customer.speakers.none')),
    ];
  const columns: readonly (readonly [WordKey, boolean])[] = [
    ['book.col.letter', false],
    ['customer.col.speaker', false],
    ['customer.col.where', false],
    ['book.col.standoff', true],
    ['customer.col.distance', true],
    ['book.col.seen', true],
    ['book.col.line', false],
  ];
  return [
    heading('positions', t('book.positions'), 2),
    {
      kind: 'table',
      id: 'positions-table',
      caption: t('book.positions'),
      head: (
        <tr>
          {columns.map(([key, number]) => (
            <th key={key} scope="col" className={number ? 'number wrap' : undefined}>
              {t(key)}
            </th>
          ))}
        </tr>
      ),
      rows: speakers.map((speaker, place) => {
        const arrival = seat?.arrivals.find((one) => one.speaker === speaker.id);
        return (
          <tr key={speaker.id}>
            <td>
              <strong className={`letter ${speaker.side ?? ''}`}>{letterOf(place)}</strong>
            </td>
            <th scope="row">{capital(names.speaker(speaker, speakers))}</th>
            <td className="typed">{whereOf(speaker, facts, words)}</td>
            <td className="number">
              {n.length(speaker.mount ? (speaker.mount.standoff ?? 0) : null)}
            </td>
            <td className="number">{n.length(arrival?.path)}</td>
            <td className="number">{n.angle(arrival?.offAxisDeg)}</td>
            <td>{arrival ? t(LINES[arrival.line]) : '–'}</td>
          </tr>
        );
      }),
    },
    ...groupsOf(facts).map(({ id, members }) =>
      piece(`why-${id}`, <p className="paper-note">{whyHere(members, facts, words)}</p>, {
        tight: true,
      }),
    ),
  ];
}

interface Heard {
  speaker: SpeakerInput;
  arrival: Arrival;
}

/** Distance, direction, what is in the way and what throws it back, of one pair or lone speaker. */
function whyHere(members: readonly SpeakerInput[], facts: PaperFacts, words: PrintedWords): string {
  const { t, n, names } = words;
  const { option, seat } = facts;
  const heard = members.flatMap((speaker): Heard[] => {
    const arrival = seat?.arrivals.find((one) => one.speaker === speaker.id);
    return arrival ? [{ speaker, arrival }] : [];
  });
  const [a, b] = heard;
  if (!a) return '';
  const person = listenerName(facts, words);
  const angles = heard.flatMap(({ arrival }) => arrival.offAxisDeg ?? []);
  const angle = n.angle(angles.length > 0 ? Math.max(...angles) : null);
  return [
    b
      ? pairSentence(a, b, person, angle, facts, words)
      : t('book.why.alone', {
          who: capital(names.speaker(a.speaker, option.speakers)),
          length: n.length(a.arrival.path),
          person,
          angle,
        }),
    lineSentence(heard, facts, words),
    reflectionSentence(heard, facts, words),
  ].join(' ');
}

function pairSentence(
  a: Heard,
  b: Heard,
  person: string,
  angle: string,
  { option }: PaperFacts,
  { t, n, names }: PrintedWords,
): string {
  const who = capital(names.pair(a.speaker.pair ?? '', option.speakers));
  const time = Math.abs(a.arrival.time - b.arrival.time);
  if (time < TOGETHER) return t('book.why.pair.together', { who, person, angle });
  const near = a.arrival.path < b.arrival.path ? a : b;
  return t('book.why.pair.apart', {
    who,
    side: near.speaker.side ?? '',
    length: n.length(Math.abs(a.arrival.path - b.arrival.path)),
    person,
    time: n.time(time),
    angle,
  });
}

function lineSentence(heard: readonly Heard[], facts: PaperFacts, words: PrintedWords): string {
  const { t, n } = words;
  const named = (ids: readonly string[]) =>
    n.list(
      [...new Set(ids)]
        .slice(0, 3)
        .map((id) => t('customer.way.the', { name: thingName(facts.cabin, id, words) })),
    );
  const blocked = heard.filter(({ arrival }) => arrival.line === 'blocked');
  const near = heard.filter(({ arrival }) => arrival.line === 'grazing');
  const said = [
    blocked.length > 0 &&
      t('book.why.line.blocked', {
        things: named(blocked.flatMap((one) => one.arrival.blockedBy)),
      }),
    near.length > 0 &&
      t('book.why.line.near', {
        things: named(near.flatMap((one) => one.arrival.grazedBy.slice(0, 1))),
      }),
  ].filter(Boolean);
  return said.length > 0 ? said.join(' ') : t('book.why.line.free');
}

function reflectionSentence(
  heard: readonly Heard[],
  { cabin }: PaperFacts,
  { t, n, names }: PrintedWords,
): string {
  const first = heard
    .flatMap(({ arrival }) => arrival.reflections.slice(0, 1))
    .sort((a, b) => a.extraTime - b.extraTime)[0];
  if (!first) return t('book.why.reflection.none');
  return t('book.why.reflection', {
    panel: names.panel(cabin.panels.find(({ id }) => id === first.panel) ?? first.panel),
    time: n.time(first.extraTime),
  });
}
