import type { Panel } from '../cabin/model';
import type { SpeakerInput } from '../input';
import type { PlacedSpeaker } from '../result';
import type { RingForm, RingInput } from '../ring/types';
import { bodyOf } from './body';
import { groundAt, liftOf } from './panel-ground';
import { depthBehindPanel } from './panel-problems';

/** How far a ring's flat back lifts off its curved panel at the worst place, mm. */
export function backLift(
  panel: Panel,
  { mount }: Pick<SpeakerInput, 'mount'>,
  { bore }: RingInput,
  { sections }: RingForm,
): number {
  if (!mount) return 0;
  return liftOf(groundAt(panel, mount.u, mount.v).bend, bore / 2, sections.backOuter[0] / 2);
}

/**
 * How far behind its panel's surface the deepest point of a speaker lies, mm; 0 where all of it
 * stands before the panel, `null` at a free point or without a body.
 */
export function depthBehind(
  speaker: SpeakerInput,
  placed: PlacedSpeaker,
  panel: Panel | null,
): number | null {
  const { mount, body } = speaker;
  if (!mount || !body || !panel) return null;
  const ground = groundAt(panel, mount.u, mount.v);
  return Math.max(0, depthBehindPanel(bodyOf({ speaker, placed }), ground, mount.standoff ?? 0));
}
