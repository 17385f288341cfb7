/**
 * The search for the shortest way: the shortest string known is cast, and what blocks it is gone
 * round too, until a string is free.
 */
import { along, distance, length, type Vec3 } from '../../vector';
import { stringsRound, type Taut } from './around';
import { type Body, crosses } from './body';
import { dropIdle, metTogether } from './drop-idle';
import { type Frame, frameOf } from './frame';
import { placeNone, shortestIn } from './half-planes';
import { type Bend, outwardAt, pullAt, stringLength } from './string';

/** How many strings are cast before a way is given up. */
const CASTS = 32;
/** Detours tried for a blocked stretch of a string. */
const DETOURS = 2;
/** A string is cast this far off the edges it lies on, mm: touching is not crossing. */
const LIFTS = [0.01, 0.3] as const;

/** One question: what blocks a stretch of string, and what of it there is to go round. */
export interface Search {
  /** Stretches that begin or end at the speaker are cast from there. */
  blockers(p: Vec3, q: Vec3): readonly string[];
  /** Whether there are none: quicker. */
  isFree(p: Vec3, q: Vec3): boolean;
  bodiesOf(id: string): readonly Body[];
}

/** The bodies of these ids that a segment really passes through. */
function crossed(ids: readonly string[], p: Vec3, q: Vec3, { bodiesOf }: Search): Body[] {
  const found: Body[] = [];
  for (const id of ids) {
    const bodies = bodiesOf(id);
    // The only one it has, whatever its faces say: exact shapes and faces may differ by a hair.
    if (bodies.length === 1) found.push(bodies[0] as Body);
    else for (const body of bodies) if (crosses(body, p, q)) found.push(body);
  }
  return found;
}

/**
 * Shortest first: the shortest string known is cast. Where something blocks it, longer ones take
 * its place: round all that is known together, and this one led round what blocks it on the spot,
 * on either side. A string round less is never longer, so the first free one is the shortest.
 */
export function leadRound(a: Vec3, b: Vec3, ids: readonly string[], search: Search): Taut | null {
  placeNone();
  const known = new Set(crossed(ids, a, b, search));
  const frame = frameOf(a, b);
  if (!frame) return null;
  const strings: Strings = { waiting: [], tried: [] };
  // Whatever way there is goes round the body that is hardest to pass, and is no shorter than that.
  const hardest = hardestOf(frame, a, b, [...known]);
  if (hardest) put(strings, stringsRound(frame, a, b, [hardest.body], { first: hardest.first }));

  let joined = known.size === 1;
  for (let cast = 0; cast < CASTS; ) {
    const taut = strings.waiting.pop();
    if (!taut) return null;
    if (taut.follow) {
      put(strings, [taut.follow()]);
      continue;
    }
    cast += 1;
    const stretch = firstBlocked(a, taut.bends, b, search);
    if (!stretch) return taut;
    put(strings, mended(a, taut.bends, b, stretch));
    const size = known.size;
    for (const body of stretch.bodies) known.add(body);
    if (known.size > size || !joined) put(strings, stringsRound(frame, a, b, [...known]));
    joined = true;
  }
  return null;
}

interface Strings {
  /** The shortest last. */
  waiting: Taut[];
  tried: Taut[];
}

/** Puts strings in line, but for those that were before. */
function put({ waiting, tried }: Strings, found: readonly Taut[]): void {
  for (const taut of found) {
    if (!taut.follow) {
      if (tried.some((other) => isSame(taut, other))) continue;
      tried.push(taut);
    }
    let at = waiting.length;
    while (at > 0 && (waiting[at - 1] as Taut).length < taut.length) at -= 1;
    waiting.splice(at, 0, taut);
  }
}

/** The body whose shortest string is longest, with that string where it is known; of two alike the first. */
function hardestOf(
  frame: Frame,
  a: Vec3,
  b: Vec3,
  bodies: readonly Body[],
): { body: Body; first: Taut | null } | null {
  if (bodies.length < 2) return bodies[0] ? { body: bodies[0], first: null } : null;
  const atMost = bodies.map((body) => shortestIn(frame, body));
  const order = bodies.map((_, i) => i);
  order.sort((i, j) => (atMost[j] as number) - (atMost[i] as number));
  let most = 0;
  let hardest = -1;
  let first: Taut | null = null;
  for (const i of order) {
    // Pulled taut a string only gets shorter.
    if ((atMost[i] as number) < most - ROUNDING) break;
    const taut = stringsRound(frame, a, b, [bodies[i] as Body], { followed: 1 })[0] ?? null;
    const least = taut?.length ?? 0;
    if (least < most || (least === most && (hardest < 0 || i > hardest))) continue;
    most = least;
    hardest = i;
    first = taut;
  }
  const body = bodies[hardest];
  return body ? { body, first } : null;
}

/** What rounding may add to a length of some metres, mm. */
const ROUNDING = 1e-6;

/** Below this two strings are one, mm. */
const SAME_STRING = 1e-3;

function isSame(one: Taut, other: Taut): boolean {
  return (
    Math.abs(one.length - other.length) < SAME_STRING &&
    one.bends.length === other.bends.length &&
    one.bends.every(({ point }, i) => {
      const there = other.bends[i]?.point;
      return there !== undefined && distance(point, there) < SAME_STRING;
    })
  );
}

interface Stretch {
  /** Which stretch of the string: 0 before the first bend. */
  at: number;
  from: Vec3;
  to: Vec3;
  bodies: Body[];
}

/**
 * The first stretch of a string that something blocks, cast a hair off the edges it lies on; where
 * that meets something, once more a little farther off.
 */
function firstBlocked(a: Vec3, bends: readonly Bend[], b: Vec3, search: Search): Stretch | null {
  const n = bends.length;
  let from = a;
  for (let at = 0; at <= n; at++) {
    const to = at === n ? b : liftedAt(a, bends, b, at, LIFTS[0]);
    const isFree = search.isFree(from, to);
    from = to;
    if (isFree) continue;
    const off = [a, ...bends.map((_, i) => liftedAt(a, bends, b, i, LIFTS[1])), b];
    const blocked = stretchAt(off, at, search);
    if (blocked) return blocked;
    for (let k = 0; k <= n; k++) {
      const other = k === at ? null : stretchAt(off, k, search);
      if (other) return other;
    }
    return null;
  }
  return null;
}

function stretchAt(points: readonly Vec3[], at: number, search: Search): Stretch | null {
  const [from, to] = [points[at] as Vec3, points[at + 1] as Vec3];
  const ids = search.blockers(from, to);
  return ids.length > 0 ? { at, from, to, bodies: crossed(ids, from, to, search) } : null;
}

/** Where a string bends, a little off the edge: against its pull, or off the body where it has none. */
function liftedAt(a: Vec3, bends: readonly Bend[], b: Vec3, i: number, lift: number): Vec3 {
  const bend = bends[i] as Bend;
  const { point } = bend;
  let off = pullAt(bends[i - 1]?.point ?? a, point, bends[i + 1]?.point ?? b);
  let size = -length(off);
  if (size > -1e-9) {
    off = outwardAt(bend);
    size = length(off);
  }
  return size === 0 ? point : along(point, off, lift / size);
}

/** A string with its blocked stretch led round what blocks it, pulled taut again. */
function mended(a: Vec3, bends: readonly Bend[], b: Vec3, stretch: Stretch): Taut[] {
  const { at, from, to, bodies } = stretch;
  const frame = frameOf(from, to);
  if (!frame) return [];
  return stringsRound(frame, from, to, bodies, { followed: DETOURS }).flatMap((found) => {
    const detour = found.follow?.() ?? found;
    const whole = [...bends.slice(0, at), ...detour.bends, ...bends.slice(at)];
    // Held by a corner's edges and let go of it: which of the two comes to the shorter way shows
    // only later. Trying both shortened 1 % of ways in crowded cars and found more than it lost.
    const held = tautOver(a, whole, b, false);
    return metTogether ? [held, tautOver(a, whole, b, true)] : [held];
  });
}

function tautOver(a: Vec3, whole: readonly Bend[], b: Vec3, letGo: boolean): Taut {
  const bends = dropIdle(a, whole, b, letGo);
  return { bends, length: stringLength(a, bends, b) };
}
