/**
 * Which dimensions are worth measuring: how far each one's doubt moves the answers.
 */
import { buildCabin } from '../cabin/build-cabin';
import { buildSurfaces } from '../cabin/build-surfaces';
import { DIMENSIONS, type DimensionId, type DimensionInfo } from '../cabin/dimensions';
import type { Panel, Refusal, Seat } from '../cabin/model';
import type { OptionInput, PlanInput } from '../input';
import { distance } from '../vector';
import { pairsOf } from './pairs';
import { placeSpeaker } from './place';

/** Doubt of a careful tape reading inside a car. Typical value, from memory. */
export const TAPE_UNCERTAINTY = { mm: 10, deg: 1 } as const;

/** How far a car strays from its body style's typical value. Typical value, from memory. */
export const TEMPLATE_SPREAD = { mm: 30, deg: 3 } as const;

export interface DimensionRank {
  dimension: DimensionId;
  /** True when the plan gives this dimension, so that its doubt is the tape's. */
  measured: boolean;
  /** The doubt tried, both ways, mm or degrees. */
  uncertainty: number;
  /** Largest change of a straight path, mm (≥ 0), and whose; null where none could be had. */
  path: { change: number; speaker: string; seat: string } | null;
  /** Largest change of a pair's left-right difference, mm (≥ 0), and whose. */
  difference: { change: number; pair: string; seat: string } | null;
  /** Why the changed value could not be tried; absent when it could, both ways. */
  reasons?: string[];
}

export type RankAnswer = { ok: true; ranks: DimensionRank[] } | { ok: false; error: Refusal };

export interface RankSettings {
  /** Id of the option; left out or gone: the first. */
  option?: string;
}

export interface RankProgress {
  done: number;
  total: number;
}

/** Straight lengths by seat and speaker, and differences by seat and pair. */
interface Lengths {
  paths: Map<string, { value: number; speaker: string; seat: string }>;
  differences: Map<string, { value: number; pair: string; seat: string }>;
}

/**
 * Changes each dimension by its doubt, both ways, and reports the largest change of any path and
 * pair difference at the front seats (at all seats where none is a front one), most telling first.
 * Straight lines: what stands in between changes no length here.
 */
export function rankDimensions(plan: PlanInput, settings: RankSettings = {}): RankAnswer {
  const steps = rankDimensionsInSteps(plan, settings);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** {@link rankDimensions} one dimension at a time, so that a caller can show progress and stop. */
export function* rankDimensionsInSteps(
  plan: PlanInput,
  settings: RankSettings = {},
): Generator<RankProgress, RankAnswer> {
  const option = plan.options.find(({ id }) => id === settings.option) ?? plan.options[0];
  if (!option) return { ok: true, ranks: [] };
  const answer = buildCabin(plan);
  if (!answer.ok) return answer;
  const { panels, seats, dimensions } = answer.cabin;
  const here = measure(plan, option, new Map(panels.map((panel) => [panel.id, panel])), seats);
  if (!here.ok) return here;
  const known = DIMENSIONS.filter(({ id }) => dimensions[id] !== undefined);
  const ranks: DimensionRank[] = [];
  for (const [index, info] of known.entries()) {
    ranks.push(rankOne(plan, option, info, dimensions[info.id] as number, here.lengths));
    yield { done: index + 1, total: known.length };
  }
  return { ok: true, ranks: ranks.sort((a, b) => effect(b) - effect(a)) };
}

/** Ids may hold any sign, so no separator is safe between them. */
const key = (seat: string, other: string): string => JSON.stringify([seat, other]);

/** The larger of a rank's two changes: what the list is ordered by, mm. */
const effect = ({ path, difference }: DimensionRank): number =>
  Math.max(path?.change ?? 0, difference?.change ?? 0);

function rankOne(
  plan: PlanInput,
  option: OptionInput,
  info: DimensionInfo<DimensionId>,
  value: number,
  here: Lengths,
): DimensionRank {
  const measured = Object.hasOwn(plan.cabin.dimensions ?? {}, info.id);
  const uncertainty = (measured ? TAPE_UNCERTAINTY : TEMPLATE_SPREAD)[info.unit];
  const reasons: string[] = [];
  let path: DimensionRank['path'] = null;
  let difference: DimensionRank['difference'] = null;
  for (const sign of [-1, 1]) {
    const changed = Math.min(info.max, Math.max(info.min, value + sign * uncertainty));
    const dimensions = { ...plan.cabin.dimensions, [info.id]: changed };
    const changedPlan = { ...plan, cabin: { ...plan.cabin, dimensions } };
    const built = buildSurfaces(changedPlan);
    const there = built.ok ? measure(changedPlan, option, built.panels, built.seats) : built;
    if (!there.ok) {
      reasons.push(`at ${changed}: ${there.error.message}`);
      continue;
    }
    for (const [at, { value: length, speaker, seat }] of there.lengths.paths) {
      const change = Math.abs(length - (here.paths.get(at)?.value ?? length));
      if (!path || change > path.change) path = { change, speaker, seat };
    }
    for (const [at, { value: length, pair, seat }] of there.lengths.differences) {
      const change = Math.abs(length - (here.differences.get(at)?.value ?? length));
      if (!difference || change > difference.change) difference = { change, pair, seat };
    }
  }
  return {
    dimension: info.id,
    measured,
    uncertainty,
    path,
    difference,
    ...(reasons.length > 0 && { reasons }),
  };
}

/** The option's lengths between these panels and seats, or why there are none. */
function measure(
  plan: PlanInput,
  option: OptionInput,
  panels: ReadonlyMap<string, Panel>,
  all: readonly Seat[],
): { ok: true; lengths: Lengths } | { ok: false; error: Refusal } {
  const seats = new Map(all.map((seat) => [seat.id, seat]));
  const front = all.filter(({ id }) => id.startsWith('front-'));
  const lengths: Lengths = { paths: new Map(), differences: new Map() };
  for (const seat of front.length > 0 ? front : all) {
    const to = new Map<string, number>();
    for (const [s, speaker] of option.speakers.entries()) {
      const placement = placeSpeaker(speaker, panels, seats);
      if (!placement.ok) {
        const { field, message } = placement.error;
        const index = plan.options.indexOf(option);
        return { ok: false, error: { path: `options[${index}].speakers[${s}].${field}`, message } };
      }
      const value = distance(placement.placed.position, seat.head);
      to.set(speaker.id, value);
      lengths.paths.set(key(seat.id, speaker.id), { value, speaker: speaker.id, seat: seat.id });
    }
    for (const { pair, left, right } of pairsOf(option.speakers)) {
      if (left === null || right === null) continue;
      const value = (to.get(left) ?? 0) - (to.get(right) ?? 0);
      lengths.differences.set(key(seat.id, pair), { value, pair, seat: seat.id });
    }
  }
  return { ok: true, lengths };
}
