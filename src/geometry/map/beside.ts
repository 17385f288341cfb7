import type { Side, SpeakerInput } from '../input';
import type { Standing } from './fits';
import { type GridSpot, twinPanel } from './panel-grid';
import type { ReadyMap } from './prepare-map';
import { standAt } from './stand';

/**
 * Who stands beside a speaker at a spot and may be run into: its fixed partner where there is one,
 * else its twin on the mirrored spot. No pair, no twin.
 * @param own the spot's side of the car
 */
export function besideAt(ready: ReadyMap, spot: GridSpot, own: Side | null): Standing[] {
  const { partner, movers, room } = ready;
  if (partner) return [partner.standing];
  const { pair, id } = movers.left.speaker;
  const mirrored = twinOf(spot);
  if (pair === undefined || !room.panelById.has(mirrored.panel)) return [];
  const side = (own ?? ready.own) === 'left' ? 'right' : 'left';
  const { speaker, placed } = standAt(movers[side], mirrored, room);
  // An id of its own: nobody is in their own way.
  return [{ speaker: { ...speaker, id: `${id} mirrored`, side }, placed }];
}

/** The mirrored spot: across a panel on the centreline u turns round. */
export function twinOf({ panel, u, v }: GridSpot): GridSpot {
  const twin = twinPanel(panel);
  return twin === panel ? { panel, u: 1 - u, v } : { panel: twin, u, v };
}

/** No point of a speaker lies farther than this from its reference point, mm. */
export function reachOf({ body }: SpeakerInput): number {
  if (!body) return 0;
  const back = Math.sqrt(body.depth * body.depth + (body.cutout / 2) * (body.cutout / 2));
  return Math.max(body.flange / 2, back);
}
