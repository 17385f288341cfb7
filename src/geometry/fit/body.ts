import type { SpeakerInput } from '../input';
import type { PlacedSpeaker } from '../result';
import { FLANGE_THICKNESS } from '../ring/usual-ring';
import { cross, direction, dot, type Vec3 } from '../vector';

/** A speaker at its place: what collides, and where it is mounted. */
export interface StandingSpeaker {
  speaker: SpeakerInput;
  placed: PlacedSpeaker;
}

/**
 * The room a speaker takes: a flange disc in front and behind it a cylinder of the cut-out's
 * diameter, along the speaker's axis. mm, car axes.
 */
export interface Body {
  /** The speaker's reference point: middle of the face the flange is mounted by; sunk, of its front. */
  at: Vec3;
  /** Unit vector out of the front. */
  axis: Vec3;
  /** Two unit vectors square to the axis and to each other. */
  across: readonly [Vec3, Vec3];
  /** Radii; 0 with `depth` 0 where the body is not known: then it is a point. */
  flange: number;
  cutout: number;
  depth: number;
  /** Sealed airspace wanted behind it besides its own room, litres. */
  airspaceLitres?: number;
  /** Bounds. */
  low: Vec3;
  high: Vec3;
}

/** A round body from its radii and depth. */
export function roundBody(
  at: Vec3,
  axis: Vec3,
  { flange, cutout, depth }: { flange: number; cutout: number; depth: number },
): Body {
  const a = direction(cross(axis, Math.abs(axis[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0])) as Vec3;
  const low: [number, number, number] = [0, 0, 0];
  const high: [number, number, number] = [0, 0, 0];
  for (let k = 0; k < 3; k++) {
    const along = axis[k] as number;
    const middle = at[k] as number;
    const flat = Math.sqrt(Math.max(0, 1 - along * along));
    const back = middle - along * depth;
    low[k] = Math.min(middle - flange * flat, back - cutout * flat);
    low[k] = Math.min(low[k] as number, middle - cutout * flat);
    high[k] = Math.max(middle + flange * flat, back + cutout * flat);
    high[k] = Math.max(high[k] as number, middle + cutout * flat);
  }
  return { at, axis, across: [a, cross(axis, a)], flange, cutout, depth, low, high };
}

const UP: Vec3 = [0, 0, 1];

/**
 * How far a speaker's back lies behind its reference point, mm; 0 without a body. Its depth counts
 * from the face its flange is mounted by: the reference point of a flange that lies on its panel or
 * on its ring. Let into a ring, the flange has its front there, and that face is its thickness
 * behind.
 */
export function depthOf({ body, mount, ring }: SpeakerInput): number {
  if (!body) return 0;
  const isSunk = mount !== undefined && ring?.seat === 'sunk';
  return body.depth + (isSunk ? (ring.flangeThickness ?? FLANGE_THICKNESS) : 0);
}

/**
 * The body of a speaker where it stands: along its axis, or along the panel's normal where the axis
 * has no direction. A point where size or direction are not known.
 */
export function bodyOf({ speaker, placed }: StandingSpeaker): Body {
  const axis = placed.axis ?? placed.normal;
  const { body } = speaker;
  if (!body || !axis) return roundBody(placed.position, UP, { flange: 0, cutout: 0, depth: 0 });
  const round = roundBody(placed.position, axis, {
    flange: body.flange / 2,
    cutout: body.cutout / 2,
    depth: depthOf(speaker),
  });
  if (body.airspaceLitres !== undefined) round.airspaceLitres = body.airspaceLitres;
  return round;
}

/**
 * Whether two bodies cannot meet: their axes, front to back, pass farther apart than both reach to
 * the side, by flange or cut-out. Where it is false they may. Far cheaper than making a solid of one
 * of them.
 */
export function areApart(one: Body, other: Body): boolean {
  const reach = widthOf(one) + widthOf(other) + 2 * ROUND_UP;
  return squareBetween(one, other) > reach * reach;
}

/** The cut-out may be entered wider than the flange. */
const widthOf = ({ flange, cutout }: Body): number => Math.max(flange, cutout);

/** A flange has this much of an inside where it is met as a solid, mm, and rounding adds less. */
const ROUND_UP = 0.1;

/** Square of the least distance between two bodies' axes, front to back (Ericson, Real-Time Collision Detection, 2005, section 5.1.9). */
function squareBetween(one: Body, other: Body): number {
  const [a, b] = [one.depth, other.depth];
  const [p, q] = [one.axis, other.axis];
  const r: Vec3 = [one.at[0] - other.at[0], one.at[1] - other.at[1], one.at[2] - other.at[2]];
  const c = dot(p, q);
  const d = dot(p, r);
  const e = dot(q, r);
  const clampTo = (x: number, most: number) => Math.min(most, Math.max(0, x));
  // Backwards along each axis, so that the points are at − s·p and at − t·q.
  const square = 1 - c * c;
  let s = square > 1e-12 ? clampTo((d - c * e) / square, a) : 0;
  let t = c * s - e;
  if (t < 0 || t > b) {
    t = clampTo(t, b);
    s = clampTo(d + c * t, a);
  }
  let sum = 0;
  for (let k = 0; k < 3; k++) {
    const gap = (r[k] as number) - s * (p[k] as number) + t * (q[k] as number);
    sum += gap * gap;
  }
  return sum;
}
