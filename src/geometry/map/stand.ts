import type { Panel } from '../cabin/model';
import { patchNormal, pointOnPatch } from '../cabin/patch';
import type { Aim, Side, SpeakerInput } from '../input';
import { placeSpeaker } from '../stage/place';
import { along } from '../vector';
import { aimAt, type ReadyAim } from './aim-rule';
import type { Standing } from './fits';
import type { GridSpot } from './panel-grid';
import type { SpotRoom } from './spot-room';

/** What moves from spot to spot: everything of a speaker but its spot and, by rule, its aim. */
export interface Mover {
  speaker: SpeakerInput;
  side: Side;
  standoff: number;
  /** `null`: aimed as the speaker is. */
  aim: ReadyAim | null;
}

/** The speaker at a spot, exactly as a plan would hold it, and placed. */
export function standAt(
  { speaker, side, standoff, aim }: Mover,
  { panel: id, u, v }: GridSpot,
  room: SpotRoom,
): Standing {
  const moved: SpeakerInput = { ...withoutPosition(speaker), mount: { panel: id, u, v, standoff } };
  const own = aim && aimOf(aim, side, room.panelById.get(id), u, v, standoff);
  if (own) moved.aim = own;
  const answer = placeSpeaker(moved, room.panelById, room.seatById);
  if (!answer.ok) throw new Error(`standAt: ${answer.error.field}: ${answer.error.message}`);
  return { speaker: moved, placed: answer.placed };
}

const kept = new WeakMap<SpeakerInput, SpeakerInput>();

/** Without a place of its own: made once for thousands of spots. */
function withoutPosition(speaker: SpeakerInput): SpeakerInput {
  if (!speaker.position) return speaker;
  let bare = kept.get(speaker);
  if (!bare) {
    const { position: _, ...rest } = speaker;
    bare = rest;
    kept.set(speaker, bare);
  }
  return bare;
}

function aimOf(
  aim: ReadyAim,
  side: Side,
  panel: Panel | undefined,
  u: number,
  v: number,
  standoff: number,
): Aim | null {
  if (!panel || aim.withinDeg === null) return aim[side];
  const normal = patchNormal(panel.patch, u, v);
  return aimAt(aim, side, along(pointOnPatch(panel.patch, u, v), normal, standoff), normal);
}
