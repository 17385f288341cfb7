import type { KeepClearZone } from '../cabin/model';
import type { SpeakerBody } from '../input';
import type { PlacedSpeaker } from '../result';
import { bodyOf } from './body';
import { meets } from './meets';
import { solidOf } from './solid';

/**
 * Keep-clear zones that a speaker's body reaches into: its flange at the spot, the rest behind it
 * along its axis. Without a known body, the spot alone is tried.
 */
export function zonesAtSpot(
  zones: readonly KeepClearZone[],
  placed: PlacedSpeaker,
  body: SpeakerBody | undefined,
): KeepClearZone[] {
  const speaker = { id: placed.speaker, role: 'midrange' as const, ...(body && { body }) };
  const round = bodyOf({ speaker, placed });
  return zones.filter(({ shape }) => {
    const solid = solidOf(shape);
    return solid !== null && meets(solid, round);
  });
}
