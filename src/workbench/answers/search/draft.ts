/** What the fields of the search hold, before it is a request. Lengths in mm, angles in degrees. */
import {
  type CabinModel,
  pairsOf,
  type Role,
  type SeatWeight,
  type SpotAim,
} from '../../../geometry';
import type { Plan, PlanOption } from '../../../plan/types';
import { isFrontRole, panelCouples, usualCouples } from './panel-couples';

/** In place of a pair's id: all pairs of the front stage together. */
export const WHOLE_STAGE = '*';

/** "own": as each speaker is aimed. */
export type AimChoice = 'own' | 'between' | 'normal' | `seat:${string}`;

export interface SearchDraft {
  /** A pair's id, or {@link WHOLE_STAGE}; `null`: the first pair. */
  scope: string | null;
  mirrored: boolean;
  /** The panels ticked, by pair; a pair that is not named has the usual ones. */
  panels: Readonly<Record<string, readonly string[]>>;
  aim: AimChoice;
  /** Turned from the panel's normal by at most this; `null`: as far as it takes. */
  withinDeg: number | null;
  /** `null`: those delays are set for. */
  seats: readonly SeatWeight[] | null;
  fits: boolean;
  free: boolean;
  maxOffAxisDeg: number | null;
  /** What pods may add to what a front pillar hides of the view. */
  maxAddedPillarViewDeg: number | null;
  want: Readonly<Record<SpotAim, number>>;
  pathSpread: number;
  /** `null`: the usual one. */
  step: number | null;
  answers: number;
  apart: number;
}

/**
 * Weights and count are the engine's own where a request leaves them out. Apart is more than that:
 * 80 mm offers five places along one edge of the dash, 200 mm five that differ (choice of ours).
 */
export const NEW_DRAFT: SearchDraft = {
  scope: null,
  mirrored: true,
  panels: {},
  aim: 'own',
  withinDeg: null,
  seats: null,
  fits: true,
  free: false,
  maxOffAxisDeg: null,
  maxAddedPillarViewDeg: null,
  want: { difference: 1, offAxisDeg: 0.5, obstructionDb: 1, firstReflectionTime: 0.2 },
  pathSpread: 0.5,
  step: null,
  answers: 5,
  apart: 200,
};

/** Of a search for several pairs together the grid is usually coarser: combinations grow fast. */
export const usualStep = (scope: string): number => (scope === WHOLE_STAGE ? 40 : 20);

/** A pair that can be searched for. */
export interface SearchPair {
  pair: string;
  role: Role;
  /** The panels its two speakers stand on. */
  standing: readonly string[];
}

/** The option's pairs that have both sides. */
export function searchPairs(option: PlanOption): SearchPair[] {
  return pairsOf(option.speakers).flatMap(({ pair, left, right }): SearchPair[] => {
    const members = [left, right].map((id) => option.speakers.find((one) => one.id === id));
    const [first, second] = members;
    if (!first || !second) return [];
    const standing = [first, second].flatMap(({ mount }) => (mount ? [mount.panel] : []));
    return [{ pair, role: first.role, standing }];
  });
}

export const stagePairs = (pairs: readonly SearchPair[]): SearchPair[] =>
  pairs.filter(({ role }) => isFrontRole(role));

/** The seats delays are set for: several with their weights, or one. */
export function usualSeats({ alignment }: Plan, cabin: CabinModel): readonly SeatWeight[] {
  const known = (alignment.seats ?? []).filter(({ id }) =>
    cabin.seats.some((seat) => seat.id === id),
  );
  if (alignment.by === 'seats' && known.length > 0) return known;
  const one = cabin.seats.find(({ id }) => id === alignment.seat) ?? cabin.seats[0];
  return one ? [{ id: one.id, weight: 1 }] : [];
}

/** Everything the fields are about, looked up. */
export interface SearchGround {
  plan: Plan;
  cabin: CabinModel;
  option: PlanOption;
}

/** The listeners a draft asks for, as far as the cabin has them. */
export function listenersOf(draft: SearchDraft, { plan, cabin }: SearchGround) {
  const listed = draft.seats?.filter(({ id }) => cabin.seats.some((seat) => seat.id === id)) ?? [];
  return listed.length > 0 ? listed : usualSeats(plan, cabin);
}

/** The panels ticked for a pair, as far as the cabin has them; the usual ones where none were chosen. */
export function panelsFor(draft: SearchDraft, pair: SearchPair, ground: SearchGround): string[] {
  const couples = panelCouples(ground.cabin.panels);
  const ticked = draft.panels[pair.pair];
  if (ticked) return couples.flatMap(({ id }) => (ticked.includes(id) ? [id] : []));
  const [first] = listenersOf(draft, ground);
  const listener = ground.cabin.seats.find(({ id }) => id === first?.id);
  return usualCouples(couples, pair.role, listener, pair.standing);
}

/** The scope a draft means in this option: its own where there is such a pair, else the first. */
export function scopeOf({ scope }: SearchDraft, pairs: readonly SearchPair[]): string | null {
  if (scope === WHOLE_STAGE && stagePairs(pairs).length > 1) return WHOLE_STAGE;
  return (pairs.find(({ pair }) => pair === scope) ?? pairs[0])?.pair ?? null;
}
