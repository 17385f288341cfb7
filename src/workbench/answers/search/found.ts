/** Answers of a search for one pair and for several, in one form for the page. */
import type {
  FoundSpot,
  FoundStage,
  PairsNow,
  SearchAnswer,
  SpotAim,
  SpotMeasures,
  StageAnswer,
} from '../../../geometry';
import type { Plan, PlanOption } from '../../../plan/types';
import { type AnyRequest, isStageRequest } from './build-request';

/** What is told of a proposal: the four measures of a spot, and the path spread of a stage. */
export type Measure = SpotAim | 'pathSpread';

export type Measures = Partial<Record<Measure, number | null>>;

/** A spot for each pair asked about. */
export interface Proposal {
  /** "1" for the best answer, "a1" for the first of the front. */
  key: string;
  spots: readonly (FoundSpot & { pair: string })[];
  measures: Measures;
  score: number;
}

export interface Found {
  /** The plan and the option searched, as they were then. */
  plan: Plan;
  option: PlanOption;
  request: AnyRequest;
  /** What is told of each proposal, in the order of the columns. */
  columns: readonly Measure[];
  /** How much each counts; 0: told, not wanted. */
  weights: Readonly<Record<Measure, number>>;
  tried: number;
  feasible: number;
  /** For several pairs: of each. */
  pairs: readonly { pair: string; tried: number; feasible: number }[];
  answers: readonly Proposal[];
  front: readonly Proposal[];
  /** For several pairs: how much was looked at for the front. */
  frontOf?: StageAnswer['frontOf'];
  /** False where a better combination may exist. */
  complete: boolean;
  /** The same of the pairs where they stood; `null` where that is not known. */
  now: { measures: Measures; score: number } | null;
}

export const SPOT_MEASURES: readonly SpotAim[] = [
  'difference',
  'offAxisDeg',
  'obstructionDb',
  'firstReflectionTime',
];

const ofOne = (pair: string, spot: FoundSpot, key: string): Proposal => ({
  key,
  spots: [{ ...spot, pair }],
  measures: spot.measures,
  score: spot.score,
});

interface Asked {
  plan: Plan;
  option: PlanOption;
  request: AnyRequest;
}

/** Smaller is better, with what is missing in its place: no reflection is best, no angle worst. */
export function costOf(measure: Measure, value: number | null | undefined): number {
  const missing = value === null || value === undefined;
  if (measure === 'firstReflectionTime') return missing ? Number.NEGATIVE_INFINITY : -value;
  return missing ? Number.POSITIVE_INFINITY : value;
}

/** A pair's answer for the page. */
export function foundOfPair(asked: Asked, answer: SearchAnswer, now: PairsNow | null): Found {
  const { request } = asked;
  if (isStageRequest(request)) throw new TypeError('foundOfPair: expected a request for one pair');
  const { tried, feasible, answers, front } = answer;
  const stands = now?.pairs[0];
  return {
    ...asked,
    columns: SPOT_MEASURES,
    weights: { ...weightsOf(request.want), pathSpread: 0 },
    tried,
    feasible,
    pairs: [{ pair: request.pair, tried, feasible }],
    answers: answers.map((spot, n) => ofOne(request.pair, spot, `${n + 1}`)),
    front: front.map((spot, n) => ofOne(request.pair, spot, `a${n + 1}`)),
    complete: true,
    now: stands ? { measures: stands.measures, score: stands.score } : null,
  };
}

const weightsOf = (want: Partial<Record<SpotAim, number>> = {}): Record<SpotAim, number> => ({
  difference: want.difference ?? 0,
  offAxisDeg: want.offAxisDeg ?? 0,
  obstructionDb: want.obstructionDb ?? 0,
  firstReflectionTime: want.firstReflectionTime ?? 0,
});

/** A stage's answer for the page. */
export function foundOfStage(asked: Asked, answer: StageAnswer, now: PairsNow | null): Found {
  const { request } = asked;
  if (!isStageRequest(request)) throw new TypeError('foundOfStage: expected a request for pairs');
  const { pairs, tried, answers, front, frontOf, complete } = answer;
  const stands = now && now.pairs.length === request.pairs.length ? now : null;
  const proposal = ({ spots, measures, score }: FoundStage, key: string): Proposal => ({
    key,
    spots,
    measures,
    score,
  });
  return {
    ...asked,
    columns: [...SPOT_MEASURES, 'pathSpread'],
    weights: {
      ...weightsOf(request.pairs[0]?.want),
      pathSpread: request.want?.pathSpread ?? 0,
    },
    tried,
    feasible: tried,
    pairs,
    answers: answers.map((one, n) => proposal(one, `${n + 1}`)),
    front: front.map((one, n) => proposal(one, `a${n + 1}`)),
    frontOf,
    complete,
    now: stands && {
      measures: {
        ...worstOf(stands.pairs.map(({ measures }) => measures)),
        pathSpread: stands.pathSpread,
      },
      score: stands.score,
    },
  };
}

/** The worst of each measure over several pairs. */
export function worstOf(all: readonly SpotMeasures[]): Measures {
  const worst: Measures = {};
  for (const aim of SPOT_MEASURES)
    for (const [n, measures] of all.entries())
      if (n === 0 || costOf(aim, measures[aim]) > costOf(aim, worst[aim]))
        worst[aim] = measures[aim];
  return worst;
}
