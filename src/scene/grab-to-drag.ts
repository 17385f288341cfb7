/** What taking hold of a thing means: the drag for it, or nothing where it cannot be moved. */
import { type PerspectiveCamera, Vector3 } from 'three';
import { direction, type Vec3 } from '../geometry';
import { seatName, speakerName } from '../plan/names';
import { planStore } from '../store';
import { toCar } from './axes';
import { aimOfSpeaker } from './drag/aim-drag';
import type { Drag } from './drag/drag';
import { obstacleInCar } from './drag/obstacle-drag';
import { seatAlongRails } from './drag/seat-drag';
import { speakerAlongPanels, speakerInSpace } from './drag/speaker-drag';
import type { Drawing } from './drawing';
import { speakersOf } from './option-drawing';
import type { Grab } from './pick/grab';
import type { Ray } from './pick/ray';

/** True where a hand may move what it took hold of: the plan is open to change, the seat slides. */
export function canBeDragged(drawing: Drawing, grab: Grab): boolean {
  if (planStore.getState().readOnly !== null) return false;
  if (grab.kind !== 'head' && grab.kind !== 'seat') return true;
  return drawing.cabin()?.seats.some(({ id, slideRange }) => id === grab.id && slideRange) ?? false;
}

/** @param ray line of sight through the grabbed point at the start */
export function dragFor(
  drawing: Drawing,
  camera: PerspectiveCamera,
  grab: Grab,
  ray: Ray,
): Drag | null {
  switch (grab.kind) {
    case 'speaker':
    case 'tip':
      return speakerDrag(drawing, camera, grab);
    case 'obstacle': {
      const name = drawing.cabin()?.obstacles.find(({ id }) => id === grab.id)?.name ?? grab.id;
      return obstacleInCar({ obstacleId: grab.id, name, grip: grab.point, ray });
    }
    case 'head':
    case 'seat':
      return seatDrag(drawing, grab, ray);
  }
}

function speakerDrag(drawing: Drawing, camera: PerspectiveCamera, grab: Grab): Drag | null {
  const option = drawing.option();
  const shown = drawing.speakers.shown().find(({ speaker }) => speaker.id === grab.id);
  if (!option || !shown) return null;
  const { speaker, placed } = shown;
  const name = speakerName(speaker, speakersOf(option));
  const what = { optionId: option.id, speakerId: speaker.id, name };
  if (grab.kind === 'tip') {
    const meet = (sight: Ray): Vec3 | null => {
      const panel = drawing.panelCast(sight)?.point ?? null;
      const body = drawing.obstacles.under(sight, (obstacle) => !obstacle.occupant);
      return nearer(sight.origin, panel, body?.point ?? null);
    };
    return aimOfSpeaker({ ...what, position: placed.position, tip: grab.point, meet });
  }
  if (speaker.mount) {
    const panels = drawing.cabin()?.panels ?? [];
    return speakerAlongPanels({ ...what, mount: speaker.mount, panels, cast: drawing.panelCasts });
  }
  const facing = direction(toCar(camera.getWorldDirection(new Vector3()))) ?? [1, 0, 0];
  return speakerInSpace({ ...what, position: placed.position, facing });
}

function seatDrag(drawing: Drawing, grab: Grab, ray: Ray): Drag | null {
  const seats = drawing.cabin()?.seats ?? [];
  const seat = seats.find(({ id }) => id === grab.id);
  if (!seat?.slideRange) return null;
  return seatAlongRails({
    seatId: seat.id,
    allSeatIds: seats.map(({ id }) => id),
    name: seatName(seat.id),
    grip: grab.point,
    ray,
    slide: planStore.shown().seats?.find(({ id }) => id === seat.id)?.slide ?? 0,
    slideRange: seat.slideRange,
  });
}

/** The one of two points nearer to where the eye is. */
export function nearer(origin: Vec3, a: Vec3 | null, b: Vec3 | null): Vec3 | null {
  if (!a || !b) return a ?? b;
  const far = (p: Vec3) =>
    (p[0] - origin[0]) ** 2 + (p[1] - origin[1]) ** 2 + (p[2] - origin[2]) ** 2;
  return far(a) <= far(b) ? a : b;
}
