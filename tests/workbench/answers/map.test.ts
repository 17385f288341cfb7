import { describe, expect, test } from 'vitest';
import {
  buildCabin,
  DOES_NOT_FIT,
  FITS,
  gridSpot,
  type MapQuantity,
  type Panel,
  pointOnPatch,
  type SpotMap,
} from '../../../src/geometry';
import { demoPlan } from '../../../src/plan/demo';
import { levelText } from '../../../src/plan/painted';
import type { PlanOption } from '../../../src/plan/types';
import { bestSpot } from '../../../src/workbench/answers/map/best-spot';
import { readingText, valueText } from '../../../src/workbench/answers/map/map-quantities';
import {
  FIRST_CHOICE,
  mapKey,
  mapRequest,
  triedSpeaker,
} from '../../../src/workbench/answers/map/map-request';
import { bestWords, fitCount, fitSentence } from '../../../src/workbench/answers/map/map-words';
import { movedPoint } from '../../../src/workbench/answers/map/move-point';
import { niceStep, paintScale } from '../../../src/workbench/answers/map/paint-scale';
import { goesAlong, whoStands } from '../../../src/workbench/answers/map/place-here';
import { widestPair } from '../../../src/workbench/answers/map/widest-pair';

function mapOf(
  values: readonly number[],
  quantity: MapQuantity = 'difference',
  fit: readonly number[] = [],
): SpotMap {
  return {
    panels: [{ panel: 'dash-top-left', columns: values.length, rows: 1, first: 0 }],
    done: new Uint8Array(values.length).fill(1),
    fit: Uint8Array.from(values, (_, k) => fit[k] ?? FITS),
    values: { [quantity]: Float64Array.from(values) },
  };
}

const upTo = (most: number) => Array.from({ length: 101 }, (_, k) => (k / 100) * most);

describe('the scale of a painted map', () => {
  test('steps are 1, 2 or 5 times a power of ten, and never below what is asked', () => {
    for (const size of [0.003, 0.7, 1, 1.01, 2, 3, 5, 7, 10, 42, 99, 1234]) {
      const step = niceStep(size);
      expect(step).toBeGreaterThanOrEqual(size * (1 - 1e-9));
      expect(step).toBeLessThan(2.6 * size);
      const digit = Number(step.toExponential().split('e')[0]);
      expect([1, 2, 5].some((k) => Math.abs(digit - k) < 1e-9)).toBe(true);
    }
  });

  test('lines run at round millimetres, nine bands at most, from nought where nought is near', () => {
    for (const most of [3, 47, 130, 283, 900, 2222]) {
      const scale = paintScale(mapOf(upTo(most)), 'difference', 'mm');
      if (!scale) throw new Error('no scale');
      const { range, levels } = scale;
      expect(range[0]).toBe(0);
      expect(range[1]).toBeGreaterThan(0.95 * most);
      expect(levels.length).toBeGreaterThanOrEqual(3);
      expect(levels.length).toBeLessThanOrEqual(9);
      const step = levels[0] as number;
      expect(niceStep(step)).toBe(step);
      for (const [k, level] of levels.entries())
        expect(Math.abs(level - (k + 1) * step)).toBeLessThan(1e-9);
    }
  });

  test('in inches the lines run at round inches', () => {
    const scale = paintScale(mapOf(upTo(500)), 'difference', 'in');
    expect(scale?.levels.map((level) => levelText('difference', level, 'in'))).toEqual([
      '5',
      '10',
      '15',
    ]);
    expect(levelText('difference', 2.5 * 25.4, 'in')).toBe('2.5');
    expect(levelText('offAxisDeg', 20, 'in')).toBe('20');
  });

  test('a difference counts by its size', () => {
    const scale = paintScale(mapOf(upTo(500).map((x) => -x)), 'difference', 'mm');
    expect(scale?.range).toEqual([0, 500]);
  });

  test('spots that do not fit do not set the scale, and it is told that they lie beyond it', () => {
    const values = [...upTo(90), ...upTo(5000)];
    const fit = values.map((_, k) => (k > 100 ? DOES_NOT_FIT : FITS));
    const scale = paintScale(mapOf(values, 'difference', fit), 'difference', 'mm');
    expect(scale?.range).toEqual([0, 90]);
    expect(scale?.above).toBe(true);
    expect(scale?.below).toBe(false);
  });

  test('where nothing is near nought the colours begin where the values do', () => {
    const values = upTo(1).map((x) => 40 + 20 * x);
    const scale = paintScale(mapOf(values, 'offAxisDeg'), 'offAxisDeg', 'mm');
    expect(scale?.range[0]).toBe(40);
  });

  test('without a number there is no scale; with one alone there is', () => {
    expect(paintScale(mapOf([Number.NaN]), 'difference', 'mm')).toBeNull();
    const scale = paintScale(mapOf(upTo(0)), 'obstructionDb', 'mm');
    expect(scale).toBeNull();
    const flat = paintScale(mapOf(upTo(0), 'obstructionDb'), 'obstructionDb', 'mm');
    expect(flat && flat.range[1] > flat.range[0]).toBe(true);
  });
});

describe('the words of a painted map', () => {
  test('numbers carry their unit, a difference which side is later', () => {
    expect(valueText('difference', 283.4, 'mm')).toBe('283 mm');
    expect(valueText('difference', 283, 'in')).toBe('11.14 in');
    expect(valueText('offAxisDeg', 31.2, 'mm')).toBe('31°');
    expect(valueText('obstructionDb', 2.44, 'mm')).toBe('2.4 dB');
    expect(valueText('blend', 0.853, 'mm')).toBe('0.85');
    expect(readingText('difference', -283, 'mm')).toBe('−283 mm, right later');
    expect(readingText('difference', 12, 'mm')).toBe('+12 mm, left later');
    expect(readingText('difference', 0.2, 'mm')).toBe('0 mm');
    expect(readingText('firstReflectionTime', null, 'mm')).toBe('none');
  });

  test('the best spot is told with what it is now', () => {
    const best = { panel: 'left dash top', value: 12.3 };
    const where = { fits: true, usualFor: 'mids' };
    expect(bestWords('difference', best, 283, where, 'mm')).toBe(
      'Least difference where it fits, on panels usual for mids: left dash top, 12 mm; here 283 mm.',
    );
    expect(bestWords('offAxisDeg', best, null, { fits: false, usualFor: null }, 'mm')).toBe(
      'Smallest angle outside the places kept clear, on any panel: left dash top, 12°.',
    );
  });

  test('a sentence of the fit is said in the unit the user reads', () => {
    expect(fitSentence('4 mm too deep for the left A-pillar', 'mm')).toBe(
      '4 mm too deep for the left A-pillar.',
    );
    expect(fitSentence('reaches 25.4 mm along its axis into the wheel', 'in')).toBe(
      'Reaches 1.00 in along its axis into the wheel.',
    );
    expect(fitSentence('12 mm into "30 mm box"', 'in')).toBe('0.47 in into "30 mm box".');
    expect(fitSentence('reaches 42 mm along its axis into the right midrange', 'mm')).toBe(
      'Reaches 42 mm along its axis into the right mid.',
    );
  });

  test('how many spots fit is counted', () => {
    const map = mapOf([1, 2, 3, 4], 'difference', [FITS, DOES_NOT_FIT, 3, FITS]);
    expect(fitCount(map)).toBe('Fits at 2 of 4 spots; 1 are kept clear.');
  });
});

describe('the best spot', () => {
  const any = () => true;
  const spot = (k: number) => gridSpot({ panel: 'dash-top-left', columns: 5, rows: 1 }, k);

  test('is the smallest difference of either sign among those that fit', () => {
    const map = mapOf([80, -5, 3, -20, 40], 'difference', [FITS, FITS, DOES_NOT_FIT, FITS, FITS]);
    expect(bestSpot(map, 'difference', any, any, () => 0)).toEqual({
      number: 1,
      spot: spot(1),
      value: 5,
    });
  });

  test('is the latest first reflection, where that is painted', () => {
    const map = mapOf([0.5, 2, Number.NaN, 1, 0.1], 'firstReflectionTime');
    expect(bestSpot(map, 'firstReflectionTime', any, any, () => 0)?.value).toBe(2);
  });

  test('goes on to the next where the twin would be in the way', () => {
    const map = mapOf([80, -5, 3, -20, 40]);
    const fits = ({ u }: { u: number }) => u > 0.6;
    expect(bestSpot(map, 'difference', any, fits, () => 0)?.number).toBe(3);
  });

  test('among equals is the nearest', () => {
    const map = mapOf([0, 0, 0, 0, 0], 'obstructionDb');
    expect(bestSpot(map, 'obstructionDb', any, any, ({ u }) => Math.abs(u - 0.72))?.number).toBe(3);
  });

  test('is none where it fits nowhere, or on no panel asked for', () => {
    const map = mapOf([1, 2, 3]);
    expect(
      bestSpot(
        map,
        'difference',
        any,
        () => false,
        () => 0,
      ),
    ).toBeNull();
    expect(
      bestSpot(
        map,
        'difference',
        () => false,
        any,
        () => 0,
      ),
    ).toBeNull();
  });
});

describe('what the engine is asked', () => {
  const plan = demoPlan();
  const built = buildCabin(plan);
  if (!built.ok) throw new Error(built.error.message);
  const { cabin } = built;
  const [option] = plan.options as [PlanOption];
  const stage = { plan, cabin, option };
  const left = option.speakers.find(({ id }) => id === 'midrange-left');
  const right = option.speakers.find(({ id }) => id === 'midrange-right');
  if (!left || !right) throw new Error('the demo has mids');

  test('the seat in view counts while none is chosen; seats the car lacks do not', () => {
    const asked = (seats: string[] | null) =>
      mapRequest(stage, left, { ...FIRST_CHOICE, seats }, 'front-right').seats;
    expect(asked(null)).toEqual(['front-right']);
    expect(asked(['rear-left', 'roof-rack'])).toEqual(['rear-left']);
    expect(asked(['roof-rack'])).toEqual(['front-right']);
  });

  test('a partner that is gone, or the speaker itself, is none', () => {
    const asked = (partner: string) =>
      mapRequest(stage, left, { ...FIRST_CHOICE, partner }, 'front-left').partner;
    expect(asked('midrange-right')).toBe('midrange-right');
    expect(asked('midrange-left')).toBeUndefined();
    expect(asked('gone')).toBeUndefined();
  });

  test('where the pair itself stands does not matter, where others stand and what it is do', () => {
    const request = mapRequest(stage, left, FIRST_CHOICE, 'front-left');
    const keyWith = (change: (speaker: (typeof option.speakers)[number]) => object) =>
      mapKey(
        {
          plan,
          option: { ...option, speakers: option.speakers.map((s) => ({ ...s, ...change(s) })) },
        },
        request,
      );
    const same = mapKey(stage, request);
    const moved = { mount: { ...left.mount, panel: 'kick-left', u: 0.3, v: 0.3 } };
    expect(keyWith((s) => (s.id === 'midrange-left' ? moved : {}))).toBe(same);
    expect(keyWith((s) => (s.id === 'tweeter-left' ? moved : {}))).not.toBe(same);
    expect(keyWith((s) => (s.id === 'midrange-left' ? { aim: { kind: 'normal' } } : {}))).not.toBe(
      same,
    );
    expect(mapKey({ ...stage, plan: { ...plan, title: 'x' } as typeof plan }, request)).toBe(same);
    const seats = [{ id: 'front-left', slide: 40 }];
    expect(mapKey({ ...stage, plan: { ...plan, seats } as typeof plan }, request)).not.toBe(same);
    const partner = mapRequest(stage, left, { ...FIRST_CHOICE, partner: right.id }, 'front-left');
    const before = mapKey(stage, partner);
    const speakers = option.speakers.map((s) => (s.id === right.id ? { ...s, ...moved } : s));
    expect(mapKey({ plan, option: { ...option, speakers } }, partner)).not.toBe(before);
  });

  test('of a tied pair the left is tried, of an untied one the one selected', () => {
    const group = { id: 'midrange', members: [left, right] as const };
    expect(triedSpeaker(option, group, right.id)).toBe(left);
    expect(triedSpeaker({ ...option, untied: ['midrange'] }, group, right.id)).toBe(right);
    expect(triedSpeaker({ ...option, untied: ['midrange'] }, group, null)).toBe(left);
  });

  test('on the right-hand side the right speaker stands, and its tied twin goes along', () => {
    expect(whoStands(option, left, 'right')).toBe(right);
    expect(whoStands(option, left, 'left')).toBe(left);
    expect(whoStands(option, left, null)).toBe(left);
    expect(goesAlong(option, left)).toBe(true);
    expect(goesAlong({ ...option, untied: ['midrange'] }, left)).toBe(false);
  });

  test('the pair farthest apart is proposed', () => {
    const pair = (name: string, difference: number | null) => ({
      pair: name,
      difference,
      differenceTime: null,
      levelDifferenceDb: null,
    });
    expect(widestPair({ pairs: [pair('a', 20), pair('b', -300), pair('c', null)] })).toBe('b');
    expect(widestPair(null)).toBeNull();
  });

  test('arrow keys move the point as on a map, one spot each, and stop at the edge', () => {
    const dash = cabin.panels.find(({ id }) => id === 'dash-top-right');
    const door = cabin.panels.find(({ id }) => id === 'door-lower-left');
    if (!dash || !door) throw new Error('the demo has a dash and doors');
    const start = 4 * 9 + 4;
    const way = (panel: typeof dash, arrow: Parameters<typeof movedPoint>[3]) => {
      const grid = { panel: panel.id, columns: 9, rows: 9, first: 0 };
      const next = movedPoint(panel, grid, start, arrow);
      const from = place(panel, grid, start);
      const to = place(panel, grid, next);
      return [to[0] - from[0], to[1] - from[1], to[2] - from[2]] as const;
    };
    expect(way(dash, 'ArrowRight')[1]).toBeGreaterThan(0);
    expect(way(dash, 'ArrowLeft')[1]).toBeLessThan(0);
    expect(way(dash, 'ArrowUp')[0]).toBeLessThan(0);
    expect(way(door, 'ArrowUp')[2]).toBeGreaterThan(0);
    expect(way(door, 'ArrowDown')[2]).toBeLessThan(0);
    expect(way(door, 'ArrowRight')[0]).toBeGreaterThan(0);
    const grid = { panel: dash.id, columns: 9, rows: 9, first: 0 };
    let cell = start;
    for (let n = 0; n < 20; n++) cell = movedPoint(dash, grid, cell, 'ArrowRight');
    expect(movedPoint(dash, grid, cell, 'ArrowRight')).toBe(cell);
  });
});

const place = (panel: Panel, grid: Parameters<typeof gridSpot>[0], cell: number) => {
  const { u, v } = gridSpot(grid, cell);
  return pointOnPatch(panel.patch, u, v);
};
