/** The engine as Node runs it, to hold the page against. */
export { channelSettings, compromiseOver, evaluatePlan, pairsOf, sumsAt } from '../../src/geometry';
export type { Plan } from '../../src/plan/types';
