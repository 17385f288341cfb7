import { describe, expect, it } from 'vitest';
import {
  type Arrival,
  evaluatePlan,
  type OptionResult,
  type PlanInput,
  type SpeakerInput,
  TEMPLATES,
  type Vec3,
} from '../../../src/geometry';

const other = (words: string) =>
  words.replace(/left|right/g, (side) => (side === 'left' ? 'right' : 'left'));
const flipped = ([x, y, z]: Vec3): Vec3 => [x, y === 0 ? 0 : -y, z];

/** Speakers all over the cabin, none of them where the footrest's side decides. */
const SPEAKERS: readonly SpeakerInput[] = [
  on('pillar-left', 0.5, 0.3, 12),
  on('dash-top-right', 0.7, 0.5, 20),
  on('kick-left', 0.5, 0.5, 0),
  on('kick-right', 0.4, 0.6, 3),
  on('door-lower-left', 0.25, 0.4, 5),
  on('door-upper-right', 0.3, 0.5, 0),
  on('dash-top-center', 0.3, 0.4, 15),
  on('screen', 0.6, 0.2, 10),
  {
    id: 'free-left',
    role: 'midrange',
    pair: 'free',
    side: 'left',
    position: [150, -420, 560],
    aim: { kind: 'direction', direction: [1, 0.4, 0.3] },
  },
  {
    id: 'free-right',
    role: 'midrange',
    pair: 'free',
    side: 'right',
    position: [150, 400, 520],
    aim: { kind: 'point', point: [900, -100, 900] },
  },
];

function on(panel: string, u: number, v: number, standoff: number): SpeakerInput {
  return { id: `on-${panel}`, role: 'midbass', mount: { panel, u, v, standoff } };
}

/** Panels that lie across the middle run from left to right, so their mirror image is at 1 − u. */
const ACROSS = new Set(['dash-top-center', 'screen']);

function mirrored(speaker: SpeakerInput): SpeakerInput {
  const { mount, aim, position, pair, side } = speaker;
  return {
    ...speaker,
    id: other(speaker.id),
    ...(pair && side && { pair, side: side === 'left' ? 'right' : 'left' }),
    ...(position && { position: flipped(position) }),
    ...(mount && {
      mount: {
        ...mount,
        panel: other(mount.panel),
        u: ACROSS.has(mount.panel) ? 1 - mount.u : mount.u,
      },
    }),
    ...(aim?.kind === 'direction' && { aim: { ...aim, direction: flipped(aim.direction) } }),
    ...(aim?.kind === 'point' && { aim: { ...aim, point: flipped(aim.point) } }),
  };
}

function plan(template: string, wheelSide: 'left' | 'right', speakers: readonly SpeakerInput[]) {
  const side = wheelSide;
  const far = side === 'left' ? 'right' : 'left';
  return {
    air: { temperatureC: 20, relativeHumidityPercent: 50, pressureKPa: 101.325 },
    cabin: { template, wheelSide },
    seats: [
      { id: `front-${side}`, slide: -30, reclineDeg: 2 },
      { id: `front-${far}`, occupantHeight: 1850, slide: -80 },
    ],
    options: [{ id: 'a', speakers }],
    alignment: { sampleRateHz: 48000 },
  } satisfies PlanInput;
}

function resultOf(input: PlanInput): OptionResult {
  const answer = evaluatePlan(input);
  if (!answer.ok) throw new Error(`${answer.error.path}: ${answer.error.message}`);
  return answer.options[0] as OptionResult;
}

const negative = (x: number | null) => (x === null ? null : -x);

function mirroredArrival(a: Arrival): Arrival {
  const ear = (e: Arrival['ears']['left']) => ({
    ...e,
    blockedBy: e.blockedBy.map(other),
    grazedBy: e.grazedBy.map(other),
  });
  return {
    ...a,
    speaker: other(a.speaker),
    offAxisHorizontalDeg: negative(a.offAxisHorizontalDeg),
    blockedBy: a.blockedBy.map(other),
    grazedBy: a.grazedBy.map(other),
    round: a.round.map(other),
    ...(a.reasons && { reasons: a.reasons.map(other) }),
    way: a.way.map(flipped),
    reflections: a.reflections.map((r) => ({
      ...r,
      panel: other(r.panel),
      point: flipped(r.point),
    })),
    ears: { left: ear(a.ears.right), right: ear(a.ears.left) },
  };
}

/** The footrest lies left of the pedals in both, so what it and its neighbour reflect differs. */
const offTheFootrest = (arrival: Arrival): Arrival => ({
  ...arrival,
  reflections: arrival.reflections.filter(({ panel }) => !/^(footrest|toe-board)-/.test(panel)),
});

/** Numbers equal to a nanometre (or a millionth of a degree or dB), words to the letter. */
function expectSame(got: unknown, wanted: unknown, at: string): void {
  if (typeof wanted === 'number' && typeof got === 'number')
    expect(Math.abs(got - wanted), `${at}: ${got} against ${wanted}`).toBeLessThan(1e-6);
  else if (wanted !== null && typeof wanted === 'object' && got !== null) {
    expect(Object.keys(got as object).sort(), at).toEqual(Object.keys(wanted).sort());
    for (const [key, value] of Object.entries(wanted))
      expectSame((got as Record<string, unknown>)[key], value, `${at}.${key}`);
  } else expect(got, at).toBe(wanted);
}

describe('a right-hand-drive car is the mirror image of its left-hand-drive twin', () => {
  for (const { id } of TEMPLATES) {
    it(`in every arrival, difference and delay: ${id}`, () => {
      const left = resultOf(plan(id, 'left', SPEAKERS));
      const right = resultOf(plan(id, 'right', SPEAKERS.map(mirrored)));
      expect(right.seats).toHaveLength(2);
      // At least one line is blocked, so that names are compared as well.
      expect(left.seats.some((s) => s.arrivals.some((a) => a.line === 'blocked'))).toBe(true);
      for (const [i, seat] of left.seats.entries()) {
        const twin = right.seats[i];
        expect(twin?.id).toBe(other(seat.id));
        expectSame(twin?.head, flipped(seat.head), `${seat.id}.head`);
        expectSame(
          twin?.arrivals.map(offTheFootrest),
          seat.arrivals.map(mirroredArrival).map(offTheFootrest),
          seat.id,
        );
        expectSame(
          twin?.delays,
          seat.delays.map((d) => ({ ...d, speaker: other(d.speaker) })),
          `${seat.id}.delays`,
        );
        expectSame(
          twin?.pairs,
          seat.pairs.map((p) => ({
            ...p,
            difference: negative(p.difference),
            differenceTime: negative(p.differenceTime),
            levelDifferenceDb: negative(p.levelDifferenceDb),
          })),
          `${seat.id}.pairs`,
        );
      }
    });
  }

  it('but the footrest lies to the left of the pedals in both', () => {
    const zonesOf = (wheelSide: 'left' | 'right') => {
      const answer = evaluatePlan(plan('compact-hatch', wheelSide, []));
      if (!answer.ok) throw new Error(answer.error.message);
      const middle = (panelId: string) => {
        const panel = answer.cabin.panels.find((p) => p.id === panelId);
        if (!panel) throw new Error(`no ${panelId}`);
        const ys = panel.patch.control.map((c) => c[1]);
        return (Math.min(...ys) + Math.max(...ys)) / 2;
      };
      return {
        footrest: middle(`footrest-${wheelSide}`),
        toeBoard: middle(`toe-board-${wheelSide}`),
      };
    };
    for (const side of ['left', 'right'] as const) {
      const { footrest, toeBoard } = zonesOf(side);
      expect(footrest, side).toBeLessThan(toeBoard);
    }
  });
});
