import type { KeepClearZone } from '../cabin/model';
import type { SpeakerBody, SpeakerInput } from '../input';
import type { PlacedSpeaker } from '../result';
import { bodyOf } from './body';
import { meets } from './meets';
import { ringBodyOf, ringMeets } from './ring-body';
import { solidOf } from './solid';

/**
 * Keep-clear zones that a speaker's body reaches into: its flange at the spot, the rest behind it
 * along its axis, and the ring it stands on. Without a known body, the spot alone is tried.
 * @param on where and on what ring it is mounted, as the plan says; left out: on none
 */
export function zonesAtSpot(
  zones: readonly KeepClearZone[],
  placed: PlacedSpeaker,
  body: SpeakerBody | undefined,
  on: Pick<SpeakerInput, 'mount' | 'ring'> = {},
): KeepClearZone[] {
  const { mount, ring } = on;
  const speaker = {
    id: placed.speaker,
    role: 'midrange' as const,
    ...(body && { body }),
    ...(mount && { mount }),
    ...(ring && { ring }),
  };
  const round = bodyOf({ speaker, placed });
  const under = ringBodyOf({ speaker, placed });
  return zones.filter(({ shape }) => {
    const solid = solidOf(shape);
    return solid !== null && (meets(solid, round) || (under !== null && ringMeets(solid, under)));
  });
}
