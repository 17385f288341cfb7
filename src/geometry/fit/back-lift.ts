import type { Panel } from '../cabin/model';
import type { SpeakerInput } from '../input';
import type { RingForm, RingInput } from '../ring/types';
import { groundAt, liftOf } from './panel-ground';

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
