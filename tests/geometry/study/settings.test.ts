import { describe, expect, test } from 'vitest';
import { pairsOf } from '../../../src/geometry';
import { channelSettings } from '../../../src/geometry/study';
import { compromiseOver } from '../../../src/geometry/study/compromise';
import { ASIDE, aligned, HEAD, MIDRANGE, pairAt, planOf, stage, stageOf, TWEETER } from './stages';

const SPEAKERS = [...pairAt(TWEETER, [700, 650, 900]), ...pairAt(MIDRANGE, [500, 600, 500])];
const SEATS = [
  { id: 'middle', head: HEAD },
  { id: 'left', head: ASIDE },
];
const asked = (alignment: Parameters<typeof aligned>[0]) =>
  stage(SPEAKERS, { seats: SEATS, alignment: aligned(alignment) });

describe('what each channel is set to', () => {
  test('is the aligned seat’s delays, in whole samples, and its gains', () => {
    const at = asked({ seat: 'left' });
    const { by, seat, channels, problem } = channelSettings(at);
    expect([by, seat, problem]).toEqual(['seat', 'left', undefined]);
    const told = at.result.seats[1]?.delays ?? [];
    expect(channels).toEqual(
      told.map(({ speaker, roundedDelay, gainDb }) => ({ speaker, delay: roundedDelay, gainDb })),
    );
    for (const { delay } of channels)
      expect(Math.abs(delay * 48 - Math.round(delay * 48))).toBeLessThan(1e-9);
    expect(channels.some(({ delay }) => delay > 0.5)).toBe(true);
    expect(channels.some(({ gainDb }) => gainDb < -1)).toBe(true);
  });

  test('is the first seat’s where the plan names none', () => {
    expect(channelSettings(asked({})).seat).toBe('middle');
  });

  test('is the best compromise where the plan asks for several seats', () => {
    const seats = [
      { id: 'left', weight: 3 },
      { id: 'middle', weight: 1 },
    ];
    const at = asked({ by: 'seats', seats });
    const best = compromiseOver(at.result, pairsOf(at.option.speakers), seats, 48000);
    if ('problem' in best) throw new Error(best.problem);
    const told = channelSettings(at);
    expect([told.by, told.seat]).toEqual(['seats', null]);
    expect(told.channels).toEqual(
      best.channels.map(({ speaker, roundedDelay, gainDb }) => ({
        speaker,
        delay: roundedDelay,
        gainDb,
      })),
    );
    expect(told.channels).not.toEqual(channelSettings(asked({ seat: 'left' })).channels);
  });

  test('counts all seats alike where a compromise lists none', () => {
    const seats = SEATS.map(({ id }) => ({ id, weight: 1 }));
    expect(channelSettings(asked({ by: 'seats' }))).toEqual(
      channelSettings(asked({ by: 'seats', seats })),
    );
  });

  test('follows the alignment even where the answer stays the same', () => {
    const one = asked({ seat: 'left' });
    const first = channelSettings(one);
    const other = { ...one, plan: { ...one.plan, alignment: aligned({ seat: 'middle' }) } };
    expect(channelSettings(other).seat).toBe('middle');
    expect(channelSettings(one)).toEqual(first);
  });

  test('is nothing, with the reason, where there is no seat or no such seat', () => {
    const nothing = SPEAKERS.map(({ id }) => ({ speaker: id, delay: 0, gainDb: 0 }));
    const empty = stageOf(planOf(SPEAKERS, { seats: [], alignment: aligned({}) }));
    expect(channelSettings(empty)).toEqual({
      by: 'seat',
      seat: null,
      channels: nothing,
      problem: 'the plan has no seat',
    });
    const lost = asked({ by: 'seats', seats: [{ id: 'boot', weight: 1 }] });
    expect(channelSettings(lost)).toEqual({
      by: 'seats',
      seat: null,
      channels: nothing,
      problem: 'there is no seat "boot" in this plan',
    });
  });

  test('is an empty list without speakers', () => {
    expect(channelSettings(stage([])).channels).toEqual([]);
    expect(channelSettings(stage([], { alignment: aligned({ by: 'seats' }) })).problem).toContain(
      'no speakers',
    );
  });
});
