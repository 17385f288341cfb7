import type { CabinModel } from '../geometry';
import { panelName, words } from '../plan/names';

/** What stands in a line, with its article: "the steering wheel". */
export function thingName({ obstacles, panels }: CabinModel, id: string): string {
  const thing = obstacles.find((one) => one.id === id) ?? panels.find((one) => one.id === id);
  const name = !thing ? panelName(id) : thing.name === id ? words(id) : thing.name;
  return /^(the|a|an|its) /.test(name) ? name : `the ${name}`;
}

/** "a", "a and b", "a, b and c". */
export function inARow(items: readonly string[]): string {
  if (items.length < 2) return items[0] ?? '';
  return `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`;
}
