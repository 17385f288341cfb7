/**
 * The shortest way round whatever blocks a straight line. Only what blocks it is considered first;
 * the string found is then cast, and what blocks that is added, until a string is free.
 */
import type { Obstacle, Panel } from '../../cabin/model';
import { SAME_POINT } from '../../tolerance';
import { distance, type Vec3 } from '../../vector';
import type { Caster, SpotStart } from '../cast';
import { sheetBody, solidBodies } from './bodies';
import type { Body } from './body';
import { isInside } from './inside';
import { keepAnswers } from './keep-answers';
import { leadRound, type Search } from './lead-round';
import type { NearMiss } from './near-miss';
import { buildNearMisses } from './near-misses';
import { buildSkin } from './skin';

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
   * @param crossed what {@link Caster.crossings} names on the straight line, where that is known
   * @returns null when no way leads there: an end lies within a solid, the cabin's closed skin parts
   * speaker from listener, or everything tried is closed
   */
  wayRound(
    from: Vec3,
    to: Vec3,
    listener: string | null,
    spot: SpotStart | null,
    crossed?: readonly string[],
  ): WayRound | null;
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
  /**
   * The first of {@link nearMisses} alone, a few times as fast; null where nothing is close. Of two
   * equally near the one the cabin lists first.
   */
  nearestMiss(
    from: Vec3,
    to: Vec3,
    listener: string | null,
    spot: SpotStart | null,
    wavelength: number,
  ): NearMiss | null;
  /**
   * The smallest detour among {@link nearMisses}, or null where none of them is `below` this, mm:
   * all that a map needs, several times as fast.
   */
  leastDetour(
    from: Vec3,
    to: Vec3,
    listener: string | null,
    spot: SpotStart | null,
    wavelength: number,
    below: number,
  ): number | null;
  /**
   * Where {@link wayRound} gave null: why, as a part of a sentence, such as "the speaker stands
   * inside the centre console".
   */
  whyNone(from: Vec3, to: Vec3, listener: string | null, spot: SpotStart | null): string;
}

export function buildWayFinder(
  panels: readonly Panel[],
  obstacles: readonly Obstacle[],
  caster: Caster,
): WayFinder {
  const panelById = new Map(panels.map((panel) => [panel.id, panel]));
  const obstacleById = new Map(obstacles.map((obstacle) => [obstacle.id, obstacle]));

  const bodies = new Map<string, readonly Body[]>();
  function bodiesOf(id: string): readonly Body[] {
    let found = bodies.get(id);
    if (!found) {
      const obstacle = obstacleById.get(id);
      const panel = panelById.get(id);
      found = [
        ...(obstacle ? solidBodies(id, obstacle.shape) : []),
        ...(panel ? [sheetBody(panel)] : []),
      ];
      bodies.set(id, found);
    }
    return found;
  }

  /** The line being asked about: one at a time, so that the search is made once. */
  let speakerAt: Vec3 = [0, 0, 0];
  let heardBy: string | null = null;
  let standsOn: SpotStart | null = null;
  const search: Search = {
    bodiesOf,
    blockers(p, q) {
      if (distance(q, speakerAt) < SAME_POINT) return caster.crossings(q, p, heardBy, standsOn);
      const atSpeaker = distance(p, speakerAt) < SAME_POINT;
      return caster.crossings(p, q, heardBy, atSpeaker ? standsOn : null);
    },
    isFree(p, q) {
      if (distance(q, speakerAt) < SAME_POINT) return caster.isFree(q, p, heardBy, standsOn);
      const atSpeaker = distance(p, speakerAt) < SAME_POINT;
      return caster.isFree(p, q, heardBy, atSpeaker ? standsOn : null);
    },
  };

  /** Of the line being asked about, where the caller knows it. */
  let known: readonly string[] | undefined;
  const way = keepAnswers((from, to, listener, spot) =>
    find(from, to, listener, spot, known ?? caster.crossings(from, to, listener, spot)),
  );
  const near = buildNearMisses(panels, obstacles);
  const skin = buildSkin(panels);
  return {
    wayRound(from, to, listener, spot, crossed) {
      known = crossed;
      return way(from, to, listener, spot, 0);
    },
    nearMisses: keepAnswers(near.all),
    nearestMiss: keepAnswers(near.nearest),
    leastDetour: near.least,
    whyNone(from, to, listener, spot) {
      const ids = caster.crossings(from, to, listener, spot);
      const beyond = skin.between(from, to, spot);
      if (beyond) return `the speaker stands outside the cabin, beyond ${said(beyond)}`;
      const names: string[] = [];
      for (const id of ids) {
        const obstacle = obstacleById.get(id);
        if (obstacle && holds(obstacle, from)) return `the speaker stands inside ${said(obstacle)}`;
        if (obstacle && holds(obstacle, to))
          return `the listener's point lies inside ${said(obstacle)}`;
        const named = obstacle ?? panelById.get(id);
        if (named) names.push(said(named));
      }
      return names.length > 0
        ? `no way past ${inWords(names)} was found: everything tried is closed`
        : 'no way was found: everything tried is closed';
    },
  };

  function find(
    from: Vec3,
    to: Vec3,
    listener: string | null,
    spot: SpotStart | null,
    first: readonly string[],
  ): WayRound | null {
    const straight = distance(from, to);
    if (first.length === 0) return { path: [from, to], length: straight, round: [] };
    for (const id of first) {
      const obstacle = obstacleById.get(id);
      if (obstacle && (holds(obstacle, from) || holds(obstacle, to))) return null;
    }
    if (skin.between(from, to, spot)) return null;
    // The same question from either end is the same search.
    const turned = comesAfter(from, to);
    const [a, b] = turned ? [to, from] : [from, to];
    speakerAt = from;
    heardBy = listener;
    standsOn = spot;
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

const holds = ({ id, shape }: Obstacle, p: Vec3): boolean =>
  isInside(shape, solidBodies(id, shape), p);

/** What the plan gave has the name it was given; the cabin's own are words. */
const said = ({ name, given }: { name: string; given: boolean }): string =>
  given ? `"${name}"` : `the ${name}`;

const inWords = (names: readonly string[]): string =>
  names.length < 2
    ? names.join()
    : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;

function comesAfter(a: Vec3, b: Vec3): boolean {
  for (const k of [0, 1, 2] as const) if (a[k] !== b[k]) return a[k] > b[k];
  return false;
}
