/**
 * The shortest way round whatever blocks a straight line. Only what blocks it is considered first;
 * the string found is then cast, and what blocks that is added, until a string is free.
 */
import type { Obstacle, Panel } from '../../cabin/model';
import { SAME_POINT } from '../../tolerance';
import { along, distance, length, type Vec3 } from '../../vector';
import type { Caster, SpotStart } from '../cast';
import { stringsRound, type Taut } from './around';
import { sheetBody, solidBodies } from './bodies';
import { type Body, crosses } from './body';
import { isInside } from './inside';
import type { NearMiss } from './near-miss';
import { buildNearMisses } from './near-misses';
import { frameOf } from './section';
import { type Bend, dropIdle, outwardAt, pullAt, stringLength } from './string';

/** A way round, from the speaker to the listener. */
export interface WayRound {
  /** Both ends and every point between at which it bends, mm. */
  path: Vec3[];
  length: number;
  /** Ids of the panels and obstacles it bends round, nearest the speaker first. */
  round: string[];
}

export interface WayFinder {
  /**
   * The shortest way from a speaker to a listener's point round everything in the way; the straight
   * line where it is free.
   * @param listener whose own head, torso and arms do not count
   * @returns null when no way leads there: an end lies within a solid, or everything tried is closed
   */
  wayRound(from: Vec3, to: Vec3, listener: string | null, spot: SpotStart | null): WayRound | null;
  /**
   * What stands close beside a line that nothing crosses, the one with the smallest detour first,
   * each once, at its nearest edge. Close is within {@link GRAZING_RADII} of the first Fresnel
   * radius at that place. Solids count with every edge that stands out, panels with free edges,
   * ridges and tight rolls towards the cabin; the speaker's own panel never does, nor a ridge it
   * is part of.
   * @param listener whose own head, torso and arms do not count
   * @param wavelength mm, at the bottom of the speaker's band
   */
  nearMisses(
    from: Vec3,
    to: Vec3,
    listener: string | null,
    spot: SpotStart | null,
    wavelength: number,
  ): NearMiss[];
}

/** How many answers are kept: a drag asks again about every line that did not move. */
const KEPT = 512;
/** How many strings are cast before a way is given up. */
const CASTS = 24;
/** Detours tried for a blocked stretch of a string. */
const DETOURS = 2;
/** A string is cast this far off the edges it lies on, mm: touching is not crossing. */
const LIFTS = [0.01, 0.3] as const;

/** One question: what blocks a stretch of string, and what of it there is to go round. */
interface Search {
  /** Stretches that begin or end at the speaker are cast from there. */
  blockers(p: Vec3, q: Vec3): readonly string[];
  bodiesOf(id: string): readonly Body[];
}

export function buildWayFinder(
  panels: readonly Panel[],
  obstacles: readonly Obstacle[],
  caster: Caster,
): WayFinder {
  const panelById = new Map(panels.map((panel) => [panel.id, panel]));
  const obstacleById = new Map(obstacles.map((obstacle) => [obstacle.id, obstacle]));

  const bodiesOf = (id: string): readonly Body[] => {
    const obstacle = obstacleById.get(id);
    const panel = panelById.get(id);
    return [
      ...(obstacle ? solidBodies(id, obstacle.shape) : []),
      ...(panel ? [sheetBody(panel)] : []),
    ];
  };

  const kept = new Map<string, WayRound | null>();
  return {
    wayRound(from, to, listener, spot) {
      const key = `${from} ${to} ${listener} ${spot?.panel} ${spot?.standoff} ${spot?.normal}`;
      const known = kept.get(key);
      if (known !== undefined) return known;
      const way = find(from, to, listener, spot);
      if (kept.size >= KEPT) kept.clear();
      kept.set(key, way);
      return way;
    },
    nearMisses: buildNearMisses(panels, obstacles),
  };

  function find(
    from: Vec3,
    to: Vec3,
    listener: string | null,
    spot: SpotStart | null,
  ): WayRound | null {
    const first = caster.crossings(from, to, listener, spot);
    const straight = distance(from, to);
    if (first.length === 0) return { path: [from, to], length: straight, round: [] };
    for (const id of first) {
      const obstacle = obstacleById.get(id);
      if (!obstacle) continue;
      const bodies = solidBodies(id, obstacle.shape);
      if (isInside(obstacle.shape, bodies, from) || isInside(obstacle.shape, bodies, to))
        return null;
    }
    // The same question from either end is the same search.
    const turned = comesAfter(from, to);
    const [a, b] = turned ? [to, from] : [from, to];
    const search: Search = {
      bodiesOf,
      blockers: (p, q) => {
        if (distance(q, from) < SAME_POINT) return caster.crossings(q, p, listener, spot);
        const atSpeaker = distance(p, from) < SAME_POINT;
        return caster.crossings(p, q, listener, atSpeaker ? spot : null);
      },
    };
    const found = leadRound(a, b, first, search);
    if (!found) return null;
    const bends = turned ? found.bends.slice().reverse() : found.bends;
    return {
      path: [from, ...bends.map(({ point }) => point), to],
      // Rounding must not make a way shorter than the straight line.
      length: Math.max(straight, found.length),
      round: [...new Set(bends.map(({ body }) => body.id))],
    };
  }
}

function comesAfter(a: Vec3, b: Vec3): boolean {
  for (const k of [0, 1, 2] as const) if (a[k] !== b[k]) return a[k] > b[k];
  return false;
}

/** The bodies of these ids that a segment really passes through. */
function crossed(ids: readonly string[], p: Vec3, q: Vec3, { bodiesOf }: Search): Body[] {
  const found: Body[] = [];
  for (const id of ids) {
    const bodies = bodiesOf(id);
    const met = bodies.filter((body) => crosses(body, p, q));
    // Exact shapes and faces may differ by a hair: then all of it.
    found.push(...(met.length > 0 ? met : bodies.length === 1 ? bodies : []));
  }
  return found;
}

/**
 * Shortest first: the shortest string known is cast. Where something blocks it, longer ones take
 * its place: round all that is known together, and this one led round what blocks it on the spot,
 * on either side. A string round less is never longer, so the first free one is the shortest.
 */
function leadRound(a: Vec3, b: Vec3, ids: readonly string[], search: Search): Taut | null {
  const known = new Set(crossed(ids, a, b, search));
  const frame = frameOf(a, b);
  if (!frame) return null;
  const waiting: Taut[] = [];
  const tried: Taut[] = [];
  const put = (strings: readonly Taut[]) => {
    for (const taut of strings) {
      if (taut.follow) {
        waiting.push(taut);
        continue;
      }
      if (tried.some((other) => isSame(taut, other))) continue;
      tried.push(taut);
      waiting.push(taut);
    }
    waiting.sort((x, y) => y.length - x.length);
  };
  // Whatever way there is goes round the body that is hardest to pass, and is no shorter than that.
  let hardest: Body | null = null;
  let most = 0;
  if (known.size > 1)
    for (const body of known) {
      const least = stringsRound(frame, a, b, [body], 1)[0]?.length ?? 0;
      if (least <= most) continue;
      most = least;
      hardest = body;
    }
  else for (const body of known) hardest = body;
  if (hardest) put(stringsRound(frame, a, b, [hardest]));

  let joined = known.size === 1;
  for (let cast = 0; cast < CASTS; ) {
    const taut = waiting.pop();
    if (!taut) return null;
    if (taut.follow) {
      put([taut.follow()]);
      continue;
    }
    cast += 1;
    const stretch = firstBlocked(a, taut.bends, b, search);
    if (!stretch) return taut;
    put(mended(a, taut.bends, b, stretch));
    const size = known.size;
    for (const body of stretch.bodies) known.add(body);
    if (known.size > size || !joined) put(stringsRound(frame, a, b, [...known]));
    joined = true;
  }
  return null;
}

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
  const close = lifted(a, bends, b, LIFTS[0]);
  for (let at = 0; at + 1 < close.length; at++) {
    if (search.blockers(close[at] as Vec3, close[at + 1] as Vec3).length === 0) continue;
    const off = lifted(a, bends, b, LIFTS[1]);
    const blocked = stretchAt(off, at, search);
    if (blocked) return blocked;
    for (let k = 0; k + 1 < off.length; k++) {
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

function lifted(a: Vec3, bends: readonly Bend[], b: Vec3, lift: number): Vec3[] {
  const points = [a, ...bends.map(({ point }) => point), b];
  return points.map((point, i) => {
    const bend = bends[i - 1];
    if (!bend || i === points.length - 1) return point;
    let off = pullAt(points[i - 1] as Vec3, point, points[i + 1] as Vec3);
    let size = -length(off);
    if (size > -1e-9) {
      off = outwardAt(bend);
      size = length(off);
    }
    return size === 0 ? point : along(point, off, lift / size);
  });
}

/** A string with its blocked stretch led round what blocks it, pulled taut again. */
function mended(a: Vec3, bends: readonly Bend[], b: Vec3, stretch: Stretch): Taut[] {
  const { at, from, to, bodies } = stretch;
  const frame = frameOf(from, to);
  if (!frame) return [];
  return stringsRound(frame, from, to, bodies, DETOURS).map((found) => {
    const detour = found.follow?.() ?? found;
    const whole = [...bends.slice(0, at), ...detour.bends, ...bends.slice(at)];
    const taut = dropIdle(a, whole, b);
    return { bends: taut, length: stringLength(a, taut, b) };
  });
}
