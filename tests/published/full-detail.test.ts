/** The published values of a single law, asked of a whole plan: plan in, answer out. */
import { describe, expect, test } from 'vitest';
import {
  type Arrival,
  evaluatePlan,
  type PlanInput,
  type SpeakerInput,
  speedOfSound,
  type Vec3,
} from '../../src/geometry';
import { levelsAt, type Stage, sumsAt } from '../../src/geometry/study';

const AIR = { temperatureC: 20, relativeHumidityPercent: 0, pressureKPa: 101.325 };
const { speed: SPEED } = speedOfSound(AIR);

function stageOf(head: Vec3, speakers: readonly SpeakerInput[], more: Partial<PlanInput> = {}) {
  const plan: PlanInput = {
    air: AIR,
    cabin: { template: 'none', wheelSide: 'left' },
    seats: [{ id: 'seat', head }],
    options: [{ id: 'a', speakers }],
    alignment: { sampleRateHz: 48000 },
    ...more,
  };
  const answer = evaluatePlan(plan);
  if (!answer.ok) throw new Error(answer.error.message);
  const [option, result] = [plan.options[0], answer.options[0]];
  if (!option || !result) throw new Error('no option');
  const stage: Stage = { plan, cabin: answer.cabin, option, result };
  return { stage, first: result.seats[0]?.arrivals[0] as Arrival };
}
const speaker = (position: Vec3, more: Partial<SpeakerInput> = {}): SpeakerInput => ({
  id: 'one',
  role: 'midrange',
  pair: 'mid',
  side: 'left',
  position,
  bandHz: [250, 8000],
  ...more,
});

describe('a screen 4 m high', () => {
  // Source: worked example of the edge formula of Kurze & Anderson (JASA 49, 1971): source 1 m
  // high, screen at 50 m, receiver 1.5 m high at 100 m: δ 0.151 m, about 10.0 dB at 500 Hz and
  // 15.5 dB at 2 kHz.
  const { stage, first } = stageOf([100_000, 0, 1500], [speaker([0, 0, 1000])], {
    cabin: {
      template: 'none',
      wheelSide: 'left',
      panels: [
        {
          id: 'screen',
          corners: [
            [50_000, -60_000, -60_000],
            [50_000, 60_000, -60_000],
            [50_000, 60_000, 4000],
            [50_000, -60_000, 4000],
          ],
        },
      ],
    },
  });
  const at = (hz: number) =>
    first.bands.find(({ frequencyHz }) => frequencyHz === hz)?.obstructionDb ?? Number.NaN;

  test('makes the way 0.151 m longer', () => {
    expect(first).toMatchObject({ line: 'blocked', blockedBy: ['screen'], round: ['screen'] });
    expect(Math.abs(first.path - first.direct - 151)).toBeLessThan(0.5);
  });
  test.each([
    [500, 10.0],
    [2000, 15.5],
  ])('takes at %f Hz about %f dB', (hz, db) => {
    expect(Math.abs(at(hz) - db)).toBeLessThan(0.25);
  });
  test('takes the same in third-octaves', () => {
    const third = levelsAt(stage, 'seat')[0]?.left.find((band) => band.frequencyHz === 2000);
    expect(third?.obstructionDb).toBe(at(2000));
  });
});

describe('a 130 mm diaphragm at 2 kHz', () => {
  // Source: 2J1(x)/x, Beranek & Mellow, Acoustics: −1.586 dB at 30° and −3.281 dB at 45° at
  // 343.2 m/s, where 2 kHz in this plan's air is the same ka as 2 kHz · 343.2/343.36 there.
  test.each([
    [30, -1.586],
    [45, -3.281],
  ])('loses at %f° %f dB', (deg, db) => {
    const angle = (deg * Math.PI) / 180;
    const direction: Vec3 = [Math.cos(angle), Math.sin(angle), 0];
    const aim = { kind: 'direction' as const, direction };
    const { first } = stageOf([1000, 0, 0], [speaker([0, 0, 0], { aim, diaphragm: 130 })]);
    const band = first.bands.find(({ frequencyHz }) => frequencyHz === 2000);
    expect(Math.abs((band?.directivityDb ?? 99) - db)).toBeLessThan(0.005);
  });
});

describe('one floor under a speaker and a listener', () => {
  // Source: image source (Allen & Berkley, JASA 65, 1979) and the first notch c/(2·extra) (Everest
  // & Pohlmann, Master Handbook of Acoustics), computed: source 300 over, receiver 400 over, 1200
  // apart: extra 185.1 mm, −1.242 dB, 514.3 mm along; 927.1 Hz and 0.5393 ms at 343.2 m/s.
  const { first } = stageOf([1200, 0, 400], [speaker([0, 0, 300])], {
    cabin: {
      template: 'none',
      wheelSide: 'left',
      panels: [
        {
          id: 'floor',
          reflectivity: 1,
          corners: [
            [-200, -500, 0],
            [1400, -500, 0],
            [1400, 500, 0],
            [-200, 500, 0],
          ],
        },
      ],
    },
  });
  const [floor] = first.reflections;
  test.each([
    ['extra path, mm', floor?.extra, 185.1, 0.05],
    ['extra time, ms', floor?.extraTime, (0.5393 * 343.2) / SPEED, 0.0001],
    ['first notch, Hz', floor?.firstNotchHz, (927.1 * SPEED) / 343.2, 0.1],
    ['level, dB', floor?.levelDb, -1.242, 0.0005],
    ['place along the floor, mm', floor?.point[0], 514.3, 0.05],
  ])('%s: %f, by the book %f', (_, got, expected, within) => {
    expect(first.reflections).toHaveLength(1);
    expect(Math.abs((got ?? Number.NaN) - expected)).toBeLessThan(within);
  });
});

describe('a tweeter behind its midrange, not delayed', () => {
  // Source: S. H. Linkwitz, J. Audio Eng. Soc. 24 (1976): both halves are −6.02 dB and in phase at
  // the crossover; superposition (Kinsler et al., Fundamentals of Acoustics): φ apart they are
  // 20 lg|cos(φ/2)| from ideal: 60° −1.249, 90° −3.010, 120° −6.021 dB, 180° nothing left.
  const CROSSOVER_HZ = 2000;
  const wavelength = (1000 * SPEED) / CROSSOVER_HZ;
  // The delays are for a seat that is equally far from both, so they are none.
  const sumWith = (phaseDeg: number) => {
    const late = (phaseDeg / 360) * wavelength;
    const far = 100_000;
    const speakers = [
      speaker([-far, 0, 0], { id: 'low', pair: 'mid' }),
      speaker([0, far, 0], { id: 'high', pair: 'top', role: 'tweeter' }),
    ];
    // To the side of both: nearer to the low one by `late`, as far from the high one.
    const seat: Vec3 = [-late, 0, 0];
    const crossover = {
      below: 'mid',
      above: 'top',
      family: 'linkwitz-riley' as const,
      order: 4,
      frequencyHz: CROSSOVER_HZ,
    };
    const { stage } = stageOf([0, 0, 0], speakers, {
      seats: [
        { id: 'aligned', head: [0, 0, 0] },
        { id: 'seat', head: seat },
      ],
      alignment: { seat: 'aligned', sampleRateHz: 48000 },
      options: [{ id: 'a', speakers, crossovers: [crossover] }],
    });
    const sum = sumsAt(stage, 'seat').find(({ side }) => side === 'left');
    return sum?.result?.atCrossover.deviationDb ?? Number.NaN;
  };
  test.each([
    [0, 0],
    [60, -1.249],
    [90, -3.01],
    [120, -6.021],
  ])('%f° late at the crossover it is %f dB from ideal', (phase, db) => {
    expect(Math.abs(sumWith(phase) - db)).toBeLessThan(0.01);
  });
  test('half a wave late there is a null', () => {
    expect(sumWith(180)).toBeLessThan(-55);
  });
});
