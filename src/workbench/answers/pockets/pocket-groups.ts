import type { PocketPairStudy, PocketStudy, PocketsStudy, SealedPocket } from '../../../geometry';
import { pairName } from '../../../plan/names';
import type { PlanOption } from '../../../plan/types';
import { capital } from '../capital';
import { pocketName } from './pocket-name';

export interface DrawnPocket {
  pocket: SealedPocket;
  study: PocketStudy;
  /** "left pocket". */
  name: string;
}

/** What is looked at together: the pockets of a pair, left before right, or one by itself. */
export interface PocketGroup {
  id: string;
  title: string;
  pockets: DrawnPocket[];
  pair: PocketPairStudy | null;
}

export function pocketGroups(option: PlanOption, study: PocketsStudy): PocketGroup[] {
  const drawn = (option.pockets ?? []).flatMap((pocket, i): DrawnPocket[] => {
    const one = study.pockets[i];
    if (!one) return [];
    const name = pocketName(pocket, one, option.pockets ?? [], option.speakers);
    return [{ pocket, study: one, name }];
  });
  const grouped = new Set<DrawnPocket>();
  const pairs = study.pairs.flatMap((pair): PocketGroup[] => {
    const pockets = [pair.left, pair.right]
      .flatMap((id) => drawn.find(({ pocket }) => pocket.id === id) ?? [])
      .filter((one, i, all) => all.indexOf(one) === i && !grouped.has(one));
    if (pockets.length === 0) return [];
    for (const one of pockets) grouped.add(one);
    const title = capital(pairName(pair.pair, option.speakers));
    return [{ id: `pair ${pair.pair}`, title, pockets, pair }];
  });
  const alone = drawn
    .filter((one) => !grouped.has(one))
    .map((one) => ({
      id: `pocket ${one.pocket.id}`,
      title: capital(one.name),
      pockets: [one],
      pair: null,
    }));
  return [...pairs, ...alone];
}
