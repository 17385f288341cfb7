/** A speaker's aim: at a seat when its head is under the pointer, otherwise at the point there. */
import { type Aim, distance, type Vec3 } from '../../geometry';
import { aimSpeaker } from '../../plan/edits';
import { nearestOnRay, type Ray } from '../pick/ray';
import type { Drag } from './drag';

export interface AimDragStart {
  optionId: string;
  speakerId: string;
  name: string;
  position: Vec3;
  /** Where the arrow looks to begin with; used where nothing is under the pointer. */
  tip: Vec3;
  /** The nearest drawn thing on a line of sight: panel or body. */
  meet: (ray: Ray) => Vec3 | null;
}

/** Nearer than this to the speaker a point gives no direction worth having, mm. */
const TOO_NEAR = 40;

export function aimOfSpeaker(start: AimDragStart): Drag {
  return {
    label: `aim ${start.name}`,
    move({ ray, head }) {
      if (head) return aimAt({ kind: 'seat', seat: head });
      const met = start.meet(ray);
      const usable = met && distance(met, start.position) > TOO_NEAR;
      const point = usable ? met : nearestOnRay(ray, start.tip);
      if (distance(point, start.position) < 1) return null;
      const tidy = point.map((x) => Math.round(x * 10) / 10) as unknown as Vec3;
      return aimAt({ kind: 'point', point: tidy });
    },
  };

  function aimAt(aim: Aim) {
    return aimSpeaker(start.optionId, start.speakerId, aim);
  }
}
