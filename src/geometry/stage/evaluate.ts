import { buildCabin } from '../cabin/build-cabin';
import type { CabinModel, Panel, Refusal, Seat } from '../cabin/model';
import type { AlignmentInput, OptionInput, PlanInput, SpeakerInput } from '../input';
import { buildCaster, type Caster } from '../paths/cast';
import { buildWayFinder, type WayFinder } from '../paths/way-round';
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
  ways: WayFinder;
  /** Arrivals at every seat, by speaker as given; forgotten with the surroundings. */
  arrivals: WeakMap<SpeakerInput, { speed: number; atSeats: Arrival[] }>;
}

/** Sample rate used where the plan names none, Hz: common practice for car processors, no source. */
export const DEFAULT_SAMPLE_RATE_HZ = 48000;

/**
 * An evaluator that remembers the last plan's parts by identity, so that a drag pays only for what
 * moved: the cabin and its trees are rebuilt when the cabin, a seat or an obstacle changed, a
 * speaker's arrivals only when it, the surroundings or the air did. Same plan in, same numbers out, whatever
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
      const caster = buildCaster(cabin.panels, cabin.obstacles);
      known = {
        plan,
        surroundings: {
          cabin,
          panels: new Map(cabin.panels.map((panel) => [panel.id, panel])),
          seats: new Map(cabin.seats.map((seat) => [seat.id, seat])),
          caster,
          ways: buildWayFinder(cabin.panels, cabin.obstacles, caster),
          arrivals: new WeakMap(),
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

/** {@link createEvaluator} for one plan: every option of `plan`. */
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
  surroundings: Surroundings,
  speed: number,
  sampleRateHz: AlignmentInput['sampleRateHz'],
): { ok: true; result: OptionResult } | { ok: false; error: Refusal } {
  const { cabin, panels, seats } = surroundings;
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
  const perSpeaker = option.speakers.map((speaker, s) =>
    arrivalsOf(speaker, placed[s] as PlacedSpeaker, surroundings, speed),
  );
  const seatResults = cabin.seats.map((seat, at): SeatResult => {
    const arrivals = perSpeaker.map((atSeats) => atSeats[at] as Arrival);
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
      detail: 'full',
      placed,
      seats: seatResults,
    },
  };
}

/** What one speaker does at every seat. Two speakers may be one object in two options. */
function arrivalsOf(
  speaker: SpeakerInput,
  placed: PlacedSpeaker,
  { cabin, caster, ways, arrivals }: Surroundings,
  speed: number,
): Arrival[] {
  const earlier = arrivals.get(speaker);
  if (earlier?.speed === speed) return earlier.atSeats;
  const room = { panels: cabin.panels, caster, ways, speed };
  const atSeats = cabin.seats.map((seat) => arrivalAt(speaker, placed, seat, room));
  arrivals.set(speaker, { speed, atSeats });
  return atSeats;
}

function refuse(path: string, message: string): { ok: false; error: Refusal } {
  return { ok: false, error: { path, message } };
}
