/** Which pair a speaker belongs to, and which side of it it is. */
import type { Draft } from 'immer';
import type { Side, SpeakerInput } from '../../geometry';
import { otherSide } from '../mirror';
import type { Plan, PlanOption } from '../types';
import { mendPairs, renamePair } from './mend-references';
import { assign, findSpeaker, type PlanRecipe, SIDES } from './recipe';
import { cabinNow, placedIn } from './surroundings';

export interface PairingFields {
  /** `null` takes the side away, and with it the pair. */
  side?: Side | null;
  /** `null` takes the speaker out of its pair. */
  pair?: string | null;
}

/**
 * Puts a speaker into a pair or takes it out, and says which side it is; nothing moves. A pair has
 * one left and one right: who changes sides changes them with its twin, who takes a place that is
 * taken puts the other out of the pair, and who names no side gets the free one, or with a new pair
 * the side it stands on. What was said of a pair goes along when its last speaker founds a new one,
 * and is forgotten when the pair is no more.
 */
export function setPairing(optionId: string, speakerId: string, fields: PairingFields): PlanRecipe {
  return (draft) => {
    const found = findSpeaker(draft, optionId, speakerId);
    if (!found) return;
    const { option, speaker } = found;
    const before = speaker.pair;
    const wanted = fields.side === undefined ? speaker.side : fields.side;
    const pair =
      fields.side === null ? null : ((fields.pair === undefined ? before : fields.pair) ?? null);

    if (!pair) {
      assign(speaker, { pair: null, side: wanted });
      mendPairs(option);
      return;
    }
    const others = option.speakers.filter((one) => one !== speaker && one.pair === pair);
    const side = sideIn(draft, speaker, others, fields.side ?? undefined, before === pair);
    for (const other of others) {
      if (other.side !== side) continue;
      if (before === pair) other.side = otherSide(side);
      else assign(other, { pair: null });
    }
    const founds = others.length === 0;
    assign(speaker, { pair, side });
    if (before !== undefined && before !== pair && founds && !hasSpeaker(option, before)) {
      renamePair(option, before, pair);
    }
    mendPairs(option);
  };
}

const hasSpeaker = (option: Draft<PlanOption>, pair: string): boolean =>
  option.speakers.some((speaker) => speaker.pair === pair);

/** The side asked for; else its own where that is free or it is there already; else a free one. */
function sideIn(
  draft: Draft<Plan>,
  speaker: Draft<SpeakerInput>,
  others: readonly Draft<SpeakerInput>[],
  asked: Side | undefined,
  stays: boolean,
): Side {
  if (asked) return asked;
  const taken = new Set(others.map(({ side }) => side));
  if (speaker.side && (stays || !taken.has(speaker.side))) return speaker.side;
  const free = SIDES.filter((side) => !taken.has(side));
  if (free.length === 1) return free[0] as Side;
  const y = placedIn(cabinNow(draft), speaker)?.position[1] ?? 0;
  return speaker.side ?? (y > 0 ? 'right' : 'left');
}
