import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type SlowMotion, slowMotion, stripMoments } from '../../../src/geometry';
import { plan as anyPlan } from '../arbitraries';
import { stageOf } from '../study/stages';

/** Each speaker by the moments its sound leaves and reaches the head; two of one name a pair. */
function motionOf(speakers: readonly [pair: string, start: number, time: number][]): SlowMotion {
  const named = speakers.map(([pair, start, time], i) => ({
    speaker: `${pair}${i}`,
    pair,
    start,
    time,
  }));
  return {
    option: 'a',
    seat: 'front-left',
    delays: 'none',
    speed: 343,
    waves: named.map(({ speaker, pair, start }) => ({
      speaker,
      pair,
      role: 'tweeter',
      side: null,
      centre: [0, 0, 0],
      start,
      line: 'clear',
      round: null,
    })),
    reaches: named
      .map(({ speaker, time }) => ({
        speaker,
        at: 'head' as const,
        time,
        free: time,
        comes: 'straight' as const,
      }))
      .sort((a, b) => a.time - b.time),
    end: Math.max(0, ...named.map(({ time }) => time)),
    alignedFor: null,
  };
}

const times = (motion: SlowMotion, most?: number) =>
  stripMoments(motion, most).map(({ time }) => time);

describe('the moments of a strip', () => {
  test('are the start, the first arrival, each pair’s last and the last of all', () => {
    const motion = motionOf([
      ['t', 0, 1.9],
      ['t', 0, 3.3],
      ['m', 0, 2.2],
      ['m', 0, 3.5],
      ['b', 0, 2.9],
      ['b', 0, 4.1],
    ]);
    // 2.2 and 2.9 are the first of their pairs: the one nearest to a neighbour goes.
    expect(times(motion)).toEqual([0, 1.9, 2.9, 3.3, 3.5, 4.1]);
    expect(times(motion, 4)).toEqual([0, 1.9, 3.5, 4.1]);
    const [start, first, , , , last] = stripMoments(motion);
    expect(start).toMatchObject({ arriving: [], arrived: 0 });
    expect(start?.leaving).toHaveLength(6);
    expect(first).toEqual({ time: 1.9, leaving: [], arriving: ['t0'], arrived: 1 });
    expect(last).toMatchObject({ arriving: ['b5'], arrived: 6 });
  });

  test('put what delays bring together into one picture, at the last of it', () => {
    const motion = motionOf([
      ['t', 2.2, 4.09],
      ['t', 0.7, 4.07],
      ['b', 0, 4.08],
    ]);
    const moments = stripMoments(motion);
    const last = moments[moments.length - 1];
    expect(last?.time).toBe(4.09);
    expect([...(last?.arriving ?? [])].sort()).toEqual(['b2', 't0', 't1']);
    expect(last?.arrived).toBe(3);
    expect(times(motion)).toEqual([0, 1.1, 2.2, (2.2 + 4.09) / 2, 4.09]);
  });

  test('halve the longest gaps where little happens', () => {
    expect(times(motionOf([['t', 0, 3]]))).toEqual([0, 0.75, 1.5, 2.25, 3]);
    expect(stripMoments(motionOf([]))).toEqual([]);
  });

  test('a strip of two pictures is refused', () => {
    expect(() => stripMoments(motionOf([['t', 0, 1]]), 2)).toThrow(/at least 3 pictures, got 2/);
  });

  test('of any plan are 4 to 6, in order, from the first leaving to the last arriving', () => {
    fc.assert(
      fc.property(anyPlan, fc.constantFrom('none' as const, 'aligned' as const), (plan, delays) => {
        const motion = slowMotion(stageOf(plan), 'front-left', delays);
        const moments = stripMoments(motion);
        expect(moments.length).toBeGreaterThanOrEqual(4);
        expect(moments.length).toBeLessThanOrEqual(6);
        for (const [i, { time }] of moments.entries())
          if (i > 0) expect(time).toBeGreaterThan(moments[i - 1]?.time ?? 0);
        const heads = motion.reaches.filter(({ at }) => at === 'head');
        expect(moments[0]?.time).toBe(0);
        expect(moments[moments.length - 1]?.time).toBe(heads[heads.length - 1]?.time);
        expect(moments[moments.length - 1]?.arrived).toBe(heads.length);
      }),
      { numRuns: 60 },
    );
  });
});
