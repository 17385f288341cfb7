import { describe, expect, test } from 'vitest';
import type { Band, SpeakerInput } from '../../../src/geometry';
import { middleOctave, things, wayNote, wayNotes } from '../../../src/workbench/answers/way-words';
import { wordingFor } from '../../../src/workbench/answers/wording';
import { arrivalOf } from './arrival-of';

const mid: SpeakerInput = {
  id: 'l',
  role: 'midrange',
  side: 'left',
  pair: 'mid',
  bandHz: [300, 2500],
};
const other: SpeakerInput = { ...mid, id: 'r', side: 'right' };
const cabin = {
  obstacles: [
    { id: 'wheel', name: 'steering wheel' },
    { id: 'thigh', name: "driver's left thigh" },
    { id: 'hub', name: 'hub' },
    { id: 'long', name: 'front right occupant’s left upper arm and shoulder' },
  ],
  panels: [],
} as unknown as Parameters<typeof wordingFor>[0];
const wording = (unit: 'mm' | 'in' = 'mm') => wordingFor(cabin, [mid, other], unit);
const band = (frequencyHz: number, obstructionDb: number | null): Band => ({
  frequencyHz,
  directivityDb: 0,
  obstructionDb,
});

describe('what stands in the way, in words', () => {
  test('a blocked speaker goes round it: so much longer, so much less at the middle of its band', () => {
    const arrival = arrivalOf('l', {
      line: 'blocked',
      blockedBy: ['hub', 'thigh'],
      round: ['thigh'],
      detour: 1.2,
      bands: [band(500, 5), band(1000, 5.2), band(2000, 5.6)],
    });
    expect(wayNote(mid, arrival, wording())).toEqual({
      line: 'blocked',
      text: "Left mid goes round the driver's left thigh: +1 mm, −5 dB at 1 kHz.",
    });
  });

  test('a detour below a millimetre is never told as nothing', () => {
    const arrival = arrivalOf('l', { line: 'blocked', round: ['wheel'], detour: 0.31 });
    expect(wayNote(mid, arrival, wording())?.text).toContain('+0.3 mm');
    const inches = { ...arrival, detour: 38 };
    expect(wayNote(mid, inches, wording('in'))?.text).toContain('+1.50 in');
  });

  test('without a way round the reason stands, and no number', () => {
    const arrival = arrivalOf('l', {
      line: 'blocked',
      blockedBy: ['wheel'],
      detour: null,
      bands: [band(1000, null)],
      reasons: ['the speaker stands inside the steering wheel'],
    });
    expect(wayNote(mid, arrival, wording())?.text).toBe(
      'Left mid is blocked by the steering wheel: the speaker stands inside the steering wheel.',
    );
  });

  test('a loss that is not known is left out rather than told as none', () => {
    const arrival = arrivalOf('l', {
      line: 'blocked',
      round: ['wheel'],
      detour: 38,
      bands: [band(1000, null)],
    });
    expect(wayNote(mid, arrival, wording())?.text).toBe(
      'Left mid goes round the steering wheel: +38 mm.',
    );
  });

  test('a clear line needs no words', () => {
    expect(wayNote(mid, arrivalOf('l'), wording())).toBeNull();
    expect(wayNote(mid, undefined, wording())).toBeNull();
  });

  test('near misses name the nearest and count the rest', () => {
    const arrival = arrivalOf('l', {
      line: 'grazing',
      grazedBy: ['wheel', 'thigh', 'hub'],
      detour: -4,
    });
    expect(wayNote(mid, arrival, wording())?.text).toBe(
      'Left mid passes close to the steering wheel and 2 more.',
    );
  });

  test('two near misses of a pair take one sentence', () => {
    const near = (grazedBy: string[]) => arrivalOf('x', { line: 'grazing', grazedBy, detour: -4 });
    const notes = (left: string[], right: string[]) =>
      wayNotes(
        [
          { member: mid, arrival: near(left) },
          { member: other, arrival: near(right) },
        ],
        wording(),
      ).map(({ text }) => text);
    expect(notes(['wheel', 'hub'], ['hub'])).toEqual([
      'Left mid passes close to the steering wheel, right to the hub.',
    ]);
    expect(notes(['wheel'], ['wheel'])).toEqual([
      'Left mid passes close to the steering wheel, right as well.',
    ]);
  });

  test('names that are long together give way to a count', () => {
    expect(things(['wheel', 'hub'], wording())).toBe('the steering wheel and the hub');
    expect(things(['wheel', 'long'], wording())).toBe('the steering wheel and 1 more');
    expect(things([], wording())).toBe('something');
  });
});

describe('the octave that stands for a speaker', () => {
  test('is the one nearest the middle of its band on a logarithmic axis', () => {
    const bands = [500, 1000, 2000].map((hz) => band(hz, 0));
    // √(300 · 2500) = 866 Hz; the arithmetic middle, 1400 Hz, would be as near to 1000.
    expect(middleOctave(bands, [300, 2500])?.frequencyHz).toBe(1000);
    // √(300 · 1300) = 624 Hz is nearer 500 by ratio, though the arithmetic middle is 800.
    expect(middleOctave(bands, [300, 1300])?.frequencyHz).toBe(500);
  });

  test('is none where there are no octaves or no band', () => {
    expect(middleOctave([], [300, 2500])).toBeNull();
    expect(middleOctave([band(500, 0)], undefined)).toBeNull();
  });
});
