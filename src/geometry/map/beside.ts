import type { Side, SpeakerInput } from '../input';
import { FLANGE_THICKNESS, usualRing } from '../ring/usual-ring';
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

/**
 * No point of a speaker, or of the ring it stands on, lies farther than this from its reference
 * point, mm. Turned by an angle, a ring of radius r at the stand-off s is (s ± r·sin)/cos thick at
 * its edge: as its thin side is not below 0, sin is at most s/r, and its thick side 2·s/cos.
 */
export function reachOf(
  { body, ring, mount }: SpeakerInput,
  standoff = mount?.standoff ?? 0,
): number {
  if (!body) return 0;
  const sunk = ring?.seat === 'sunk' ? (ring.flangeThickness ?? FLANGE_THICKNESS) : 0;
  const reach = Math.max(body.flange / 2, away(body.depth + sunk, body.cutout / 2));
  if (!ring) return reach;
  const radius = usualRing(body, ring).outer / 2;
  const sine = standoff / radius;
  if (!(sine < 1)) return Infinity;
  return Math.max(reach, away((2 * standoff) / Math.sqrt(1 - sine * sine), radius));
}

/** So far behind the reference point, and so far off the axis. */
const away = (back: number, aside: number): number => Math.sqrt(back * back + aside * aside);
