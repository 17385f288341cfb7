/** Facts for papers with any number of speakers. */
import { demoPlan } from '../../src/plan/demo';
import type { Plan } from '../../src/plan/types';
import { factsOfPlan } from './mark-out/papers';

/** The demo with one option of that many speakers, or the demo itself. */
export function factsWith(count: number | 'demo') {
  const demo = demoPlan();
  if (count === 'demo') return factsOfPlan(demo);
  const [first] = demo.options;
  const speakers = Array.from({ length: count }, (_, i) => {
    const one = first?.speakers[i % first.speakers.length];
    const round = Math.floor(i / (first?.speakers.length ?? 1));
    if (!one?.mount) throw new Error('the demo’s speakers are mounted');
    const mount = { ...one.mount, u: Math.min(0.95, one.mount.u + 0.06 * round) };
    return { ...one, id: `${one.id}-${round}`, pair: `${one.pair}-${round}`, mount };
  });
  const plan: Plan = { ...demo, options: [{ id: 'a', title: 'All', speakers }] };
  return factsOfPlan(plan);
}
