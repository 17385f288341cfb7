import type { MapQuantity, SpotMap } from './types';

/** One map from several shares of it, finished or not. Changes none of them. */
export function joinMaps(shares: readonly SpotMap[]): SpotMap {
  const [first, ...others] = shares;
  if (!first) throw new RangeError('joinMaps: expected at least one share, got none');
  const joined: SpotMap = {
    panels: first.panels,
    done: first.done.slice(),
    fit: first.fit.slice(),
    values: Object.fromEntries(
      Object.entries(first.values).map(([name, values]) => [name, values.slice()]),
    ),
  };
  for (const { done, fit, values } of others)
    for (let k = 0; k < done.length; k++) {
      if (done[k] !== 1) continue;
      joined.done[k] = 1;
      joined.fit[k] = fit[k] as number;
      for (const [name, into] of Object.entries(joined.values))
        into[k] = values[name as MapQuantity]?.[k] as number;
    }
  return joined;
}
