/**
 * `npm run bench`: what the engine costs and the page weighs. One line for each figure,
 * `NAME VALUE GOAL ok` or `… short`; all of them go to tests/bench/results.json with the machine.
 */
import { writeFileSync } from 'node:fs';
import { arch, cpus, loadavg, platform, totalmem } from 'node:os';
import {
  type CabinModel,
  createEvaluator,
  type EvaluateAnswer,
  evaluatePlan,
  type Vec3,
} from '../../src/geometry';
import { buildCaster, type Caster } from '../../src/geometry/paths/cast';
import { buildWayFinder } from '../../src/geometry/paths/way-round';
import { arrivalAt } from '../../src/geometry/stage/arrivals';
import { mountSpeaker } from '../../src/plan/edits';
import type { Plan } from '../../src/plan/types';
import { formatAngle, formatLength, formatLevel, formatTime } from '../../src/plan/units';
import { createPlanStore } from '../../src/store/plan-store';
import { bareCasts } from './bare-casts';
import { pageSize } from './page-size';
import { crowdedOption, crowdedPlan, withScan } from './plans';
import { spotTimes } from './spots';
import { timings } from './timing';

interface Figure {
  name: string;
  value: number;
  goal: number;
  unit: string;
  ok: boolean;
}

const [load = 0] = loadavg();
const figures: Figure[] = [];

/** Lower is better for every figure here. */
function report(name: string, value: number, goal: number, unit: string): void {
  const ok = value <= goal;
  figures.push({ name, value: Number(value.toPrecision(4)), goal, unit, ok });
  console.log(`${name} ${value.toPrecision(3)} ${goal} ${ok ? 'ok' : 'short'}`);
}

type Answered = Extract<EvaluateAnswer, { ok: true }>;

function answered(answer: EvaluateAnswer): Answered {
  if (!answer.ok) throw new Error(`${answer.error.path}: ${answer.error.message}`);
  return answer;
}

/**
 * Evaluates options one after another in a cabin already built. Every spot is a little elsewhere
 * each time, so that no line is known from before.
 */
function optionEvaluator(plan: Plan, speakers: number) {
  const evaluate = createEvaluator();
  let run = 0;
  return () => {
    run += 1;
    return answered(evaluate({ ...plan, options: [crowdedOption(speakers, (run % 500) * 1e-4)] }));
  };
}

/** The straight lines of an option and nothing else: what stands on each. */
function straightLines(cabin: CabinModel, segments: readonly (readonly [Vec3, Vec3])[]) {
  const caster = buildCaster(cabin.panels, cabin.obstacles);
  return () => segments.map(([from, to]) => caster.crossings(from, to, 'front-left', null));
}

/** Every segment a full evaluation asks about: lines, ways round and both legs of reflections. */
function castsOf(plan: Plan, { cabin, options }: Answered): (readonly [Vec3, Vec3])[] {
  const asked: (readonly [Vec3, Vec3])[] = [];
  const inner = buildCaster(cabin.panels, cabin.obstacles);
  const caster: Caster = {
    ...inner,
    crossings(from, to, ...rest) {
      asked.push([from, to]);
      return inner.crossings(from, to, ...rest);
    },
    isFree(from, to, ...rest) {
      asked.push([from, to]);
      return inner.isFree(from, to, ...rest);
    },
  };
  const [option] = plan.options;
  const [result] = options;
  const room = {
    panels: cabin.panels,
    caster,
    ways: buildWayFinder(cabin.panels, cabin.obstacles, caster),
    speed: result?.speedOfSound ?? Number.NaN,
  };
  for (const seat of cabin.seats)
    for (const [s, speaker] of (option?.speakers ?? []).entries()) {
      const placed = result?.placed[s];
      if (placed) arrivalAt(speaker, placed, seat, room);
    }
  return asked;
}

/** Everything a drag of one speaker costs but the drawing: edit, engine, the tables' texts. */
function dragFrame(plan: Plan) {
  const store = createPlanStore(plan);
  const evaluate = createEvaluator();
  const speaker = plan.options[0]?.speakers[4];
  if (!speaker?.mount) throw new Error('dragFrame: the fifth speaker must be mounted');
  const { mount } = speaker;
  store.beginGesture('drag');
  let frame = 0;
  return () => {
    frame += 1;
    store.moveGesture(mountSpeaker('a', speaker.id, { ...mount, u: (frame % 97) / 97 }));
    const [option] = answered(evaluate(store.shown())).options;
    const seat = option?.seats[0];
    let text = '';
    for (const { path, time, offAxisDeg, levelDb } of seat?.arrivals ?? [])
      text +=
        formatLength(path, 'mm') +
        formatTime(time) +
        formatAngle(offAxisDeg) +
        formatLevel(levelDb);
    for (const { difference, differenceTime } of seat?.pairs ?? [])
      text += formatLength(difference, 'mm') + formatTime(differenceTime);
    for (const { delay, gainDb } of seat?.delays ?? [])
      text += formatTime(delay) + formatLevel(gainDb);
    return text;
  };
}

/** The same for a front seat slid along its rails: the cabin is built anew. */
function seatFrame(plan: Plan) {
  const evaluate = createEvaluator();
  let frame = 0;
  return () => {
    frame += 1;
    const seats = [{ id: 'front-left', slide: frame % 60 }, { id: 'front-right' }];
    return answered(evaluate({ ...plan, seats }));
  };
}

const plan = crowdedPlan(12);
const whole = answered(evaluatePlan(plan));
const { cabin, options } = whole;
const segments = cabin.seats.flatMap(({ head, ears }) =>
  (options[0]?.placed ?? []).flatMap(({ position }) =>
    [head, ears.left, ears.right].map((to): readonly [Vec3, Vec3] => [position, to]),
  ),
);
const bare = bareCasts(cabin, segments);
const allCasts = castsOf(plan, whole);
const bareAll = bareCasts(cabin, allCasts);
const scanned = withScan(plan, 10_000);
const scannedFinely = withScan(plan, 160_000);

const times = timings(
  {
    option: optionEvaluator(plan, 12),
    lines: straightLines(cabin, segments),
    bare: bare.run,
    bareAll: bareAll.run,
    option48: optionEvaluator(plan, 48),
    scan: optionEvaluator(scanned, 12),
    scanFine: optionEvaluator(scannedFinely, 12),
    drag: dragFrame(plan),
    seat: seatFrame(plan),
  },
  400,
);

const ratio = (a: keyof typeof times, b: keyof typeof times) =>
  times[a].undisturbed / times[b].undisturbed;

report('option-12x2-ms', times.option.median, 4, 'ms');
report('option-12x2-casts', ratio('option', 'bareAll'), 3, 'times the bare casts');
report('lines-12x2-ms', times.lines.median, 0.5, 'ms');
report('lines-12x2-casts', ratio('lines', 'bare'), 3, 'times the bare casts');
report('drag-speaker-frame-ms', times.drag.median, 4, 'ms');
report('drag-seat-frame-ms', times.seat.median, 4, 'ms');
report('growth-4x-speakers', ratio('option48', 'option'), 4.4, 'times');
report('growth-16x-triangles', ratio('scanFine', 'scan'), 1.5, 'times');

const spots = spotTimes();
report('map-20000-ms', spots.map, 250, 'ms, one of two shares');
report('map-20000-of-role-ms', spots.mapOfRole, 250, 'ms, one of two shares');
report('map-20000-reflections-ms', spots.mapWithReflections, 2000, 'ms, one of two shares');
report('search-20000-ms', spots.search, 1000, 'ms, one of two shares and the end');
report('search-three-pairs-ms', spots.stage, 20_000, 'ms, one core');

const size = await pageSize();
report('page-before-3d-kib', size.before3d, 180, 'KiB gzip');
report('page-first-start-kib', size.firstStart, 450, 'KiB gzip');

const [cpu] = cpus();
const machine = {
  cpu: cpu?.model.trim() ?? 'unknown',
  cores: cpus().length,
  memoryGiB: Math.round(totalmem() / 2 ** 30),
  system: `${platform()} ${arch()}`,
  node: process.version,
  /** Above the number of cores the times above are those of a busy machine. */
  loadBefore: Number(load.toFixed(1)),
};
const also = {
  cabinTriangles: bare.triangles,
  segments: segments.length,
  casts: allCasts.length,
  bareCastsMs: Number(times.bare.median.toPrecision(4)),
  undisturbedMs: Object.fromEntries(
    Object.entries(times).map(([name, time]) => [name, Number(time.undisturbed.toPrecision(4))]),
  ),
  pageEverythingKib: Number(size.everything.toPrecision(4)),
};
writeFileSync(
  new URL('results.json', import.meta.url),
  `${JSON.stringify({ machine, figures, also }, null, 2)}\n`,
);
