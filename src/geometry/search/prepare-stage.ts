import type { Refusal } from '../cabin/model';
import type { PlanInput } from '../input';
import { createSpotFitter, type MakeFitter } from '../map/fits';
import { DIFFERENCE_SCALE } from '../map/penalty';
import { spotRoom } from '../map/spot-room';
import { preparePair, prepareShared, type ReadySearch, Refused } from './prepare';
import type { StageRequest } from './stage-types';

/** Weight of the path spread where the request names none. Choice of ours, no source. */
const USUAL_SPREAD = 0.5;

/** A stage's request with everything looked up: the same wherever it is made ready. */
export interface ReadyStage {
  /** One at least. */
  pairs: readonly ReadySearch[];
  /** Penalty of a spread of 1 mm, by seat. */
  spreadWeights: readonly number[];
  answers: number;
  apart: number;
}

export type ReadyStageAnswer = { ok: true; ready: ReadyStage } | { ok: false; error: Refusal };

/** Refuses as `prepareSearch` does, with `pairs[n].` before a pair's field. */
export function prepareStage(
  plan: PlanInput,
  request: StageRequest,
  makeFitter: MakeFitter = createSpotFitter,
): ReadyStageAnswer {
  const made = spotRoom(plan);
  if (!made.ok) return made;
  try {
    const shared = prepareShared(plan, request, made.room);
    const moving = request.pairs.map(({ pair }) => pair);
    if (moving.length === 0) throw new Refused('pairs', 'must name at least one pair');
    const pairs = request.pairs.map((pair, n) => {
      if (moving.indexOf(pair.pair) < n)
        throw new Refused(`pairs[${n}].pair`, `the pair "${pair.pair}" is already searched for`);
      return preparePair(shared, pair, `pairs[${n}].`, moving, makeFitter, false);
    });
    const spread = (request.want?.pathSpread ?? USUAL_SPREAD) / DIFFERENCE_SCALE;
    const { weights, answers, apart } = shared;
    const spreadWeights = weights.map((weight) => weight * spread);
    return { ok: true, ready: { pairs, spreadWeights, answers, apart } };
  } catch (reason) {
    if (reason instanceof Refused)
      return { ok: false, error: { path: reason.path, message: reason.message } };
    throw reason;
  }
}
