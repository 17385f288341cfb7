import type { CabinModel } from '../../geometry';
import type { PrintedWords } from '../words/use-words';

/** What stands in the way, is hit or runs into something: an obstacle, else a panel, by its id. */
export function thingName(
  { obstacles, panels }: Pick<CabinModel, 'obstacles' | 'panels'>,
  id: string,
  { names }: Pick<PrintedWords, 'names'>,
): string {
  const obstacle = obstacles.find((one) => one.id === id);
  return obstacle
    ? names.obstacle(obstacle)
    : names.panel(panels.find((one) => one.id === id) ?? id);
}
