import { buildCabin } from '../cabin/build-cabin';
import type { CabinModel, Panel, Refusal, Seat } from '../cabin/model';
import type { AlignmentInput, OptionInput, PlanInput } from '../input';
import { buildCaster, type Caster } from '../paths/cast';
import type { Arrival, OptionResult, PlacedSpeaker, SeatResult } from '../result';
import { speedOfSound } from '../sound/air';
import { arrivalAt } from './arrivals';
import { delaysFor } from './delays';
import { pairDifference, pairsOf } from './pairs';
import { placeSpeaker } from './place';

export type EvaluateAnswer =
  | { ok: true; cabin: CabinModel; options: OptionResult[] }
  | { ok: false; error: Refusal };

/** All of a plan that its options share, made ready once. */
interface Surroundings {
  cabin: CabinModel;
  panels: ReadonlyMap<string, Panel>;
  seats: ReadonlyMap<string, Seat>;
  caster: Caster;
}

/** Sample rate used where the plan names none, Hz: common practice for car processors, no source. */
export const DEFAULT_SAMPLE_RATE_HZ = 48000;

/**
 * An evaluator that remembers the last plan's parts by identity, so that a drag pays only for what
 * moved: the cabin and its trees are rebuilt when the cabin, a seat or an obstacle changed, an
 * option only when it, the surroundings or the air did. Same plan in, same numbers out, whatever
 * was asked before.
 */
export function createEvaluator(): (plan: PlanInput) => EvaluateAnswer {
  let known: { plan: PlanInput; surroundings: Surroundings } | null = null;
  let results = new WeakMap<OptionInput, { speed: number; rate: number; result: OptionResult }>();

  return (plan) => {
    if (!known || !sameSurroundings(known.plan, plan)) {
      const answer = buildCabin(plan);
      if (!answer.ok) return answer;
      const { cabin } = answer;
      known = {
        plan,
        surroundings: {
          cabin,
          panels: new Map(cabin.panels.map((panel) => [panel.id, panel])),
          seats: new Map(cabin.seats.map((seat) => [seat.id, seat])),
          caster: buildCaster(cabin.panels, cabin.obstacles),
        },
      };
      results = new WeakMap();
    }
    const { surroundings } = known;
    const aligned = plan.alignment?.seat;
    if (aligned !== undefined && !surroundings.seats.has(aligned) && surroundings.seats.size > 0)
      return refuse('alignment.seat', `there is no seat "${aligned}" in this plan`);

    const { speed } = speedOfSound(plan.air);
    const rate = plan.alignment?.sampleRateHz ?? DEFAULT_SAMPLE_RATE_HZ;
    const options: OptionResult[] = [];
    for (const [index, option] of plan.options.entries()) {
      const earlier = results.get(option);
      if (earlier && earlier.speed === speed && earlier.rate === rate) {
        options.push(earlier.result);
        continue;
      }
      const answer = evaluateOption(option, index, surroundings, speed, rate);
      if (!answer.ok) return answer;
      results.set(option, { speed, rate, result: answer.result });
      options.push(answer.result);
    }
    return { ok: true, cabin: surroundings.cabin, options };
  };
}

/** {@link createEvaluator} for one plan: every option of `plan`, straight-line detail. */
export function evaluatePlan(plan: PlanInput): EvaluateAnswer {
  return createEvaluator()(plan);
}

function sameSurroundings(a: PlanInput, b: PlanInput): boolean {
  return (
    a.cabin === b.cabin &&
    a.seats === b.seats &&
    a.obstacles === b.obstacles &&
    a.keepClear === b.keepClear
  );
}

function evaluateOption(
  option: OptionInput,
  index: number,
  { cabin, panels, seats, caster }: Surroundings,
  speed: number,
  sampleRateHz: AlignmentInput['sampleRateHz'],
): { ok: true; result: OptionResult } | { ok: false; error: Refusal } {
  const placed: PlacedSpeaker[] = [];
  for (const [s, speaker] of option.speakers.entries()) {
    const answer = placeSpeaker(speaker, panels, seats);
    if (!answer.ok) {
      const { field, message } = answer.error;
      return refuse(`options[${index}].speakers[${s}].${field}`, message);
    }
    placed.push(answer.placed);
  }
  const pairs = pairsOf(option.speakers);
  const seatResults = cabin.seats.map((seat): SeatResult => {
    const arrivals = option.speakers.map((speaker, s) =>
      arrivalAt(speaker, placed[s] as PlacedSpeaker, seat, caster, speed),
    );
    const byId = new Map<string, Arrival>(arrivals.map((arrival) => [arrival.speaker, arrival]));
    return {
      id: seat.id,
      head: seat.head,
      arrivals,
      pairs: pairs.map((pair) => pairDifference(pair, byId)),
      delays: delaysFor(arrivals, pairs, sampleRateHz),
    };
  });
  return {
    ok: true,
    result: {
      id: option.id,
      ...(option.title !== undefined && { title: option.title }),
      speedOfSound: speed,
      detail: 'straight-line',
      placed,
      seats: seatResults,
    },
  };
}

function refuse(path: string, message: string): { ok: false; error: Refusal } {
  return { ok: false, error: { path, message } };
}
