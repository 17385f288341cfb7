/** The engine as Node runs it, to hold the page against. */
export { evaluatePlan } from '../../src/geometry';
export type { Plan } from '../../src/plan/types';
