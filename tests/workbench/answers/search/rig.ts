import { buildCabin, type FoundSpot, type SpotMeasures } from '../../../../src/geometry';
import { demoPlan } from '../../../../src/plan/demo';
import type { Plan, PlanOption } from '../../../../src/plan/types';
import type { SearchGround } from '../../../../src/workbench/answers/search/draft';
import type { Found, Proposal } from '../../../../src/workbench/answers/search/found';

/** A plan's first option, as the search's fields see it. */
export function groundOf(plan: Plan = demoPlan()): SearchGround {
  const answer = buildCabin(plan);
  if (!answer.ok) throw new Error(answer.error.message);
  return { plan, cabin: answer.cabin, option: plan.options[0] as PlanOption };
}

const GOOD: SpotMeasures = {
  difference: 100,
  offAxisDeg: 20,
  obstructionDb: 1,
  firstReflectionTime: 0.5,
};

export const spotAt = (panel: string, measures: Partial<SpotMeasures> = {}): FoundSpot =>
  ({
    panel,
    u: 0.4,
    v: 0.5,
    standoff: 15,
    partner: { panel: panel.replace('left', 'right'), u: 0.4, v: 0.5, standoff: 15 },
    feasible: true,
    why: [],
    measures: { ...GOOD, ...measures },
    score: 1,
  }) as unknown as FoundSpot;

export const proposal = (
  key: string,
  measures: Partial<SpotMeasures> = {},
  panel = 'dash-top-left',
): Proposal => {
  const spot = spotAt(panel, measures);
  return { key, spots: [{ ...spot, pair: 'tweeter' }], measures: spot.measures, score: spot.score };
};

export function foundWith(answers: Proposal[], change: Partial<Found> = {}): Found {
  const { plan, option } = groundOf();
  return {
    plan,
    option,
    request: { option: option.id, pair: 'tweeter' },
    columns: ['difference', 'offAxisDeg', 'obstructionDb', 'firstReflectionTime'],
    weights: {
      difference: 1,
      offAxisDeg: 0.5,
      obstructionDb: 1,
      firstReflectionTime: 0.2,
      pathSpread: 0,
    },
    tried: 100,
    feasible: 40,
    pairs: [{ pair: 'tweeter', tried: 100, feasible: 40 }],
    answers,
    front: [],
    complete: true,
    now: null,
    ...change,
  };
}
