/** The room a mounting ring takes: a cylinder along the speaker's axis, cut off by its panel. */
import type { SpeakerInput } from '../input';
import { ringInCar } from '../ring/ring-in-car';
import { formOfSpeaker, inputOfSpeaker, placeOfSpeaker } from '../ring/speaker-ring';
import type { RingForm, RingInput } from '../ring/types';
import { along, type Vec3 } from '../vector';
import { type Body, roundBody, type StandingSpeaker } from './body';
import { meetsTriangles } from './meets';
import { overlap } from './overlap';
import { isInside, type Solid, solidOf } from './solid';
import type { Above } from './triangle-in-body';

export interface RingBody {
  body: Body;
  /** Only what stands before the panel is ring. */
  above: Above;
  /** Middle of its back on the panel: where the axis leaves it. */
  foot: Vec3;
  input: RingInput;
  form: RingForm;
}

/** Before its own panel's plane by as much, mm: what only touches that plane is not met. */
const BEFORE_PLANE = 0.5;

/** `null` without a ring, or where the one asked for cannot be. */
export function ringBodyOf({ speaker, placed }: StandingSpeaker): RingBody | null {
  const input = inputOfSpeaker(speaker);
  const place = placeOfSpeaker(speaker, placed);
  const answer = formOfSpeaker(speaker, placed);
  if (!input || !place || !answer?.ok) return null;
  const { axis, normal, position, standoff } = place;
  const { sections } = answer.ring;
  const radius = input.outer / 2;
  return {
    body: roundBody(position, axis, {
      flange: radius,
      cutout: radius,
      depth: sections.thickOuter,
    }),
    above: { point: along(position, normal, -standoff), normal, height: BEFORE_PLANE },
    foot: along(position, axis, -sections.middle),
    input,
    form: answer.ring,
  };
}

export function ringMeets(solid: Solid, { body, above, form }: RingBody): boolean {
  if (meetsTriangles(solid, body, above) !== null) return true;
  return isInside(solid, along(body.at, body.axis, -form.sections.middle / 2));
}

export const ringOverlap = (solid: Pick<Solid, 'tree'>, { body, above }: RingBody) =>
  overlap(solid, body, above);

const solids = new WeakMap<StandingSpeaker['placed'], { of: SpeakerInput; solid: Solid | null }>();

/**
 * The ring another speaker stands on, as a closed mesh in the car for a body to meet; `null` where
 * there is none near that body.
 */
export function ringSolidOf(standing: StandingSpeaker, near: Body): Solid | null {
  const { speaker, placed } = standing;
  if (!speaker.ring) return null;
  const ring = ringBodyOf(standing);
  if (!ring || apart(ring.body, near)) return null;
  let known = solids.get(placed);
  if (known?.of !== speaker) {
    known = { of: speaker, solid: ringSolid(standing, ring) };
    solids.set(placed, known);
  }
  return known.solid;
}

const apart = (a: Body, b: Body): boolean =>
  [0, 1, 2].some(
    (k) =>
      (a.high[k] as number) < (b.low[k] as number) || (b.high[k] as number) < (a.low[k] as number),
  );

function ringSolid({ speaker, placed }: StandingSpeaker, ring: RingBody): Solid | null {
  const place = placeOfSpeaker(speaker, placed);
  if (!place) return null;
  return solidOf(ringInCar(ring.input, place, ring.form));
}
