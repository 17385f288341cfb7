import { PerspectiveCamera } from 'three';
import { beforeEach, describe, expect, it } from 'vitest';
import { type Arrival, evaluatePlan, type Reflection, type Vec3 } from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import { inTheWayOf, reflectingArrivals } from '../../src/scene/attention';
import { imageWants } from '../../src/scene/words/image-words';
import { alongWay, lineWants } from '../../src/scene/words/line-words';
import { reflectionWants } from '../../src/scene/words/reflection-words';
import type { WordsFrame } from '../../src/scene/words/want';
import { sessionStore } from '../../src/store';

const plan = demoPlan();
const answer = evaluatePlan(plan);
if (!answer.ok) throw new Error(answer.error.message);
const seat = answer.options[1]?.seats[0];
if (!seat) throw new Error('the demo has no seat');
const among = plan.options[1]?.speakers ?? [];
const arrivalOf = (speaker: string): Arrival => {
  const found = seat.arrivals.find((one) => one.speaker === speaker);
  if (!found) throw new Error(`no arrival of ${speaker}`);
  return found;
};
const frame: WordsFrame = {
  camera: new PerspectiveCamera(),
  size: { width: 800, height: 600 },
  cabin: answer.cabin,
  seat,
  hovered: null,
  among,
};
const WAY: Vec3[] = [
  [0, 0, 0],
  [1000, 0, 0],
];
const said = (arrival: Arrival, more: Partial<Parameters<typeof lineWants>[1][number]> = {}) => {
  const line = { speaker: arrival.speaker, way: WAY, arrival, cross: null, bends: [], pass: null };
  return lineWants(frame, [{ ...line, ...more }]);
};
const words = (arrival: Arrival) => said(arrival).find(({ kind }) => kind === 'length')?.text;

beforeEach(() => sessionStore.setState({ selection: null, lengthUnit: 'mm' }));

describe('the words on a line', () => {
  const bent: Arrival = {
    ...arrivalOf('midrange-left'),
    line: 'blocked',
    path: 1298.4,
    detour: 38.2,
    round: ['steering-wheel'],
  };
  const choose = (id: string) => sessionStore.setState({ selection: { kind: 'speaker', id } });

  it('are its length and what becomes of it, until its speaker is looked at', () => {
    expect(words(bent)).toBe('1298 mm, blocked');
    expect(words({ ...bent, line: 'clear' })).toBe('1298 mm');
    expect(words({ ...bent, line: 'grazing' })).toBe('1298 mm, near miss');
  });

  it('then say what it goes round, and how much longer that is', () => {
    choose('midrange-left');
    expect(words(bent)).toBe('1298 mm\nround the steering wheel, +38 mm');
    expect(words({ ...bent, detour: 0.94 })).toBe('1298 mm\nround the steering wheel, +0.9 mm');
    sessionStore.setState({ lengthUnit: 'in' });
    expect(words(bent)).toBe('51.12 in\nround the steering wheel, +1.50 in');
  });

  it('tell the listener’s own knees from those of others', () => {
    choose('midrange-left');
    const own = { ...bent, round: ['occupant-front-left-left-thigh'] };
    expect(words(own)).toContain("round the listener's left thigh, +38 mm");
    const others = ['occupant-front-right-left-arm', 'steering-wheel'];
    expect(words({ ...bent, round: others })).toContain(
      'round the left arm (front right) and 1 more, +38 mm',
    );
  });

  it('say what a line passes closely, and what blocks one that has no way round', () => {
    choose('midrange-left');
    const grazedBy = ['binnacle', 'steering-wheel'];
    expect(words({ ...bent, line: 'grazing', grazedBy })).toMatch(/\nclose past the .*binnacle/);
    const shut = { ...bent, detour: null, round: [], blockedBy: ['steering-wheel'] };
    expect(words(shut)).toBe('1298 mm\nblocked by the steering wheel');
  });

  it('come with a mark where it is blocked, at each bend, and where it passes closely', () => {
    const bends: Vec3[] = [
      [1, 2, 3],
      [4, 5, 6],
    ];
    const pass = { onLine: WAY[0] as Vec3, onBody: WAY[1] as Vec3 };
    const kinds = said(bent, { cross: [0, 0, 0], bends, pass }).map(({ kind }) => kind);
    expect(kinds.sort()).toEqual(['bend', 'bend', 'cross', 'length', 'pass']);
  });

  it('stand along the way as it is drawn, bends and all', () => {
    const way: Vec3[] = [
      [0, 0, 0],
      [100, 0, 0],
      [100, 300, 0],
    ];
    expect(alongWay(way, 0.25)).toEqual([100, 0, 0]);
    expect(alongWay(way, 0.5)).toEqual([100, 100, 0]);
    expect(alongWay(way, 1)).toEqual([100, 300, 0]);
  });
});

describe('the words on reflections', () => {
  const one = (panel: string, levelDb: number | null): Reflection => ({
    panel,
    point: [0, 0, 0],
    path: 1200,
    extra: 210,
    extraTime: 0.612,
    levelDb,
    firstNotchHz: 817,
  });

  it('stand at the strongest three, and every point has its mark', () => {
    const shown = [
      one('screen', -2.14),
      one('roof', -5),
      one('dash-top-left', -6),
      one('kick-left', null),
    ].map((reflection, rank) => ({ speaker: 's', reflection, rank, first: rank === 0 }));
    const wants = reflectionWants(frame, shown);
    expect(wants.filter(({ kind }) => kind === 'bounce')).toHaveLength(4);
    const texts = wants.filter(({ kind }) => kind === 'reflection').map(({ text }) => text);
    expect(texts).toHaveLength(3);
    expect(texts[0]).toBe('windscreen, 0.61 ms, −2.1 dB');
  });

  it('are of the chosen speaker, or else of the first pair', () => {
    const ids = (list: readonly Arrival[]) => list.map(({ speaker }) => speaker);
    expect(ids(reflectingArrivals(seat, among, null))).toEqual(['tweeter-left', 'tweeter-right']);
    const over = { kind: 'speaker', id: 'midbass-left' } as const;
    expect(ids(reflectingArrivals(seat, among, over))).toEqual(['midbass-left']);
    sessionStore.setState({ selection: { kind: 'speaker', id: 'midrange-right' } });
    expect(ids(reflectingArrivals(seat, among, over))).toEqual(['midrange-right']);
  });
});

describe('what is lit up', () => {
  it('is what blocks the chosen line and the one pointed at; near misses only the nearest', () => {
    const grazedBy = ['a', 'b', 'c', 'd', 'e'];
    const list: Arrival[] = [
      { ...arrivalOf('midrange-left'), blockedBy: ['x', 'a'], grazedBy: [] },
      { ...arrivalOf('midbass-left'), blockedBy: [], grazedBy },
      { ...arrivalOf('tweeter-left'), blockedBy: ['never'], grazedBy: ['never'] },
    ];
    sessionStore.setState({ selection: { kind: 'speaker', id: 'midrange-left' } });
    const lit = inTheWayOf(list, { kind: 'speaker', id: 'midbass-left' });
    expect([...lit.blocking]).toEqual(['x', 'a']);
    expect([...lit.grazed]).toEqual(['b', 'c']);
    expect(inTheWayOf(list, null).grazed.size).toBe(0);
  });
});

describe('the words on the image', () => {
  it('name the octaves, the side and whether delays are on', () => {
    const at: Vec3 = [0, 0, 0];
    const label = { deg: 0, at, from: at, also: [] };
    const group = (lowHz: number, highHz: number, deg: number, atLimit = false) => ({
      ...label,
      group: { lowHz, highHz, deg, atLimit },
    });
    const labels = [
      { kind: 'on' as const, ...group(63, 250, 13.4) },
      { kind: 'on' as const, ...group(500, 2000, -8.6) },
      { kind: 'off' as const, ...group(1000, 1000, -90, true) },
      { kind: 'degrees' as const, ...label, deg: -30 },
    ];
    const shown = { fan: { strokes: [], labels }, faded: false };
    const texts = imageWants(frame, shown, false).map(({ text }) => text);
    expect(texts.slice(1)).toEqual([
      '63–250 Hz: 13° R',
      '500 Hz – 2 kHz: 9° L',
      '1 kHz: 90° L or more, without',
      '30°',
    ]);
    expect(texts[0]).toContain('dashed without');
    expect(imageWants(frame, null, true)[0]?.text).toContain('Plan or Free');
    expect(imageWants(frame, null, false)).toEqual([]);
  });
});
