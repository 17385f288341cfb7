/** A whole tune there and back: delays, gains, polarity and crossovers of every channel. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type DelayExport,
  type DelayStep,
  largestInMs,
  lengthStep,
  type ReadTune,
  readTuneCsv,
  readTuneJson,
  readTuneText,
  stepName,
  toCsv,
  toJson,
  toText,
} from '../../src/exchange';
import type { CrossoverInput, SpeakerInput } from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import { delaysOf, type SamplePlan, samplePlan } from './sample';

/** Three pairs with a hand-over of order 2 below and of order 4 above. */
function threeWay(change: Partial<SpeakerInput>[] = []): SamplePlan {
  const plan = samplePlan([1400, 1700, 1000, 1300, 900, 1200], change);
  const crossovers: CrossoverInput[] = [
    { below: 'pair-0', above: 'pair-1', family: 'butterworth', order: 2, frequencyHz: 250.5 },
    { below: 'pair-1', above: 'pair-2', family: 'linkwitz-riley', order: 4, frequencyHz: 2800 },
  ];
  return { ...plan, options: plan.options.map((option) => ({ ...option, crossovers })) };
}

const channelsIn = (read: ReadTune) => {
  if (!read.ok) throw new Error(read.message);
  return read.channels;
};

/** That the file says what the export says, each number to within so much. */
function same(read: ReadTune, all: DelayExport, ms: number, db: number, hz: number) {
  const channels = channelsIn(read);
  expect(channels.map(({ speaker }) => speaker)).toEqual(all.rows.map(({ speaker }) => speaker));
  for (const [i, row] of all.rows.entries()) {
    const channel = channels[i];
    if (!channel) throw new Error('no channel');
    expect(Math.abs(channel.delayMs - row.delay.ms)).toBeLessThanOrEqual(ms);
    expect(Math.abs(channel.roundedMs - row.rounded.ms)).toBeLessThanOrEqual(ms);
    expect(Math.abs(channel.gainDb - row.gainDb)).toBeLessThanOrEqual(db);
    expect([channel.clamped, channel.inverted]).toEqual([row.clamped, row.inverted]);
    for (const end of ['highPass', 'lowPass'] as const) {
      const [got, want] = [channel[end], row[end]];
      expect([got?.family, got?.order]).toEqual([want?.family, want?.order]);
      if (got && want) expect(Math.abs(got.frequencyHz - want.frequencyHz)).toBeLessThanOrEqual(hz);
    }
  }
}

describe('the filters of each channel', () => {
  test('are those of the hand-overs on either side of its pair', () => {
    const { rows } = delaysOf(threeWay());
    const low = { family: 'butterworth', order: 2, frequencyHz: 250.5, proposed: false };
    const high = { family: 'linkwitz-riley', order: 4, frequencyHz: 2800, proposed: false };
    const filters = rows.map(({ highPass, lowPass }) => ({ highPass, lowPass }));
    for (const side of [0, 1]) {
      expect(filters[side]).toEqual({ highPass: null, lowPass: low });
      expect(filters[2 + side]).toEqual({ highPass: low, lowPass: high });
      expect(filters[4 + side]).toEqual({ highPass: high, lowPass: null });
    }
    // Order 2 swaps the poles of all that stand above it.
    expect(rows.map(({ inverted }) => inverted)).toEqual([false, false, true, true, true, true]);
  });

  test('proposed ones say so in every file', () => {
    const all = delaysOf(demoPlan());
    const tweeter = all.rows.find(({ role }) => role === 'tweeter');
    expect(tweeter?.highPass?.proposed).toBe(all.crossovers.at(-1)?.proposed);
    expect(toJson(all)).toContain('"proposed": ');
    expect(toCsv(all)).toMatch(/,(proposed from the bands|set in the plan),/);
  });

  test('without a pair there is none', () => {
    const { rows } = delaysOf(samplePlan([1000, 1200], [{ pair: undefined }, { pair: undefined }]));
    expect(rows.map(({ highPass, lowPass }) => [highPass, lowPass])).toEqual([
      [null, null],
      [null, null],
    ]);
  });
});

describe('a tune read back from its file', () => {
  const STEPS: [string, DelayStep, number | undefined][] = [
    ['samples', { kind: 'samples', rateHz: 96000 }, undefined],
    ['ms', { kind: 'time', ms: 0.02 }, 1.5],
    ['cm', lengthStep(1, 'cm'), undefined],
    ['inches', lengthStep(0.25, 'in'), 2],
  ];
  test.each(STEPS)(
    'in steps of %s it is what was written, in all three forms',
    (_, step, largestMs) => {
      for (const plan of [threeWay(), demoPlan()]) {
        const all = delaysOf(plan, { step, largestMs });
        same(readTuneJson(toJson(all)), all, 0, 0, 0);
        same(readTuneCsv(toCsv(all)), all, 0.5001e-4, 0.5001e-2, 0.0501);
        same(readTuneText(toText(all)), all, 0.56e-3, 0.5001e-2, 0.0501);
      }
    },
  );

  test('for a compromise over seats too', () => {
    const seats = ['front-left', 'front-right'].map((id) => ({ id, weight: 1 }));
    const all = delaysOf(demoPlan(), { for: { by: 'seats', seats } });
    expect(all.by).toBe('seats');
    same(readTuneJson(toJson(all)), all, 0, 0, 0);
    same(readTuneCsv(toCsv(all)), all, 0.5001e-4, 0.5001e-2, 0.0501);
    same(readTuneText(toText(all)), all, 0.56e-3, 0.5001e-2, 0.0501);
  });

  test('names with brackets, numbers and words of the table come back from text', () => {
    const names = ['a (b) (c)', '1  2  3', 'normal  SWAPPED', ') 4 0.1 (', 'none  none'];
    const all = delaysOf(threeWay(names.map((id) => ({ id }))), { largestMs: 0.3 });
    expect(channelsIn(readTuneText(toText(all))).map(({ speaker }) => speaker)).toEqual([
      ...names,
      'speaker-5',
    ]);
    same(readTuneText(toText(all)), all, 0.56e-3, 0.5001e-2, 0.0501);
  });

  test.each([
    ['swapped,', 'upside,', 'line 4: polarity is normal or swapped, got "upside"'],
    [
      'Butterworth,2,',
      'Tschebyscheff,2,',
      'line 2: low_pass is Butterworth or Linkwitz-Riley, got "Tschebyscheff"',
    ],
    [
      'Butterworth,2,',
      'Butterworth,some,',
      'line 2: low_pass_order is a whole number above 0, got "some"',
    ],
    ['2,250.5,', '2,-1,', 'line 2: low_pass_hz is a number above 0, got "-1"'],
    ['polarity,', 'poles,', 'line 1: there is no column polarity'],
  ])('a CSV with "%s" made "%s" is refused with its line', (from, to, message) => {
    expect(readTuneCsv(toCsv(delaysOf(threeWay())).replace(from, to))).toEqual({
      ok: false,
      message,
    });
  });

  test.each([
    ['"inverted": false', '"inverted": "no"', 'rows[0].inverted: must be true or false'],
    [
      '"order": 2',
      '"order": 0',
      'rows[0].lowPass: must be null, or a family, an order and a frequencyHz',
    ],
    [
      '"highPass": null',
      '"highPass": "none"',
      'rows[0].highPass: must be null, or a family, an order and a frequencyHz',
    ],
    ['"version": 1', '"version": 9', 'version: must be 1, got 9'],
  ])('a JSON with %s made %s is refused with its path', (from, to, message) => {
    expect(readTuneJson(toJson(delaysOf(threeWay())).replace(from, to))).toEqual({
      ok: false,
      message,
    });
  });

  test('a text whose tables were torn is refused, or read as it stands', () => {
    const text = toText(delaysOf(threeWay()));
    expect(readTuneText('hello')).toMatchObject({ ok: false });
    expect(readTuneText(text.replace('high-pass', 'high'))).toMatchObject({ ok: false });
    expect(readTuneText(text.replace(' at 2800 Hz', ''))).toMatchObject({ ok: false });
    fc.assert(
      fc.property(fc.nat(text.length), fc.string({ maxLength: 3 }), (at, put) => {
        const read = readTuneText(text.slice(0, at) + put + text.slice(at + put.length));
        if (!read.ok) expect(read.message.length).toBeGreaterThan(10);
        else for (const one of read.channels) expect(Number.isFinite(one.delayMs)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });
});

describe('what the processor offers', () => {
  test('steps of length are named as it counts them', () => {
    const names = [lengthStep(1, 'cm'), lengthStep(0.25, 'in'), lengthStep(5, 'mm')].map(stepName);
    expect(names).toEqual(['1 cm', '0.25 in', '5 mm']);
    expect(stepName({ kind: 'length', mm: 10 })).toBe('10 mm');
  });

  test('a largest delay in samples, cm or inches is the same time', () => {
    const speed = 343.2;
    expect(largestInMs(960, { kind: 'samples', rateHz: 48000 }, speed)).toBe(20);
    expect(largestInMs(8, { kind: 'time', ms: 0.1 }, speed)).toBe(8);
    expect(Math.abs(largestInMs(343.2, lengthStep(1, 'cm'), speed) - 10)).toBeLessThan(1e-12);
    expect(Math.abs(largestInMs(100, lengthStep(1, 'in'), speed) - 2540 / speed)).toBeLessThan(
      1e-12,
    );
  });

  test('the longest delay wanted is told, and whether the processor holds it', () => {
    const plan = samplePlan([1000, 1400]);
    const all = delaysOf(plan, { largestMs: 1 });
    expect(Math.abs(all.longest.mm - 400)).toBeLessThan(1e-9);
    expect(all.fits).toBe(false);
    expect(delaysOf(plan, { largestMs: 2 }).fits).toBe(true);
    expect(delaysOf(plan).fits).toBe(true);
    expect(delaysOf(samplePlan([])).longest.ms).toBe(0);
  });
});
