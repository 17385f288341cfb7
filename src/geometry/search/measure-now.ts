import type { Refusal } from '../cabin/model';
import type { PlanInput, Side, SpeakerInput } from '../input';
import { firstReflectionTime, hearSpot } from '../map/hear-spot';
import { DIFFERENCE_SCALE, SPOT_AIMS, type SpotAim } from '../map/penalty';
import { spotRoom } from '../map/spot-room';
import { pairsOf } from '../stage/pairs';
import { placeSpeaker } from '../stage/place';
import { spreadOf } from './combine-pairs';
import { MEASURED, measureInPlace, measuresOf, SCORE } from './measure-pair';
import { prepareShared, Refused } from './prepare';
import {
  ANGLE,
  LOSS,
  newSideHeard,
  PATH,
  PER_SEAT,
  REFLECTION,
  type SideHeard,
} from './side-heard';
import type { SearchWants, SharedRequest, SpotMeasures } from './types';

/** What a pair does where it stands, in the words of a search. */
export interface PairNow {
  pair: string;
  measures: SpotMeasures;
  score: number;
}

export interface PairsNow {
  pairs: PairNow[];
  /** Longest less shortest path of a side, where that is most, mm; 0 without a pair. */
  pathSpread: number;
  /** Of all pairs and the path spread. */
  score: number;
}

export type PairsNowAnswer = { ok: true; now: PairsNow } | { ok: false; error: Refusal };

/**
 * Pairs as the option has them, aimed as they are, on a panel or not: the measures and the score a
 * search would give that spot. A pair the option does not have, or not whole, is left out.
 * @param asked the pairs and what is wanted of each; an aim left out counts nothing
 * @param spreadWeight of the path spread among the pairs asked for
 */
export function measurePairsNow(
  plan: PlanInput,
  request: SharedRequest,
  asked: readonly { pair: string; want: SearchWants }[],
  spreadWeight = 0,
): PairsNowAnswer {
  const made = spotRoom(plan);
  if (!made.ok) return made;
  const { room } = made;
  try {
    const { option, seats, weights } = prepareShared(plan, request, room);
    const heardAt = (id: string | null): SideHeard | null => {
      const speaker: SpeakerInput | undefined = option.speakers.find((one) => one.id === id);
      const answer = speaker && placeSpeaker(speaker, room.panelById, room.seatById);
      if (!speaker || !answer?.ok) return null;
      const heard = newSideHeard(1, seats.length);
      seats.forEach((seat, s) => {
        const { path, offAxisDeg, obstructionDb } = hearSpot(speaker, answer.placed, seat, room);
        const at = PER_SEAT * s;
        heard.numbers[at + PATH] = path;
        heard.numbers[at + ANGLE] = offAxisDeg ?? Number.NaN;
        heard.numbers[at + LOSS] = obstructionDb ?? Number.NaN;
        heard.numbers[at + REFLECTION] =
          firstReflectionTime(speaker, answer.placed, seat, room) ?? Number.NaN;
      });
      return heard;
    };
    const members = pairsOf(option.speakers);
    const lanes = 2 * seats.length;
    const low = new Float64Array(lanes).fill(Infinity);
    const high = new Float64Array(lanes).fill(-Infinity);
    const widen = ({ numbers }: SideHeard, side: 0 | 1) =>
      seats.forEach((_, s) => {
        const path = numbers[PER_SEAT * s + PATH] as number;
        low[2 * s + side] = Math.min(low[2 * s + side] as number, path);
        high[2 * s + side] = Math.max(high[2 * s + side] as number, path);
      });
    const pairs = asked.flatMap(({ pair, want }): PairNow[] => {
      const both = members.find((one) => one.pair === pair);
      const [left, right] = (['left', 'right'] as Side[]).map((side) =>
        heardAt(both?.[side] ?? null),
      );
      if (!left || !right) return [];
      widen(left, 0);
      widen(right, 1);
      const wants = Object.fromEntries(SPOT_AIMS.map((aim) => [aim, want[aim] ?? 0])) as Record<
        SpotAim,
        number
      >;
      const measured = new Float64Array(MEASURED);
      measureInPlace({ seats, weights, wants }, left, 0, right, 0, measured);
      return [{ pair, measures: measuresOf(measured), score: measured[SCORE] as number }];
    });
    const spreadWeights = weights.map((weight) => (weight * spreadWeight) / DIFFERENCE_SCALE);
    const pathSpread =
      pairs.length > 0 ? Math.max(...high.map((path, lane) => path - (low[lane] as number))) : 0;
    const score =
      pairs.reduce((sum, one) => sum + one.score, 0) + spreadOf(spreadWeights, low, high);
    return { ok: true, now: { pairs, pathSpread, score } };
  } catch (reason) {
    if (reason instanceof Refused)
      return { ok: false, error: { path: reason.path, message: reason.message } };
    throw reason;
  }
}
