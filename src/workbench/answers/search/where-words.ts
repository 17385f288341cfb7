/** Where a spot is, in words an installer can put a tape to. */
import type { CabinModel, FoundPlace, FoundSpot } from '../../../geometry';
import { placeWords } from '../../../plan/edits';
import { panelName } from '../../../plan/names';
import { formatLength, type LengthUnit } from '../../../plan/units';
import { toLength } from '../../parts/along-panel';

/** "left A-pillar, 212 mm along, 48 mm across, 15 mm off it". */
export function placeSentence(
  { panel: id, u, v, standoff }: FoundPlace,
  cabin: CabinModel,
  unit: LengthUnit,
): string {
  const panel = cabin.panels.find((one) => one.id === id);
  const name = panel?.name ?? panelName(id);
  const off = standoff > 0 ? `, ${formatLength(standoff, unit)} off it` : '';
  if (!panel) return `${name}${off}`;
  const along = formatLength(toLength(panel.patch, 'u', v, u), unit);
  const across = formatLength(toLength(panel.patch, 'v', u, v), unit);
  return `${name}, ${along} along, ${across} across${off}`;
}

/** "A-pillars", "dash top": both sides in one word or two. */
export const spotTitle = (spot: FoundSpot): string => placeWords(spot).replace(/^on (the )?/, '');

/** "212 mm along, 48 mm across": of the left one; the right one mirrors it or is told apart. */
export function shortPlace(spot: FoundPlace, cabin: CabinModel, unit: LengthUnit): string {
  const panel = cabin.panels.find(({ id }) => id === spot.panel);
  if (!panel) return '';
  const { u, v } = spot;
  const along = formatLength(toLength(panel.patch, 'u', v, u), unit);
  const across = formatLength(toLength(panel.patch, 'v', u, v), unit);
  return `${along} along, ${across} across`;
}
