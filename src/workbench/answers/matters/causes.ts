import type { PairSensitivity } from '../../../geometry';

type Change = NonNullable<PairSensitivity['seatTravel']>;

/** Something that can be a little off. */
export type CauseId =
  | 'both-u'
  | 'both-v'
  | 'left-u'
  | 'left-v'
  | 'right-u'
  | 'right-v'
  | 'seat'
  | 'temperature';

export interface Effect {
  cause: CauseId;
  change: Change | null;
  /** Why there is no change, as the engine says it. */
  reason: string | null;
}

/** In the order of the table. */
export const CAUSES: readonly CauseId[] = [
  'both-u',
  'both-v',
  'left-u',
  'left-v',
  'right-u',
  'right-v',
  'seat',
  'temperature',
];

/** How the engine's reasons begin for each. */
const PREFIX: Readonly<Record<CauseId, string>> = {
  'both-u': 'both along u: ',
  'both-v': 'both along v: ',
  'left-u': 'left along u: ',
  'left-v': 'left along v: ',
  'right-u': 'right along u: ',
  'right-v': 'right along v: ',
  seat: 'seat travel: ',
  temperature: 'temperature: ',
};

/** What each cause does to one pair. Where a pair is not tied, moving both is no cause of its own. */
export function effectsOf(pair: PairSensitivity): Effect[] {
  const { moves, alone, alongU, alongV, seatTravel, temperature, reasons = [] } = pair;
  const tied = moves === 'mirrored';
  const changes: Record<CauseId, Change | null> = {
    'both-u': tied ? alongU : null,
    'both-v': tied ? alongV : null,
    'left-u': alone.left.alongU,
    'left-v': alone.left.alongV,
    'right-u': alone.right.alongU,
    'right-v': alone.right.alongV,
    seat: seatTravel,
    temperature,
  };
  return CAUSES.map((cause) => {
    const change = changes[cause];
    if (change) return { cause, change, reason: null };
    const own = reasons.find((reason) => reason.startsWith(PREFIX[cause]));
    const whole = reasons.find(
      (reason) => !Object.values(PREFIX).some((p) => reason.startsWith(p)),
    );
    const untied =
      cause.startsWith('both') && !tied ? 'the two do not move as mirror images' : null;
    return { cause, change, reason: own?.slice(PREFIX[cause].length) ?? whole ?? untied ?? null };
  });
}

/** The cause that changes the pair's difference most, in time; `null` where none is known. */
export function largestEffect(pair: PairSensitivity): (Effect & { change: Change }) | null {
  let most: (Effect & { change: Change }) | null = null;
  for (const { cause, change, reason } of effectsOf(pair)) {
    if (!change) continue;
    if (most && Math.abs(most.change.differenceTime) >= Math.abs(change.differenceTime)) continue;
    most = { cause, change, reason };
  }
  return most;
}
