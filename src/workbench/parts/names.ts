import type { CabinModel } from '../../geometry';
import { panelName, words } from '../../plan/names';

/** The name of a panel or an obstacle by its id, without an article. */
export function thingName(cabin: CabinModel | null, id: string): string {
  const thing =
    cabin?.obstacles.find((obstacle) => obstacle.id === id) ??
    cabin?.panels.find((panel) => panel.id === id);
  if (!thing) return panelName(id);
  return thing.name === id ? words(id) : thing.name;
}

/** "the steering wheel"; a name that has its article already keeps it. */
export const withArticle = (name: string): string =>
  /^(the|a|an|its) /.test(name) ? name : `the ${name}`;
