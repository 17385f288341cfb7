import type { Panel, Seat } from '../cabin/model';
import { patchNormal, pointOnPatch } from '../cabin/patch';
import type { SpeakerInput } from '../input';
import type { PlacedSpeaker } from '../result';
import { along, direction, sub, type Vec3 } from '../vector';

/** A mount or an aim that names something the plan does not have. `field` is relative to the speaker. */
export interface PlacementError {
  field: string;
  message: string;
}

export type Placement = { ok: true; placed: PlacedSpeaker } | { ok: false; error: PlacementError };

/**
 * A speaker's position, mm, and axis, a unit vector (`null` when its aim has no length).
 * Mounted: the panel's point at u, v, moved `standoff` along the normal into the cabin.
 * The axis starts at the reference point, as in IEC 60268-5.
 */
export function placeSpeaker(
  speaker: SpeakerInput,
  panels: ReadonlyMap<string, Panel>,
  seats: ReadonlyMap<string, Seat>,
): Placement {
  let position: Vec3;
  let normal: Vec3 | null = null;
  if (speaker.mount) {
    const { panel: id, u, v, standoff = 0 } = speaker.mount;
    const panel = panels.get(id);
    if (!panel) return refuse('mount.panel', `there is no panel "${id}" in this cabin`);
    normal = patchNormal(panel.patch, u, v);
    position = along(pointOnPatch(panel.patch, u, v), normal, standoff);
  } else if (speaker.position) {
    position = speaker.position;
  } else {
    return refuse('position', 'give a position or a mount');
  }

  const aim = speaker.aim ?? (normal ? { kind: 'normal' as const } : null);
  let axis: Vec3 | null = null;
  switch (aim?.kind) {
    case 'direction':
      axis = direction(aim.direction);
      break;
    case 'point':
      axis = direction(sub(aim.point, position));
      break;
    case 'seat': {
      const seat = seats.get(aim.seat);
      if (!seat) return refuse('aim.seat', `there is no seat "${aim.seat}" in this plan`);
      axis = direction(sub(seat.head, position));
      break;
    }
    case 'normal':
      if (!normal) return refuse('aim', 'a free point has no panel whose normal it could take');
      axis = normal;
  }
  return { ok: true, placed: { speaker: speaker.id, position, axis, normal } };
}

function refuse(field: string, message: string): Placement {
  return { ok: false, error: { field, message } };
}
