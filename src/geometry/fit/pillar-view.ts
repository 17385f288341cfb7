/** What each front pillar hides from both eyes of the person at the wheel, without and with pods. */
import type { CabinModel } from '../cabin/model';
import type { Mount, OptionInput, Side } from '../input';
import type { PlacedSpeaker } from '../result';
import type { Vec3 } from '../vector';
import { bodyOf } from './body';
import type { Construction, Plan } from './obstruction-angle';
import {
  type PillarSight,
  type PillarSightAnswer,
  pillarOf,
  pillarSight,
  WHERE_THE_HEAD_TURNS,
} from './pillar-sight';
import { ringBodyOf } from './ring-body';

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
  /** The lines of sight with the pods, and without them. */
  lines: SightLines | null;
  linesBefore: SightLines | null;
  /** What the lines are drawn about; null where they are. */
  sections: PillarSections | null;
  /** Why the angles are null. */
  reason?: string;
}

/** Eyes, and where the two lines of sight touch; mm, the latter at the heights of their sections. */
export interface SightLines {
  eyes: Record<Side, Vec3>;
  outer: Vec3;
  inner: Vec3;
}

export interface PillarSections {
  /** P: what the head turns about. */
  head: Vec3;
  /** Where the two heights cut the pillar, as points; the outer line touches the lower one. */
  outer: readonly Vec3[];
  inner: readonly Vec3[];
  /** Corners of what each pod has between the two heights, seen from above, at the eyes' height. */
  pods: readonly { speaker: string; points: readonly Vec3[] }[];
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
    linesBefore: null,
    sections: null,
  };
  const answer = sightFor(cabin, side);
  if (!answer.ok) return { ...view, reason: answer.reason };
  const { sight } = answer;
  const before = sight.bare;
  const pods = on.map((speaker): { speaker: string; points: Plan[] } => {
    const place = placed.find((one) => one.speaker === speaker.id);
    const counted = place && speaker.body && speaker.mount;
    if (!counted) return { speaker: speaker.id, points: [] };
    const ring = speaker.ring ? ringBodyOf({ speaker, placed: place }) : null;
    const bodies = [bodyOf({ speaker, placed: place }), ...(ring ? [ring.body] : [])];
    const points = bodies.flatMap((body) => sight.podOf(body, speaker.mount as Mount));
    return { speaker: speaker.id, points };
  });
  const after = sight.past(pods.flatMap(({ points }) => points));
  if (!after) return { ...view, reason: WHERE_THE_HEAD_TURNS };
  return {
    ...view,
    beforeDeg: before.angleDeg,
    afterDeg: after.angleDeg,
    addedDeg: after.angleDeg - before.angleDeg,
    overLimit: after.angleDeg > PILLAR_LIMIT_DEG,
    lines: linesOf(after, sight, side),
    linesBefore: linesOf(before, sight, side),
    sections: sectionsOf(sight, pods),
  };
}

const made = new WeakMap<CabinModel, Map<Side, PillarSightAnswer>>();

/** Made once for a cabin: in a speaker's drag only the pods move. */
function sightFor(cabin: CabinModel, side: Side): PillarSightAnswer {
  let sights = made.get(cabin);
  if (!sights) {
    sights = new Map();
    made.set(cabin, sights);
  }
  let sight = sights.get(side);
  if (!sight) {
    sight = pillarSight(cabin, side);
    sights.set(side, sight);
  }
  return sight;
}

function sectionsOf(
  { head, inCar, heights, sections }: PillarSight,
  pods: readonly { speaker: string; points: readonly Plan[] }[],
): PillarSections {
  const at = (points: readonly Plan[], height: number) => points.map((p) => inCar(p, height));
  return {
    head: inCar(head, heights.eyes),
    outer: at(sections.outer, heights.low),
    inner: at(sections.inner, heights.high),
    pods: pods
      .filter(({ points }) => points.length > 0)
      .map(({ speaker, points }) => ({ speaker, points: at(points, heights.eyes) })),
  };
}

function linesOf(
  { eyes, outer, inner }: Construction,
  { inCar, heights: { eyes: eyeHeight, high, low } }: PillarSight,
  side: Side,
): SightLines {
  const [one, other] = [inCar(eyes.left, eyeHeight), inCar(eyes.right, eyeHeight)];
  return {
    eyes: side === 'left' ? { left: one, right: other } : { left: other, right: one },
    outer: inCar(outer, low),
    inner: inCar(inner, high),
  };
}
