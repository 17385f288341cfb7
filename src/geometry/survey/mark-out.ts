/** Everything an installer needs to find one speaker's spot in the real car. */
import type { CabinModel, ReferencePoint } from '../cabin/model';
import { pointOnPatch } from '../cabin/patch';
import type { SpeakerBody, SpeakerInput } from '../input';
import { buildCaster, type Caster } from '../paths/cast';
import type { PlacedSpeaker } from '../result';
import { along, distance, type Vec3 } from '../vector';
import { type FaceReading, faceReadings } from './face-tilt';
import { roughly95, TAPE_SD, tapeFix, tapeSds } from './tape-fix';

export interface TapeReading {
  reference: ReferencePoint;
  /** From the reference point to the spot on the panel's surface, mm. */
  distance: number;
}

export interface LaserHit {
  /** What the axis meets first in the empty car; `null`: nothing. */
  id: string | null;
  name: string | null;
  point: Vec3;
  /** From the speaker, mm. */
  distance: number;
  /** The two reference points nearest to where it hits, with their distances from there. */
  near: readonly TapeReading[];
}

export interface MarkOut {
  speaker: string;
  panel: string | null;
  /** The spot on the panel's surface, or the free point; mm, car axes. */
  spot: Vec3;
  standoff: number;
  /** Three tapes that fix the spot best, then a fourth to check by where there is one. */
  tapes: readonly TapeReading[];
  /** 95 of 100 marks made by the first three lie within this of the spot, mm. */
  within95: number | null;
  /** Above the nearer sill's top, at the spot's own place along it; and above the seat rails. */
  aboveSill: number | null;
  aboveRail: number | null;
  face: readonly [FaceReading, FaceReading] | null;
  laser: LaserHit | null;
  body: SpeakerBody | null;
  /** Why something above is `null`. */
  reasons: string[];
}

/** Nearer than this a reading says little, and farther a tape sags, mm. Choices of ours. */
const SHORTEST_TAPE = 120;
const LONGEST_TAPE = 2000;

/** The steering column is adjusted from driver to driver: nothing is marked out by it. */
const ADJUSTED = 'wheel-centre';

/** A laser is followed this far, mm: farther than any cabin is long. */
const LASER_REACH = 8000;

/**
 * The marks of every speaker given. Tapes and the laser are tried in the empty car: nobody sits in
 * it while it is marked out; the seats stand where the plan has them.
 * @param placed what the engine made of the speakers, in any order
 */
export function markOut(
  cabin: CabinModel,
  speakers: readonly SpeakerInput[],
  placed: readonly PlacedSpeaker[],
): MarkOut[] {
  const empty = cabin.obstacles.filter(({ occupant }) => !occupant);
  const caster = buildCaster(cabin.panels, empty);
  const placeOf = new Map(placed.map((one) => [one.speaker, one]));
  return speakers.flatMap((speaker) => {
    const place = placeOf.get(speaker.id);
    return place ? [markOne(cabin, caster, speaker, place)] : [];
  });
}

function markOne(
  cabin: CabinModel,
  caster: Caster,
  { id, mount, body }: SpeakerInput,
  { position, axis, normal }: PlacedSpeaker,
): MarkOut {
  const panel = mount && cabin.panels.find((one) => one.id === mount.panel);
  const spot = mount && panel ? pointOnPatch(panel.patch, mount.u, mount.v) : position;
  const reasons: string[] = [];
  const facing = normal ?? axis;
  const fix = facing ? bestTapes(cabin.references, caster, spot, facing, panel?.id ?? null) : null;
  if (!fix) reasons.push('no three reference points within reach of a tape fix this spot');
  if (!axis) reasons.push('the aim has no direction, so there are no readings for it');
  const sill = heightOver(cabin, spot, 'sill-front', 'sill-end');
  const rail = heightOver(cabin, spot, 'seat-rail-front', 'seat-rail-rear');
  if (sill === null) reasons.push('there is no sill in this cabin to measure the height over');
  if (!body) reasons.push('without the speaker’s body there is no cut-out');
  return {
    speaker: id,
    panel: panel?.id ?? null,
    spot,
    standoff: mount?.standoff ?? 0,
    tapes: fix?.tapes ?? [],
    within95: fix?.within95 ?? null,
    aboveSill: sill,
    aboveRail: rail,
    face: axis && faceReadings(axis),
    laser: axis && laserFrom(cabin, caster, position, axis),
    body: body ?? null,
    reasons,
  };
}

interface Fix {
  tapes: TapeReading[];
  about95: number;
}

/** An error so much larger than the least is taken for nearer points. Choice of ours. */
const AS_GOOD = 1.2;

/**
 * Of all reference points a tape reaches in a straight line, three that fix the spot about as well
 * as any: of those the nearest.
 */
function bestTapes(
  references: readonly ReferencePoint[],
  caster: Caster,
  spot: Vec3,
  normal: Vec3,
  panel: string | null,
): { tapes: TapeReading[]; within95: number } | null {
  const start = panel === null ? null : { panel, standoff: 0, normal };
  // A point on a panel lies in it: a tape is held just before the surface.
  const from = along(spot, normal, TAPE_LIFT);
  const reached = references
    .filter(({ id }) => id !== ADJUSTED)
    .map((reference) => ({ reference, distance: distance(reference.point, spot) }))
    .filter((one) => one.distance >= SHORTEST_TAPE && one.distance <= LONGEST_TAPE)
    .filter(({ reference }) => {
      const end = shortOf(reference.point, from);
      return caster.isFree(from, end, null, start);
    })
    .sort((a, b) => a.distance - b.distance || (a.reference.id < b.reference.id ? -1 : 1));
  const fixes: Fix[] = [];
  for (let i = 0; i < reached.length; i++)
    for (let j = i + 1; j < reached.length; j++)
      for (let k = j + 1; k < reached.length; k++) {
        const tapes = [reached[i], reached[j], reached[k]] as TapeReading[];
        const sds = tapeSds(
          spot,
          normal,
          tapes.map(({ reference }) => reference.point),
        );
        if (sds) fixes.push({ tapes, about95: roughly95(sds) });
      }
  const least = Math.min(...fixes.map(({ about95 }) => about95));
  const longest = ({ tapes }: Fix) => Math.max(...tapes.map((tape) => tape.distance));
  // Short tapes before a little less error; the first of those that are alike.
  const best = fixes
    .filter(({ about95 }) => about95 <= least * AS_GOOD + 1e-9)
    .reduce<Fix | null>(
      (near, one) => (near && longest(near) <= longest(one) + 1e-9 ? near : one),
      null,
    );
  const fix =
    best &&
    tapeFix(
      spot,
      normal,
      best.tapes.map(({ reference }) => reference.point),
      TAPE_SD,
    );
  if (!best || !fix) return null;
  const used = new Set(best.tapes.map(({ reference }) => reference.id));
  const check = reached.find(({ reference }) => !used.has(reference.id));
  return { tapes: check ? [...best.tapes, check] : best.tapes, within95: fix.within95 };
}

/** mm; a tape lies on the trim, and reference points lie on panels' edges and corners. */
const TAPE_LIFT = 3;
const END_SHORT = 8;

function shortOf(point: Vec3, from: Vec3): Vec3 {
  const reach = distance(point, from);
  const part = Math.max(0, 1 - END_SHORT / reach);
  return [
    from[0] + (point[0] - from[0]) * part,
    from[1] + (point[1] - from[1]) * part,
    from[2] + (point[2] - from[2]) * part,
  ];
}

/** Height over the line through two reference points of the spot's own side, mm. */
function heightOver({ references }: CabinModel, spot: Vec3, front: string, rear: string) {
  const side = spot[1] < 0 ? 'left' : 'right';
  const find = (id: string) => references.find((one) => one.id === `${id}-${side}`)?.point;
  const [a, b] = [find(front), find(rear)];
  if (!a || !b || a[0] === b[0]) return null;
  const part = Math.min(1, Math.max(0, (spot[0] - a[0]) / (b[0] - a[0])));
  return spot[2] - (a[2] + (b[2] - a[2]) * part);
}

/** By halving: crossings are asked of ever shorter pieces of the axis until the first is found. */
function laserFrom(cabin: CabinModel, caster: Caster, from: Vec3, axis: Vec3): LaserHit {
  const start = along(from, axis, TAPE_LIFT);
  const far = along(from, axis, LASER_REACH);
  const [first] = caster.crossings(start, far, null, null);
  if (first === undefined)
    return { id: null, name: null, point: far, distance: LASER_REACH, near: [] };
  let [low, high] = [TAPE_LIFT, LASER_REACH];
  while (high - low > 0.01) {
    const mid = (low + high) / 2;
    if (caster.isFree(start, along(from, axis, mid))) low = mid;
    else high = mid;
  }
  const name =
    cabin.panels.find(({ id }) => id === first)?.name ??
    cabin.obstacles.find(({ id }) => id === first)?.name ??
    first;
  const point = along(from, axis, high);
  const near = cabin.references
    .filter(({ id }) => id !== ADJUSTED)
    .map((reference) => ({ reference, distance: distance(reference.point, point) }))
    .sort((a, b) => a.distance - b.distance || (a.reference.id < b.reference.id ? -1 : 1))
    .slice(0, 2);
  return { id: first, name, point, distance: high, near };
}
