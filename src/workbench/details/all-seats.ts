import { useMemo } from 'react';
import { buildCabin } from '../../geometry';
import { useShownPlan } from '../../store';

/** Every seat the body style has, and any the plan adds, in the car's order. */
export function useAllSeats(listening: readonly string[]): string[] {
  const plan = useShownPlan();
  const listed = plan.seats ?? [];
  const names = listening.join();
  return useMemo(() => {
    const known = names === '' ? [] : names.split(',');
    if (listed.length === 0) return known;
    const answer = buildCabin({ cabin: plan.cabin });
    const own = answer.ok ? answer.cabin.seats.map(({ id }) => id) : [];
    return [...new Set([...own, ...known])];
  }, [plan.cabin, listed.length, names]);
}
