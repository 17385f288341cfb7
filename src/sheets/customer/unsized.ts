import type { PlanOption } from '../../plan/types';

/** How many speakers have no body entered: whether those fit, nobody can tell. */
export const unsizedIn = ({ speakers }: Pick<PlanOption, 'speakers'>): number =>
  speakers.filter(({ body }) => !body).length;
