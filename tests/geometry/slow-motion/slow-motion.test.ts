import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  comeRound,
  distance,
  evaluatePlan,
  mirrorY,
  type ObstacleInput,
  type Reach,
  radiusAt,
  type SlowMotion,
  type Stage,
  sectionRadius,
  slowMotion,
  type Vec3,
  type Wave,
} from '../../../src/geometry';
import { demoPlan } from '../../../src/plan/demo';
import { plan as anyPlan, point, real } from '../arbitraries';
import {
  ASIDE,
  aligned,
  HEAD,
  MIDRANGE,
  mirrored,
  pairAt,
  planOf,
  stage,
  stageOf,
  TWEETER,
} from '../study/stages';

/** ms: sums of rounded numbers. */
const EXACT = 1e-9;

const reachOf = ({ reaches }: SlowMotion, speaker: string, at: Reach['at']): Reach => {
  const one = reaches.find((reach) => reach.speaker === speaker && reach.at === at);
  if (!one) throw new Error(`nothing of ${speaker} reaches ${at}`);
  return one;
};
const waveOf = ({ waves }: SlowMotion, speaker: string): Wave => {
  const one = waves.find((wave) => wave.speaker === speaker);
  if (!one) throw new Error(`no wave of ${speaker}`);
  return one;
};

/** A speaker 3.4399 m before the listener, and one as far to the left, level with the ears. */
const SPEED = 343.36;
const AHEAD: Vec3 = [HEAD[0] - 2 * SPEED, 0, HEAD[2]];
const LEFT: Vec3 = [HEAD[0], -3 * SPEED, HEAD[2]];
const one = (id: string, position: Vec3) => ({
  id,
  role: 'wideband' as const,
  position,
  aim: { kind: 'point' as const, point: HEAD },
});
/** In free air at 20 °C, dry: 343.360 m/s by Cramer 1993, eq. 15. */
const free = () => stage([one('ahead', AHEAD), one('left', LEFT)]);

describe('sound on its way in the free field, by hand', () => {
  test('a speaker two milliseconds ahead is heard after two milliseconds', () => {
    const motion = slowMotion(free(), 'middle', 'none');
    expect(Math.abs(motion.speed - SPEED)).toBeLessThan(0.001);
    expect(Math.abs(reachOf(motion, 'ahead', 'head').time - 2)).toBeLessThan(1e-4);
    const ear = Math.sqrt((2 * SPEED) ** 2 + 76 ** 2) / SPEED;
    expect(Math.abs(reachOf(motion, 'ahead', 'left').time - ear)).toBeLessThan(1e-4);
    expect(Math.abs(reachOf(motion, 'ahead', 'right').time - ear)).toBeLessThan(1e-4);
    expect(Math.abs(reachOf(motion, 'left', 'left').time - (3 - 76 / SPEED))).toBeLessThan(1e-4);
    expect(Math.abs(motion.end - (3 + 76 / SPEED))).toBeLessThan(1e-4);
  });

  test('a sphere has grown by the speed of sound for every millisecond since it left', () => {
    const wave = { ...waveOf(slowMotion(free(), 'middle', 'none'), 'ahead'), start: 0.5 };
    expect(radiusAt(wave, 0.4, SPEED)).toBe(0);
    expect(radiusAt(wave, 0.5, SPEED)).toBe(0);
    expect(Math.abs(radiusAt(wave, 2.5, SPEED) - 2 * SPEED)).toBeLessThan(EXACT);
  });

  test('it cuts a plane 300 mm above its speaker in a circle of 400 mm when it is 500 mm large', () => {
    const wave = { ...waveOf(slowMotion(free(), 'middle', 'none'), 'ahead'), start: 0 };
    const height = wave.centre[2] + 300;
    expect(sectionRadius(wave, 299 / SPEED, SPEED, height)).toBeNull();
    expect(Math.abs((sectionRadius(wave, 500 / SPEED, SPEED, height) ?? 0) - 400)).toBeLessThan(
      1e-6,
    );
    expect(sectionRadius(wave, 0, SPEED, wave.centre[2])).toBeNull();
  });

  test('arrivals are told in the order in which they happen, each speaker at three places', () => {
    const { reaches } = slowMotion(free(), 'middle', 'none');
    expect(reaches.map(({ speaker, at }) => `${speaker} ${at}`)).toEqual([
      'ahead head',
      'ahead left',
      'ahead right',
      'left left',
      'left head',
      'left right',
    ]);
  });

  test('without speakers nothing leaves and it is over at once; a seat unknown is refused', () => {
    expect(slowMotion(stage([]), 'middle', 'aligned')).toMatchObject({
      waves: [],
      reaches: [],
      end: 0,
    });
    expect(() => slowMotion(free(), 'nowhere', 'none')).toThrow(/slowMotion: .*"nowhere"/);
  });
});

const demoStages = (): Stage[] => {
  const plan = demoPlan();
  const answer = evaluatePlan(plan);
  if (!answer.ok) throw new Error(answer.error.message);
  return plan.options.map((option, i) => {
    const result = answer.options[i];
    if (!result) throw new Error('an option has no answer');
    return { plan, cabin: answer.cabin, option, result };
  });
};

describe('times are the evaluator’s own', () => {
  test.each(['front-left', 'rear-right'])('in both options of the demo, at the %s seat', (id) => {
    for (const at of demoStages()) {
      const seat = at.result.seats.find((one) => one.id === id);
      const settings = at.result.seats.find((one) => one.id === 'front-left')?.delays ?? [];
      const [none, late] = [slowMotion(at, id, 'none'), slowMotion(at, id, 'aligned')];
      expect(none.reaches).toHaveLength(18);
      for (const arrival of seat?.arrivals ?? []) {
        const { speaker, ears } = arrival;
        const delay = settings.find((one) => one.speaker === speaker)?.roundedDelay ?? Number.NaN;
        for (const [place, time] of [
          ['left', ears.left.time],
          ['head', arrival.time],
          ['right', ears.right.time],
        ] as const) {
          expect(reachOf(none, speaker, place).time).toBe(time);
          expect(reachOf(late, speaker, place).time).toBe(delay + time);
        }
        expect(waveOf(late, speaker).start).toBe(delay);
      }
      expect(late.alignedFor).toBe('front-left');
      expect(none.alignedFor).toBeNull();
    }
  });

  test('where the line is free the drawn sphere is at the ear in that moment', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const at = stageOf(plan);
        const motion = slowMotion(at, 'front-left', 'aligned');
        const seat = at.cabin.seats[0];
        for (const { speaker, at: place, time, free: passes, comes } of motion.reaches) {
          const wave = waveOf(motion, speaker);
          const ear = place === 'head' ? seat?.head : seat?.ears[place];
          const radius = radiusAt(wave, passes, motion.speed);
          expect(Math.abs(radius - distance(wave.centre, ear as Vec3))).toBeLessThan(1e-6);
          if (comes === 'round') expect(time).toBeGreaterThan(passes);
          else expect(Math.abs(time - passes)).toBeLessThan(EXACT);
        }
      }),
      { numRuns: 60 },
    );
  });
});

/** Between the speaker ahead and the listener, wider than high. */
const SCREEN: ObstacleInput = {
  id: 'screen',
  shape: 'box',
  center: [1200, 0, 900],
  size: [20, 1000, 400],
};

describe('a line that is blocked', () => {
  const at = stage([one('ahead', AHEAD)], { obstacles: [SCREEN] });
  const motion = slowMotion(at, 'middle', 'none');
  const [wave] = motion.waves;

  test('is told apart: what arrives comes round, later than the sphere passes', () => {
    const head = reachOf(motion, 'ahead', 'head');
    expect(head.comes).toBe('round');
    expect(head.time).toBeGreaterThan(head.free + 0.01);
    expect(wave?.line).toBe('blocked');
    expect(wave?.round?.length).toBeGreaterThan(2);
  });

  test('what comes round goes along its way at the speed of sound and is there when told', () => {
    if (!wave?.round) throw new Error('there is no way round');
    const end = reachOf(motion, 'ahead', 'head').time;
    expect(comeRound(wave, 0, motion.speed)).toBeNull();
    expect(comeRound(wave, end + 1e-6, motion.speed)).toBeNull();
    const last = comeRound(wave, end - 1e-6, motion.speed);
    expect(distance(last?.at ?? [0, 0, 0], HEAD)).toBeLessThan(0.001);
    const half = comeRound(wave, end / 2, motion.speed);
    const points = [...(half?.passed ?? []), half?.at as Vec3];
    const gone = points.reduce(
      (sum, p, i) => sum + (i ? distance(points[i - 1] as Vec3, p) : 0),
      0,
    );
    expect(Math.abs(gone - (end / 2) * motion.speed)).toBeLessThan(1e-6);
  });

  test('a free one has no way but the straight one', () => {
    const [straight] = slowMotion(free(), 'middle', 'none').waves;
    expect(straight?.round).toBeNull();
    expect(straight && comeRound(straight, 1, SPEED)).toBeNull();
  });

  test('without a way round it is said that the time is not known', () => {
    // A speaker inside a closed box.
    const shut = stage([one('ahead', AHEAD)], {
      obstacles: [{ id: 'box', shape: 'box', center: AHEAD, size: [300, 300, 300] }],
    });
    const { reaches } = slowMotion(shut, 'middle', 'none');
    expect(reaches.map(({ comes }) => comes)).toEqual(['unknown', 'unknown', 'unknown']);
  });
});

const PAIRS = [...pairAt(TWEETER, [700, 650, 900]), ...pairAt(MIDRANGE, [500, 600, 500])];
const SEATS = [
  { id: 'middle', head: HEAD },
  { id: 'left', head: ASIDE },
];

describe('delays', () => {
  test('bring all to the aligned head together, to within the rounding to whole samples', () => {
    for (const sampleRateHz of [44100, 48000, 96000]) {
      const at = stage(PAIRS, { seats: SEATS, alignment: aligned({ seat: 'left', sampleRateHz }) });
      const motion = slowMotion(at, 'left', 'aligned');
      const times = PAIRS.map(({ id }) => reachOf(motion, id, 'head').time);
      // Each is off by half a sample at most.
      expect(Math.max(...times) - Math.min(...times)).toBeLessThanOrEqual(
        1000 / sampleRateHz + EXACT,
      );
      const before = slowMotion(at, 'left', 'none');
      const apart = PAIRS.map(({ id }) => reachOf(before, id, 'head').time);
      expect(Math.max(...apart) - Math.min(...apart)).toBeGreaterThan(1);
      expect(Math.min(...motion.waves.map(({ start }) => start))).toBe(0);
    }
  });

  test('are those of the alignment also where another seat is looked at', () => {
    const at = stage(PAIRS, { seats: SEATS, alignment: aligned({ seat: 'left' }) });
    const [here, there] = [slowMotion(at, 'middle', 'aligned'), slowMotion(at, 'left', 'aligned')];
    expect(here.alignedFor).toBe('left');
    expect(here.waves.map(({ start }) => start)).toEqual(there.waves.map(({ start }) => start));
  });

  test('of a compromise are for no one seat, and a reason is given where there are none', () => {
    const both = stage(PAIRS, { seats: SEATS, alignment: aligned({ by: 'seats' }) });
    expect(slowMotion(both, 'left', 'aligned').alignedFor).toBeNull();
    expect(slowMotion(both, 'left', 'aligned').problem).toBeUndefined();
    const nobody = aligned({ by: 'seats', seats: [{ id: 'left', weight: 0 }] });
    const none = slowMotion(stage(PAIRS, { seats: SEATS, alignment: nobody }), 'left', 'aligned');
    expect(none.problem).toBeTruthy();
    expect(none.waves.every(({ start }) => start === 0)).toBe(true);
  });
});

test('a mirrored car mirrors the events: the same times, at the other ear', () => {
  const box = fc.record({
    shape: fc.constant('box' as const),
    center: fc.tuple(real(-400, 400), real(-400, 400), real(-400, 400)),
    size: fc.tuple(real(50, 900), real(50, 900), real(50, 900)),
  });
  const boxes = fc.array(box, { minLength: 1, maxLength: 2 });
  let blocked = 0;
  fc.assert(
    fc.property(boxes, point, point, real(-90, 90), (solids, head, position, facingDeg) => {
      const plan = planOf([...pairAt(TWEETER, position), one('lone', [100, 40, 200])], {
        seats: [{ id: 'middle', head, facingDeg, earSpacing: 152 }],
        obstacles: solids.map((solid, i) => ({ id: `box-${i}`, ...solid })),
      });
      const [here, there] = [plan, mirrored(plan)].map((one) =>
        slowMotion(stageOf(one), 'middle', 'aligned'),
      ) as [SlowMotion, SlowMotion];
      for (const wave of here.waves) {
        const twin = waveOf(there, wave.speaker);
        expect(distance(twin.centre, mirrorY(wave.centre))).toBeLessThan(1e-9);
        expect(Math.abs(twin.start - wave.start)).toBeLessThan(1e-6);
      }
      for (const reach of here.reaches) {
        if (reach.comes === 'round') blocked++;
        const at = reach.at === 'head' ? 'head' : reach.at === 'left' ? 'right' : 'left';
        const twin = reachOf(there, reach.speaker, at);
        expect(twin.comes).toBe(reach.comes);
        expect(Math.abs(twin.time - reach.time)).toBeLessThan(1e-6);
      }
    }),
    { numRuns: 80, seed: 5 },
  );
  expect(blocked).toBeGreaterThan(20);
});
