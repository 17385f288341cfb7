import type { CabinModel } from '../../geometry';
import type { CarDrawing } from './draw-car';
import type { Box } from './raster';

/** Room round the cabin, mm. */
const ROOM = 90;

/**
 * What of a drawing is shown: from behind all of it; from above and the side the cabin as far back as
 * somebody sits, since the luggage room and the bonnet tell nothing and make the rest small.
 */
export function cropOf({ panels, seats }: CabinModel, { camera, box }: CarDrawing): Box {
  if (camera.id === 'behind' || panels.length === 0) return box;
  // Without a listener there is no end to what is looked at.
  const last = seats.length > 0 ? Math.max(...seats.map(({ head }) => head[0] + 420)) : Infinity;
  const inside: Box = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };
  for (const { patch } of panels) {
    for (const point of patch.control) {
      const [x, y] = camera.project(point);
      inside.left = Math.min(inside.left, x);
      inside.right = Math.max(inside.right, Math.min(x, last));
      inside.top = Math.min(inside.top, y);
      inside.bottom = Math.max(inside.bottom, y);
    }
  }
  return {
    left: inside.left - ROOM,
    right: inside.right + ROOM,
    top: inside.top - ROOM,
    bottom: inside.bottom + ROOM,
  };
}
