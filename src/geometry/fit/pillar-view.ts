/** What each front pillar hides from both eyes of the person at the wheel, without and with pods. */
import type { CabinModel } from '../cabin/model';
import type { OptionInput, Side } from '../input';
import type { PlacedSpeaker } from '../result';
import type { Vec3 } from '../vector';
import { bodyOf } from './body';
import type { Construction, Plan } from './obstruction-angle';
import { type PillarSight, pillarOf, pillarSight, WHERE_THE_HEAD_TURNS } from './pillar-sight';

/** At most so much of the view may one pillar hide, degrees: UN R125, from memory. */
export const PILLAR_LIMIT_DEG = 6;

export const PILLAR_VIEW_CAUTION =
  'Worked out on the model’s inner pillar panel after the construction of UN Regulation No. 125; ' +
  'the car’s own pillar, seals and opaque borders hide more. This is not type approval: the ' +
  'vehicle rules where the car is driven decide, and the view has to be tried from the seat.';

export interface PillarView {
  side: Side;
  panel: string;
  /** True for the pillar on the side of the wheel. */
  driver: boolean;
  /** Binocular obstruction without pods, with them, and what they add; degrees. */
  beforeDeg: number | null;
  afterDeg: number | null;
  addedDeg: number | null;
  /** More than {@link PILLAR_LIMIT_DEG} with the pods. */
  overLimit: boolean;
  /** Speakers on this pillar; and those of them whose body is not known, which count as nothing. */
  speakers: string[];
  unknown: string[];
  /** Eyes, and where the two lines of sight touch, with the pods; mm, at section height. */
  lines: { eyes: Record<Side, Vec3>; outer: Vec3; inner: Vec3 } | null;
  /** Why the angles are null. */
  reason?: string;
}

export interface PillarViewSubject {
  cabin: CabinModel;
  option: OptionInput;
  placed: readonly PlacedSpeaker[];
}

/** Both front pillars, left one first; see `pillarSight` for what is taken where. */
export function pillarViews(subject: PillarViewSubject): PillarView[] {
  return (['left', 'right'] as const).map((side) => viewPast(side, subject));
}

function viewPast(side: Side, { cabin, option, placed }: PillarViewSubject): PillarView {
  const driver = side === cabin.wheelSide;
  const on = option.speakers.filter(({ mount }) => mount?.panel === pillarOf(side));
  const view: PillarView = {
    side,
    panel: pillarOf(side),
    driver,
    beforeDeg: null,
    afterDeg: null,
    addedDeg: null,
    overLimit: false,
    speakers: on.map(({ id }) => id),
    unknown: on.filter(({ body }) => !body).map(({ id }) => id),
    lines: null,
  };
  const made = pillarSight(cabin, side);
  if (!made.ok) return { ...view, reason: made.reason };
  const { sight } = made;
  const before = sight.bare;
  const pods = on.flatMap((speaker): Plan[] => {
    const place = placed.find((one) => one.speaker === speaker.id);
    if (!place || !speaker.body || !speaker.mount) return [];
    return sight.podOf(bodyOf({ speaker, placed: place }), speaker.mount);
  });
  const after = sight.past(pods);
  if (!after) return { ...view, reason: WHERE_THE_HEAD_TURNS };
  return {
    ...view,
    beforeDeg: before.angleDeg,
    afterDeg: after.angleDeg,
    addedDeg: after.angleDeg - before.angleDeg,
    overLimit: after.angleDeg > PILLAR_LIMIT_DEG,
    lines: linesOf(after, sight, side),
  };
}

function linesOf(
  { eyes, outer, inner }: Construction,
  { inCar, heights: { eyes: eyeHeight, high, low } }: PillarSight,
  side: Side,
): PillarView['lines'] {
  const [one, other] = [inCar(eyes.left, eyeHeight), inCar(eyes.right, eyeHeight)];
  return {
    eyes: side === 'left' ? { left: one, right: other } : { left: other, right: one },
    outer: inCar(outer, low),
    inner: inCar(inner, high),
  };
}
