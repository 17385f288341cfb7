import type { CabinModel, PlacedSpeaker } from '../../geometry';
import type { Camera } from './camera';
import type { CarDrawing } from './draw-car';
import type { Box } from './raster';

/** What is shown behind the last head, and behind a speaker farther back, mm. Choices of ours. */
const BEHIND_HEAD = 420;
const BEHIND_SPEAKER = 150;

/** Room round the cabin, mm. */
const ROOM = 90;

/**
 * What of a drawing is shown: from behind all of it and every speaker; from above and the side the
 * cabin as far back as somebody sits or a speaker stands, since the luggage room and the bonnet tell
 * nothing and make the rest small.
 */
export function cropOf(
  { panels, seats }: Pick<CabinModel, 'panels' | 'seats'>,
  { camera, box }: Pick<CarDrawing, 'camera' | 'box'>,
  placed: readonly Pick<PlacedSpeaker, 'position'>[],
): Box {
  if (camera.id === 'behind' || panels.length === 0) return aroundMarks(box, camera, placed);
  // Without a listener there is no end to what is looked at.
  const last =
    seats.length > 0
      ? Math.max(
          ...seats.map(({ head }) => head[0] + BEHIND_HEAD),
          ...placed.map(({ position }) => position[0] + BEHIND_SPEAKER),
        )
      : Infinity;
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

/**
 * Wide enough for every speaker: one behind the seats stands before what is seen from behind. What
 * is farther off than the car is wide stays outside, so that the car can still be seen.
 */
function aroundMarks(box: Box, camera: Camera, placed: readonly Pick<PlacedSpeaker, 'position'>[]) {
  const far = box.right - box.left;
  return placed.reduce((wide, { position }) => {
    const [x, y] = camera.project(position);
    const off = Math.max(box.left - x, x - box.right, box.top - y, y - box.bottom);
    if (off <= 0 || off > far) return wide;
    return {
      left: Math.min(wide.left, x - ROOM),
      right: Math.max(wide.right, x + ROOM),
      top: Math.min(wide.top, y - ROOM),
      bottom: Math.max(wide.bottom, y + ROOM),
    };
  }, box);
}
