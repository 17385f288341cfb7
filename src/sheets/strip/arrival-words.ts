import type { StripWords } from '../../exchange/picture-strip';
import type { Moment, SlowMotion, SpeakerInput } from '../../geometry';
import { capital } from '../parts/capital';
import type { PrintedWords } from '../words/use-words';

/** So many are named; the rest is counted. */
const NAMED = 2;

/** What the pictures of a strip say on paper. */
export function arrivalWords(
  { t, n, names }: PrintedWords,
  among: readonly SpeakerInput[],
): StripWords {
  function who(ids: readonly string[]): string {
    const all = ids.flatMap((id) => {
      const speaker = among.find((one) => one.id === id);
      return speaker ? [names.speaker(speaker, among)] : [];
    });
    const [first = ''] = all;
    return capital(
      all.length > NAMED ? t('strip.more', { first, count: all.length - 1 }) : n.list(all),
    );
  }
  function said(kind: 'starts' | 'arrives', ids: readonly string[], all: number): string[] {
    if (ids.length === 0) return [];
    const count = ids.length;
    return [
      count === all && count > 1
        ? t(`strip.${kind}.all`, { count })
        : t(`strip.${kind}`, { who: who(ids), count }),
    ];
  }
  return {
    time: (ms) => n.time(ms),
    caption: ({ arriving, leaving }: Moment, { waves }: SlowMotion) =>
      [...said('arrives', arriving, waves.length), ...said('starts', leaving, waves.length)].join(
        '; ',
      ) || t('strip.way'),
    arrived: (count, all) => t('strip.there', { count, all }),
    key: '',
    title: '',
  };
}
