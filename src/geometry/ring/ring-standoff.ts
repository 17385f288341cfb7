import { stepUp } from './step-up';
import type { RingInput, RingPlace } from './types';
import { ringShape } from './wedge-ring';

/** A step nearer costs one question; an aim at a point 300 mm off settles within five. */
const STEPS = 20;

/** Stand-offs are told and kept to this, mm. */
const TENTH = 0.1;

/**
 * The least stand-off a ring can be made with, in tenths of a millimetre. An aim at a point or a
 * seat turns as the speaker comes forward, so it is asked again at each stand-off.
 * @param at where the speaker is with that stand-off, mm; `null`: nowhere
 * @returns `null` where no stand-off helps
 */
export function ringStandoff(
  input: RingInput,
  at: (standoff: number) => RingPlace | null,
): number | null {
  let standoff = 0;
  for (let step = 0; step < STEPS; step++) {
    const place = at(standoff);
    if (!place) return null;
    const answer = ringShape(input, place);
    if (answer.ok) return standoff;
    if (answer.standoffNeeded === null) return null;
    // Up to the next tenth, and by one at least, so that it ends.
    standoff = Math.max(stepUp(answer.standoffNeeded), Math.round((standoff + TENTH) * 10) / 10);
  }
  return null;
}
