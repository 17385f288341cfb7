import type { Arrival, SpeakerInput } from '../../geometry';
import type { PaperFacts } from '../facts';
import { thingName } from '../parts/thing-name';
import type { WordKey } from '../words/catalogue';
import type { PrintedWords } from '../words/use-words';

/**
 * Changes of level below about 1 dB go unnoticed in music; 10 dB is heard as about half as loud
 * (Stevens, JASA 1955). The step between is a choice of ours. dB, upper ends.
 */
const LOSSES: readonly (readonly [number, WordKey])[] = [
  [1, 'customer.way.loss.none'],
  [4, 'customer.way.loss.little'],
  [Number.POSITIVE_INFINITY, 'customer.way.loss.clear'],
];

/** The second sentence: which speakers have a free line, what stands before the others. */
export function sayWay(facts: PaperFacts, words: PrintedWords): string {
  const { seat, option } = facts;
  const { t, n, names } = words;
  const heard = option.speakers.flatMap((speaker) => {
    const arrival = seat?.arrivals.find((one) => one.speaker === speaker.id);
    return arrival ? [{ speaker, arrival }] : [];
  });
  if (heard.length === 0) return t('customer.speakers.none');
  const blocked = heard.filter(({ arrival }) => arrival.line === 'blocked');
  if (blocked.length === 0) return t('customer.way.free', { count: heard.length });
  const ids = [...new Set(blocked.flatMap(({ arrival }) => arrival.blockedBy))];
  const things = ids.map((id) =>
    t('customer.way.the', { name: thingName(facts.cabin, id, words) }),
  );
  const [first = t('customer.way.something')] = things;
  return t('customer.way.some', {
    free: heard.length - blocked.length,
    count: heard.length,
    names: n.list(
      blocked.map(({ speaker }) =>
        t('customer.way.the', { name: names.speaker(speaker, option.speakers) }),
      ),
    ),
    things: things.length > 2 ? t('customer.way.others', { first }) : n.list(things) || first,
    many: things.length === 2 ? 'yes' : 'no',
    meaning: t(lossKey(blocked)),
  });
}

function lossKey(blocked: readonly { speaker: SpeakerInput; arrival: Arrival }[]): WordKey {
  const losses = blocked.map(({ speaker, arrival }) => lossInMiddle(speaker, arrival));
  if (losses.some((loss) => loss === null)) return 'customer.way.loss.unknown';
  const most = Math.max(...losses.map((loss) => loss ?? 0));
  return (LOSSES.find(([below]) => most < below) ??
    LOSSES[2] ?? ['', 'customer.way.loss.clear'])[1] as WordKey;
}

/** The loss in the octave nearest the middle of the speaker's band, dB; `null`: not known. */
function lossInMiddle({ bandHz }: SpeakerInput, { bands }: Arrival): number | null {
  if (!bandHz || bands.length === 0) return null;
  const middle = Math.log(bandHz[0] * bandHz[1]) / 2;
  const far = (hz: number) => Math.abs(Math.log(hz) - middle);
  return bands.reduce((best, one) => (far(one.frequencyHz) < far(best.frequencyHz) ? one : best))
    .obstructionDb;
}
