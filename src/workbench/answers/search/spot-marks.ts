import { type CabinModel, type FoundPlace, patchNormal, pointOnPatch } from '../../../geometry';
import type { SpotMark } from '../../../store';
import type { Proposal } from './found';

/** The answers as marks in the drawing, and the chosen one of the front among them. */
export function spotMarks(
  answers: readonly Proposal[],
  chosen: Proposal | null,
  cabin: CabinModel,
): SpotMark[] {
  const shown = chosen && !answers.includes(chosen) ? [...answers, chosen] : answers;
  return shown.flatMap((one) =>
    one.spots.flatMap((spot) => [
      ...markAt(spot, `${one.key}L`, one === chosen, cabin),
      ...markAt(spot.partner, `${one.key}R`, one === chosen, cabin),
    ]),
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
