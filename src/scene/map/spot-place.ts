/** From a place on a panel to the spot of the map there, and back. */
import {
  nearestOnPatch,
  type Panel,
  patchNormal,
  pointOnPatch,
  type SpotMap,
  type Vec3,
} from '../../geometry';
import { numberNear, spotOfNumber } from '../../plan/painted-spots';

/** The number of the spot nearest to a point of a panel; `null` where the map has no such panel. */
export function spotNear(map: SpotMap, panel: Panel, point: Vec3): number | null {
  return numberNear(map, { panel: panel.id, ...nearestOnPatch(panel.patch, point) });
}

/** Where spot number `k` is in the car, and which way its panel faces there. */
export function placeOfSpot(
  map: SpotMap,
  panels: readonly Panel[],
  k: number,
): { point: Vec3; normal: Vec3 } | null {
  const spot = spotOfNumber(map, k);
  const panel = panels.find(({ id }) => id === spot?.panel);
  if (!spot || !panel) return null;
  const { u, v } = spot;
  return { point: pointOnPatch(panel.patch, u, v), normal: patchNormal(panel.patch, u, v) };
}
