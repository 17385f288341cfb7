import type { Plan } from '../../../plan/types';
import type { Found } from './found';

/** Whether an answer still speaks of the plan as it is; a title or another option changes nothing. */
export function isStale({ plan, option }: Pick<Found, 'plan' | 'option'>, now: Plan): boolean {
  if (now === plan) return false;
  const same = (a: unknown, b: unknown) => a === b || JSON.stringify(a) === JSON.stringify(b);
  const after = now.options.find(({ id }) => id === option.id);
  return !(
    after &&
    same(now.cabin, plan.cabin) &&
    same(now.seats, plan.seats) &&
    same(now.obstacles, plan.obstacles) &&
    same(now.keepClear, plan.keepClear) &&
    same(now.air, plan.air) &&
    same(after.speakers, option.speakers)
  );
}
