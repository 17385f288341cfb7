/** What the parts of a car and of a plan are called on paper, from the catalogue. */
import type { CabinModel, Obstacle, Role, SpeakerInput } from '../../geometry';
import { words as idWords } from '../../plan/names';
import type { Translate, WordKey } from './catalogue';
import { en } from './en';

type Named = Pick<SpeakerInput, 'id' | 'role' | 'side'>;
type Thing = { id: string; name?: string; given?: boolean };

export interface Names {
  /** "tweeter". */
  role(role: Role): string;
  /** "tweeters". */
  roles(role: Role): string;
  /** "left tweeter"; a second one of the same role and side is numbered: "left tweeter 2". */
  speaker(speaker: Named, among?: readonly Named[]): string;
  /** "tweeters", "tweeters 2": a pair, among the speakers of its option. */
  pair(pair: string, among: readonly SpeakerInput[]): string;
  /** "left A-pillar". What the user named is called as named. */
  panel(panel: Thing | string): string;
  obstacle(obstacle: Thing & Pick<Obstacle, 'occupant'>): string;
  zone(zone: Thing): string;
  reference(point: Thing): string;
  /** "front left seat". */
  seat(id: string): string;
  /** Who sits there: "driver", "front passenger". */
  person(seat: string, wheelSide: CabinModel['wheelSide']): string;
  /** "Estate": a body style by its id. */
  body(template: string): string;
}

const known = (key: string): key is WordKey => Object.hasOwn(en.words, key);

/** "pillar-left" → "pillar", "left". */
function cutSide(id: string): [string, string] {
  const match = /^(.*)-(left|right|center)$/.exec(id);
  return match ? [match[1] as string, match[2] as string] : [id, ''];
}

export function createNames(t: Translate): Names {
  const numbered = (name: string, place: number) =>
    place > 0 ? t('name.numbered', { name, number: place + 1 }) : name;
  /** From the catalogue by id; else as its owner calls it. */
  const thing =
    (kind: string) =>
    (given: Thing | string): string => {
      const one: Thing = typeof given === 'string' ? { id: given } : given;
      const [base, side] = cutSide(one.id);
      for (const [id, at] of [
        [one.id, ''],
        [base, side],
      ] as const) {
        const key = `${kind}.${id}`;
        if (known(key)) return t(key, { side: at });
      }
      return one.name && one.name !== one.id ? one.name : idWords(one.id);
    };
  const role = (of: Role, many: 'yes' | 'no') => {
    const key = `role.${of}`;
    return known(key) ? t(key, { many }) : idWords(of);
  };
  const obstacle = thing('obstacle');
  const names: Names = {
    role: (of) => role(of, 'no'),
    roles: (of) => role(of, 'yes'),
    speaker: (speaker, among = []) => {
      const name = t('name.speaker', { role: role(speaker.role, 'no'), side: speaker.side ?? '' });
      const alike = among.filter((s) => s.role === speaker.role && s.side === speaker.side);
      return numbered(
        name,
        alike.findIndex((s) => s.id === speaker.id),
      );
    },
    pair: (pair, among) => {
      const first = among.find((speaker) => speaker.pair === pair);
      if (!first) return idWords(pair);
      const alike = among.filter((one) => one.role === first.role && one.pair);
      return numbered(
        names.roles(first.role),
        [...new Set(alike.map((one) => one.pair))].indexOf(pair),
      );
    },
    panel: thing('panel'),
    obstacle: (one) => {
      const { occupant } = one;
      if (!occupant) return obstacle(one);
      const rest = one.id.slice(`occupant-${occupant.seat}-`.length);
      const match = /^(?:(left|right)-)?(\w+)$/.exec(rest);
      const key = `occupant.${match?.[2]}`;
      if (!match || !known(key)) return obstacle(one);
      return t('occupant.whose', {
        seat: occupant.seat.replace('-', '_'),
        part: t(key, { side: match[1] ?? '' }),
      });
    },
    zone: thing('zone'),
    reference: thing('reference'),
    seat: thing('seat'),
    person: (seat, wheelSide) => {
      if (seat === `front-${wheelSide}`) return t('person.driver');
      if (/^front-(left|right)$/.test(seat)) return t('person.front-passenger');
      return thing('person')(seat);
    },
    body: thing('body'),
  };
  return names;
}
