import type { Material, Panel } from '../../cabin/model';
import type { Reflection } from '../../result';
import { OWN_PANEL_CLEARANCE, SAME_POINT } from '../../tolerance';
import { along, direction, distance, sub, type Vec3 } from '../../vector';
import type { Caster, SpotStart } from '../cast';
import { type Reflector, reflectorOf, type View } from './reflector';
import { specularPoints } from './specular-points';
import type { Surface } from './surface';
import { type Bounce, twoBounces } from './two-bounces';

export interface ReflectionQuery {
  panels: readonly Panel[];
  /** Of the same panels and everything else that stands in the way. */
  caster: Caster;
  source: Vec3;
  receiver: Vec3;
  /** mm/ms */
  speed: number;
  /** The seat whose own occupant does not stand in its own way. */
  listener: string | null;
  /** Where the source is mounted, when it is. */
  spot: SpotStart | null;
  /** Level the speaker sends in a direction (unit, from the speaker), dB; left out: all alike. */
  directivityDb?: (direction: Vec3) => number;
  /** 2 adds ways by two panels of `secondOrderMaterial`. Left out: 1. */
  order?: 1 | 2;
  /** Panels that take part in second order; left out: glass. */
  secondOrderMaterial?: Material;
}

/**
 * What the panels throw back from a source to a receiver, shortest way first: for each panel that
 * has a place where it mirrors one to the other, inside its edges and with both legs free. Where a
 * curved panel has several such places, the one with the shortest free way is given: it arrives
 * first and, by spreading, loudest.
 *
 * Specular reflection: image source (Allen & Berkley, JASA 65, 1979), on curved panels Fermat's
 * principle. First notch c / (2 · extra): Everest & Pohlmann, Master Handbook of Acoustics; it
 * holds where the panel does not turn the phase, as hard ones hardly do.
 *
 * Left out: a panel that absorbs everything; the panel a speaker is set into (its stand-off below
 * {@link OWN_PANEL_CLEARANCE}) next to the speaker, which is its baffle and no mirror.
 */
export function reflectionsBetween(query: ReflectionQuery): Reflection[] {
  const { source, receiver, panels } = query;
  const reflector = reflectorOf(panels);
  const [s, r] = [reflector.view(source), reflector.view(receiver)];
  const direct = distance(source, receiver);
  const found: Reflection[] = [];
  for (let i = 0; i < panels.length; i++) {
    const surface = reflector.surfaces[i] as Surface;
    if (!(surface.panel.reflectivity > 0)) continue;
    for (const { point, normal, path } of specularPoints(reflector, i, s, r)) {
      if (!(path - direct > SAME_POINT)) continue;
      if (isBaffle(surface, query.spot, path - direct)) continue;
      const bounce = { surface, point, normal };
      if (!isFree(query, [bounce])) continue;
      found.push(reflection(query, [bounce], path, direct));
      break;
    }
  }
  if (query.order === 2) found.push(...secondOrder(query, reflector, s, r, direct));
  return found.sort((a, b) => a.path - b.path);
}

/** A plane panel behind a source `d` away adds 2d at most. */
export const isBaffle = ({ panel }: Surface, spot: SpotStart | null, extra: number): boolean =>
  spot !== null &&
  spot.panel === panel.id &&
  spot.standoff < OWN_PANEL_CLEARANCE &&
  extra < 2 * OWN_PANEL_CLEARANCE;

function secondOrder(
  query: ReflectionQuery,
  reflector: Reflector,
  s: View,
  r: View,
  direct: number,
): Reflection[] {
  const material = query.secondOrderMaterial ?? 'glass';
  const mirrors = reflector.surfaces.filter(
    ({ panel }) => panel.material === material && panel.reflectivity > 0,
  );
  const found: Reflection[] = [];
  for (const first of mirrors)
    for (const second of mirrors) {
      if (first === second) continue;
      const way = twoBounces(first, second, s.place, r.place);
      if (!way || !(way.path - direct > SAME_POINT)) continue;
      if (isFree(query, way.bounces)) found.push(reflection(query, way.bounces, way.path, direct));
    }
  return found;
}

/** Whether every leg is free: each bounce is lifted off its panel, which must not block itself. */
export function isFree(query: ReflectionQuery, bounces: readonly Bounce[]): boolean {
  const { caster, listener } = query;
  let from = query.source;
  let spot = query.spot;
  for (const { surface, point, normal } of bounces) {
    const to = along(point, normal, surface.lift);
    if (!caster.isFree(from, to, listener, spot)) return false;
    from = to;
    spot = null;
  }
  return caster.isFree(from, query.receiver, listener, null);
}

function reflection(
  query: ReflectionQuery,
  bounces: readonly Bounce[],
  path: number,
  direct: number,
): Reflection {
  const [first, second] = bounces as readonly [Bounce, Bounce?];
  const extra = path - direct;
  const level = levelOf(query, bounces, path, direct);
  const told: Reflection = {
    panel: first.surface.panel.id,
    point: first.point,
    path,
    extra,
    extraTime: extra / query.speed,
    levelDb: typeof level === 'number' ? level : null,
    firstNotchHz: firstNotchHz(extra, query.speed),
  };
  if (second) told.second = { panel: second.surface.panel.id, point: second.point };
  if (typeof level === 'string') told.reasons = [level];
  return told;
}

/**
 * Where a sound that comes `extra` mm later first cancels the direct one, Hz: half a wave later.
 * Everest & Pohlmann, Master Handbook of Acoustics: 1 ms gives 500, 1500 Hz, …
 * @param speed mm/ms
 */
export const firstNotchHz = (extra: number, speed: number): number => (1000 * speed) / (2 * extra);

function levelOf(
  { source, receiver, directivityDb }: ReflectionQuery,
  bounces: readonly Bounce[],
  path: number,
  direct: number,
): number | string {
  const ahead = direction(sub(receiver, source));
  const aside = direction(sub((bounces[0] as Bounce).point, source));
  if (!(direct > SAME_POINT) || !ahead || !aside)
    return 'the listener is at the speaker, so there is no level to compare with';
  let factor = direct / path;
  for (const { surface } of bounces) factor *= surface.panel.reflectivity;
  const turned = directivityDb ? directivityDb(aside) - directivityDb(ahead) : 0;
  const level = 20 * Math.log10(factor) + turned;
  return Number.isFinite(level)
    ? level
    : 'the speaker sends nothing that way or nothing straight ahead, so there is no level';
}
