import {
  type CabinModel,
  distance,
  type GridSpot,
  type MapQuantity,
  pointOnPatch,
  type SpeakerInput,
  type SpotMap,
  type SpotReader,
  type Vec3,
} from '../../../geometry';
import { type BestSpot, bestSpot } from './best-spot';
import { asksFit } from './map-words';

interface Tried extends Pick<SpotReader, 'fits' | 'isKeptClear'> {
  cabin: CabinModel;
  speaker: SpeakerInput;
}

/**
 * The best spots of a map: on the panels usual for the speaker, and on any. Whether it fits may be
 * left open, but no spot in a place kept clear is ever proposed.
 */
export function bestOnPanels(
  map: SpotMap,
  quantity: MapQuantity,
  { cabin, speaker: { mount, role }, fits, isKeptClear }: Tried,
): { usual: BestSpot | null; any: BestSpot | null } {
  const at = placesOf(cabin);
  const from = mount ? at(mount) : null;
  const near = (spot: GridSpot) => {
    const there = from && at(spot);
    return from && there ? distance(from, there) : 0;
  };
  const usual = new Set(
    cabin.panels.flatMap(({ id, roles }) => (roles.includes(role) ? [id] : [])),
  );
  const isAllowed = asksFit(map) ? fits : (spot: GridSpot) => !isKeptClear(spot);
  const on = (wanted: (panel: string) => boolean) =>
    bestSpot(map, quantity, wanted, isAllowed, near);
  return { usual: on((panel) => usual.has(panel)), any: on(() => true) };
}

const placesOf =
  ({ panels }: CabinModel) =>
  ({ panel: id, u, v }: GridSpot): Vec3 | null => {
    const panel = panels.find((one) => one.id === id);
    return panel ? pointOnPatch(panel.patch, u, v) : null;
  };
