/** Every option measured anew with one thing a little off: what an uncertainty is made from. */
import type { PlanInput } from '../input';
import { createEvaluator } from '../stage/evaluate';
import { createImageStudy } from '../study/image';
import { slideSeat } from '../study/slide-seat';
import type { Stage } from '../study/stage';
import {
  type Sign,
  type SpotCause,
  spotCauses,
  type Uncertainties,
  USUAL_UNCERTAINTIES,
} from './causes';
import { KINDS, type Values } from './measure';
import { type CompareProgress, collector, imageStudy, type MeasuredOption } from './measure-option';
import { measureSeat } from './measure-seat';
import { measureStage } from './measure-stage';
import { measureDelay, measureFit, measurePillars, misfitsOf } from './measure-whole';

/** The measures with one thing off by one standard uncertainty either way; `null`: it cannot be. */
export type TriedBothWays = Readonly<Record<Sign, Values | null>>;

/** By cause; an option that a cause does not touch does not list it. */
export type OptionTrials = ReadonlyMap<string, TriedBothWays>;

export interface Trials {
  /** Where sums and images were tried too. */
  seat: string;
  uncertainties: Uncertainties;
  /** By option's id. */
  options: ReadonlyMap<string, OptionTrials>;
}

const SIGNS: readonly Sign[] = [1, -1];

/** {@link trialsInSteps} at one go. */
export function trialsOf(
  measured: readonly MeasuredOption[],
  seat: string,
  uncertainties?: Uncertainties,
): Trials {
  const steps = trialsInSteps(measured, seat, uncertainties);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/**
 * Tries what may be off, one thing at a time: each speaker's spot, each seat on its rails, the
 * temperature. Seats and temperature are off for all options together. Sums and images take long
 * and are tried at one seat alone. The options are of one plan.
 */
export function* trialsInSteps(
  measured: readonly MeasuredOption[],
  seat: string,
  uncertainties: Uncertainties = USUAL_UNCERTAINTIES,
): Generator<CompareProgress, Trials> {
  const [first] = measured;
  const options = new Map(
    measured.map(({ option }) => [option, new Map<string, TriedBothWays>()] as const),
  );
  if (!first) return { seat, uncertainties, options };
  const { plan, cabin } = first.stage;
  const spots = measured.map(({ stage }) =>
    spotCauses(stage.option.speakers, cabin.panels, uncertainties),
  );
  const own = spots.reduce((sum, causes) => sum + causes.length, 0);
  const shared = cabin.seats.length + 1;
  const total = own + 2 * shared;
  let done = 0;

  const evaluate = createEvaluator();
  for (const [i, one] of measured.entries())
    for (const cause of spots[i] as SpotCause[]) {
      options.get(one.option)?.set(cause.id, {
        1: spotOff(one, cause, 1, evaluate, seat),
        [-1]: spotOff(one, cause, -1, evaluate, seat),
      } as TriedBothWays);
      yield { done: ++done, total };
    }

  const whole = { ...plan, options: measured.map(({ stage }) => stage.option) };
  const changed: [string, (sign: Sign) => PlanInput | null][] = cabin.seats.map((one) => [
    `seat ${one.id}`,
    (sign) => {
      const slid = slideSeat(plan, cabin, one, sign * uncertainties.seat);
      return 'why' in slid ? null : { ...whole, seats: slid.seats };
    },
  ]);
  changed.push([
    'temperature',
    (sign) => ({
      ...whole,
      air: {
        ...plan.air,
        temperatureC: plan.air.temperatureC + sign * uncertainties.temperatureC,
      },
    }),
  ]);
  for (const [cause, planFor] of changed) {
    const tried = new Map<string, Partial<Record<Sign, Values>>>();
    for (const sign of SIGNS) {
      const there = planFor(sign);
      if (there) {
        const imageAt = cause === 'temperature' ? createImageStudy() : imageStudy;
        for (const [option, values] of allOff(measured, there, seat, imageAt))
          tried.set(option, { ...tried.get(option), [sign]: values });
      }
      yield { done: ++done, total };
    }
    for (const [option, both] of tried)
      options
        .get(option)
        ?.set(cause, { 1: both[1] ?? null, [-1]: both[-1] ?? null } as TriedBothWays);
  }
  return { seat, uncertainties, options };
}

/** One option with one speaker's spot off. */
function spotOff(
  { stage, values: before, misfits }: MeasuredOption,
  { speaker: id, moved }: SpotCause,
  sign: Sign,
  evaluate: ReturnType<typeof createEvaluator>,
  seat: string,
): Values | null {
  const speaker = moved[sign];
  if ('why' in speaker) return null;
  const option = {
    ...stage.option,
    speakers: stage.option.speakers.map((one) => (one.id === id ? speaker : one)),
  };
  const plan = { ...stage.plan, options: [option] };
  const answer = evaluate(plan);
  const [result] = answer.ok ? answer.options : [];
  if (!answer.ok || !result) return null;
  const there = { plan, cabin: answer.cabin, option, result };
  const { values, put } = collector();
  listen(there, seat, imageStudy, put);
  measureFit(misfitsOf({ ...there, placed: result.placed }, id, misfits), put);
  if (speaker.mount?.panel.startsWith('pillar-')) measurePillars(there, put);
  return onTopOf(before, values, seat);
}

/** All options with a seat or the air off. Whether speakers fit does not change with either. */
function allOff(
  measured: readonly MeasuredOption[],
  plan: PlanInput,
  seat: string,
  imageAt: typeof imageStudy,
): [string, Values][] {
  const answer = createEvaluator()(plan);
  if (!answer.ok) return [];
  return measured.flatMap((one, i): [string, Values][] => {
    const [option, result] = [plan.options[i], answer.options[i]];
    if (!option || !result) return [];
    const { values, put } = collector();
    listen({ plan, cabin: answer.cabin, option, result }, seat, imageAt, put);
    return [[one.option, onTopOf(one.values, values, seat)]];
  });
}

function listen(
  stage: Stage,
  seat: string,
  imageAt: typeof imageStudy,
  put: Parameters<typeof measureSeat>[2],
): void {
  for (const { id } of stage.result.seats) measureSeat(stage, id, put);
  measureStage(stage, seat, imageAt, put);
  measureDelay(stage, put);
}

/** What was not tried stays as it was, but for what was left out because it takes long. */
function onTopOf(before: Values, tried: Values, seat: string): Values {
  const all = new Map([...before].filter(([id]) => !isSlowElsewhere(id, seat)));
  for (const [id, value] of tried) all.set(id, value);
  return all;
}

/** Ids begin with kind and seat: see `measureOf`. */
function isSlowElsewhere(id: string, seat: string): boolean {
  const [kind = '', at] = id.split(' ');
  return KINDS[kind as keyof typeof KINDS]?.slow === true && at !== seat;
}
