import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkDelayStep, type DelayStep, delayExport, stepName } from '../../src/exchange';
import { delaysOf, samplePlan, stageOf } from './sample';

const exported = (distances: number[], step: DelayStep, largestMs?: number) =>
  delaysOf(samplePlan(distances), { step, largestMs });

describe('delays rounded to the step of a processor', () => {
  test('fault 13: the farthest speaker needs no delay, in every unit', () => {
    const { rows } = exported([1400, 1000], { kind: 'samples', rateHz: 48000 });
    expect(rows[0]).toMatchObject({
      delay: { ms: 0, samples: 0, mm: 0, cm: 0, inches: 0 },
      rounded: { steps: 0, ms: 0, samples: 0, mm: 0, cm: 0, inches: 0 },
      residual: { ms: 0, mm: 0 },
      clamped: false,
    });
  });

  // 400 mm at c (by Cramer 343.987): 400 / c · rate, computed by hand to three digits.
  test.each([
    [44100, 51.281, 51],
    [48000, 55.816, 56],
    [96000, 111.632, 112],
    [192000, 223.264, 223],
  ])('fault 13: at %i Hz, 400 mm is %f samples and is set as %i', (rateHz, exact, whole) => {
    const { rows } = exported([1000, 1400], { kind: 'samples', rateHz });
    const row = rows[0];
    expect(Math.abs((row?.delay.samples ?? 0) - exact)).toBeLessThan(0.001);
    expect(row?.rounded.samples).toBe(whole);
    expect(row?.rounded.steps).toBe(whole);
    expect(Math.abs((row?.residual.ms ?? 9) - ((whole - exact) * 1000) / rateHz)).toBeLessThan(
      1e-4,
    );
  });

  test('fault 13: a delay above the largest is set to the most that fits, and flagged', () => {
    const { rows, notes } = exported([1000, 1400], { kind: 'time', ms: 0.02 }, 1.05);
    expect(rows[0]?.clamped).toBe(true);
    expect(rows[0]?.rounded.steps).toBe(52);
    expect(Math.abs((rows[0]?.rounded.ms ?? 0) - 1.04)).toBeLessThan(1e-12);
    expect(rows[1]?.clamped).toBe(false);
    expect(notes.join(' ')).toMatch(/The left mid would need 1\.163 ms but 1\.05 ms is the most/);
  });

  test('fault 13: a largest delay of a whole number of steps is itself reachable', () => {
    // 0.3 / 0.1 is 2.9999… in binary.
    const { rows } = exported([1000, 1400], { kind: 'time', ms: 0.1 }, 0.3);
    expect(rows[0]?.rounded.steps).toBe(3);
  });

  test('fault 13: with no delay possible every early speaker is flagged', () => {
    const { rows } = exported([1000, 1400], { kind: 'time', ms: 0.1 }, 0);
    expect(rows.map((row) => row.clamped)).toEqual([true, false]);
    expect(rows[0]?.rounded.ms).toBe(0);
  });

  test('a step in millimetres is set in whole steps of length', () => {
    const { rows } = exported([1000, 1403], { kind: 'length', mm: 10 });
    expect(rows[0]?.rounded).toMatchObject({ steps: 40, mm: 400, cm: 40 });
    expect(Math.abs((rows[0]?.residual.mm ?? 0) + 3)).toBeLessThan(1e-9);
  });

  test('the same delay reads alike in ms, samples, mm, cm and inches', () => {
    const { rows, speedOfSound } = exported([1000, 1254], { kind: 'samples', rateHz: 48000 });
    const delay = rows[0]?.delay;
    expect(Math.abs((delay?.mm ?? 0) - 254)).toBeLessThan(1e-9);
    expect(Math.abs((delay?.cm ?? 0) - 25.4)).toBeLessThan(1e-10);
    expect(Math.abs((delay?.inches ?? 0) - 10)).toBeLessThan(1e-11);
    expect(Math.abs((delay?.ms ?? 0) - 254 / speedOfSound)).toBeLessThan(1e-12);
  });

  test('rounding leaves at most half a step, whatever the step', () => {
    const steps = fc.oneof(
      fc.record({
        kind: fc.constant('samples' as const),
        rateHz: fc.double({ min: 8000, max: 4e5, noNaN: true }),
      }),
      fc.record({
        kind: fc.constant('time' as const),
        ms: fc.double({ min: 0.001, max: 2, noNaN: true }),
      }),
      fc.record({
        kind: fc.constant('length' as const),
        mm: fc.double({ min: 0.1, max: 500, noNaN: true }),
      }),
    );
    fc.assert(
      fc.property(
        steps,
        fc.array(fc.integer({ min: 1, max: 6000 }), { minLength: 1, maxLength: 6 }),
        (step, far) => {
          const { rows, speedOfSound } = exported(far, step);
          const half =
            step.kind === 'samples'
              ? 500 / step.rateHz
              : step.kind === 'time'
                ? step.ms / 2
                : step.mm / speedOfSound / 2;
          for (const row of rows) {
            expect(Math.abs(row.residual.ms)).toBeLessThanOrEqual(half * (1 + 1e-9) + 1e-12);
            expect(row.rounded.ms).toBeGreaterThanOrEqual(0);
            expect(row.gainDb).toBeLessThanOrEqual(0);
          }
        },
      ),
      { numRuns: 100 },
    );
  });

  test('a blocked line is said in the notes, with what the way goes round and how much longer it is', () => {
    const plan = {
      ...samplePlan([1000, 1400]),
      obstacles: [
        {
          id: 'board',
          shape: 'box' as const,
          center: [-1200, 0, 0] as const,
          size: [10, 900, 900] as const,
        },
      ],
    };
    const { rows, notes } = delaysOf(plan);
    const [free, blocked] = rows.map((row) => row.lines[0]);
    expect([free?.line, blocked?.line]).toEqual(['clear', 'blocked']);
    expect(free?.path).toBe(free?.straight);
    // Round a 900 mm board 200 mm from the speaker and 1200 mm from the head, edge 450 mm off.
    const front = Math.hypot(195, 450);
    const behind = Math.hypot(1195, 450);
    expect(Math.abs((blocked?.path ?? 0) - front - 10 - behind)).toBeLessThan(1);
    expect(blocked?.round).toContain('board');
    expect(notes).toHaveLength(1);
    expect(notes[0]).toMatch(
      /^The straight line from the right mid is blocked by the board; the path goes round the board, \+3\d\d\.\d mm\.$/,
    );
  });

  test('an option without speakers gives no rows and no NaN', () => {
    expect(exported([], { kind: 'time', ms: 0.01 }).rows).toEqual([]);
  });

  test('a step of nothing is refused in one sentence', () => {
    expect(checkDelayStep({ kind: 'time', ms: 0 })).toBe(
      'the step in ms must be a number above 0, got 0',
    );
    expect(checkDelayStep({ kind: 'samples', rateHz: Number.NaN })).toMatch(/sample rate/);
    expect(checkDelayStep({ kind: 'length', mm: 1 })).toBeNull();
    expect(() => exported([1], { kind: 'length', mm: -1 })).toThrow(/step in mm/);
  });

  test('a seat that is not there is a mistake of the caller', () => {
    const plan = samplePlan([1000]);
    const boot = { by: 'seat', seat: 'boot' } as const;
    expect(() => delayExport(stageOf(plan), { for: boot, step: { kind: 'time', ms: 1 } })).toThrow(
      'delayExport: no seat "boot" in the result',
    );
  });

  test('steps are named as an installer would read them', () => {
    expect(stepName({ kind: 'samples', rateHz: 96000 })).toBe('1 sample at 96000 Hz');
    expect(stepName({ kind: 'length', mm: 10 })).toBe('10 mm');
  });
});
