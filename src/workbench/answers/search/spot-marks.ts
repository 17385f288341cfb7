import { type CabinModel, type FoundPlace, patchNormal, pointOnPatch } from '../../../geometry';
import { roleName } from '../../../plan/names';
import type { SpotMark } from '../../../store';
import type { Found, Proposal } from './found';

/**
 * The answers as marks in the drawing, and the chosen one of the front among them. Of sets for
 * several pairs only the chosen one: all of them would hide the car.
 */
export function spotMarks(
  { answers, option, pairs }: Pick<Found, 'answers' | 'option' | 'pairs'>,
  chosen: Proposal | null,
  cabin: CabinModel,
): SpotMark[] {
  const several = pairs.length > 1;
  const all = chosen && !answers.includes(chosen) ? [...answers, chosen] : answers;
  return (several ? all.filter((one) => one === chosen) : all).flatMap((one) =>
    one.spots.flatMap((spot) => {
      const role = option.speakers.find(({ pair }) => pair === spot.pair)?.role;
      const more = several ? ` ${role ? roleName(role) : spot.pair}` : '';
      return [
        ...markAt(spot, `${one.key}L${more}`, one === chosen, cabin),
        ...markAt(spot.partner, `${one.key}R${more}`, one === chosen, cabin),
      ];
    }),
  );
}

function markAt(
  { panel: id, u, v }: FoundPlace,
  label: string,
  chosen: boolean,
  cabin: CabinModel,
): SpotMark[] {
  const panel = cabin.panels.find((one) => one.id === id);
  if (!panel) return [];
  return [
    {
      position: pointOnPatch(panel.patch, u, v),
      normal: patchNormal(panel.patch, u, v),
      label,
      chosen,
    },
  ];
}
