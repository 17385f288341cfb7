import { describe, expect, test } from 'vitest';
import type { OffAxisResponse, SpeakerInput } from '../../../src/geometry';
import { obstructionAt } from '../../../src/geometry/sound/arrival-obstruction';
import { pistonDirectivityDb } from '../../../src/geometry/sound/directivity';
import { fresnelNumber, obstructionDb } from '../../../src/geometry/sound/obstruction';
import { speakerLaw } from '../../../src/geometry/sound/speaker-law';

const SPEED = 343.2;
const speaker = (more: Partial<SpeakerInput> = {}): SpeakerInput => ({
  id: 'one',
  role: 'midrange',
  position: [0, 0, 0],
  bandHz: [300, 3000],
  ...more,
});
const RESPONSES: OffAxisResponse[] = [
  { offAxisDeg: 0, frequencyHz: [200, 4000], levelDb: [90, 90] },
  { offAxisDeg: 40, frequencyHz: [200, 4000], levelDb: [86, 86] },
];

describe('what is known of a speaker off its axis', () => {
  test('is what was measured, even beside a diaphragm', () => {
    const { law, source, problem, rangeHz } = speakerLaw(
      speaker({ responses: RESPONSES, diaphragm: 58 }),
      SPEED,
    );
    expect([source, problem, rangeHz]).toEqual(['measured', null, [200, 4000]]);
    expect(law(20, 1000)).toBeCloseTo(-2, 9);
    expect(law(50, 1000)).toBe(null);
  });

  test('is the piston of its diaphragm otherwise, and alike all round without one', () => {
    const piston = speakerLaw(speaker({ diaphragm: 58, responses: [] }), SPEED);
    expect(piston.source).toBe('piston');
    expect(piston.law(40, 3000)).toBe(pistonDirectivityDb(58, 3000, 40, SPEED));
    const none = speakerLaw(speaker(), SPEED);
    expect([none.source, none.law(120, 16000)]).toEqual(['none', 0]);
  });

  test('is no level at all where the responses are refused, and why', () => {
    const short = speakerLaw(speaker({ responses: RESPONSES, bandHz: [100, 3000] }), SPEED);
    expect(short.law(0, 1000)).toBe(null);
    expect(short.problem).toBe(
      'the measured responses cannot be used: the response at 0° runs from 200 to 4000 Hz and does not cover the band from 100 to 3000 Hz',
    );
  });

  test('is kept for a speaker and a speed, and changes with either', () => {
    const one = speaker({ diaphragm: 58 });
    expect(speakerLaw(one, SPEED)).toBe(speakerLaw(one, SPEED));
    const warm = speakerLaw(one, 360);
    expect(warm.law(60, 3000)).toBeGreaterThan(speakerLaw(one, SPEED).law(60, 3000) ?? 0);
    for (let speed = 330; speed < 350; speed++) speakerLaw(one, speed);
    expect(speakerLaw(one, 360).law(60, 3000)).toBe(warm.law(60, 3000));
    expect(speakerLaw({ ...one, diaphragm: 100 }, SPEED).law(60, 3000)).not.toBe(
      speakerLaw(one, SPEED).law(60, 3000),
    );
  });
});

describe('what stands in an arrival’s way', () => {
  test('takes nothing from a clear line', () => {
    expect(obstructionAt({ line: 'clear', detour: null }, 4000, SPEED)).toBe(0);
  });

  // By hand: a detour of half a wavelength, 42.9 mm at 4 kHz, is N = 1: 13.10 dB.
  test('takes from a blocked line what the edge does', () => {
    const loss = obstructionAt({ line: 'blocked', detour: 42.9 }, 4000, SPEED);
    expect(Math.abs((loss ?? 0) - 13.1)).toBeLessThan(0.01);
  });

  test('takes from a grazing line less than 5 dB, and nothing at high frequencies', () => {
    const at = (hz: number) => obstructionAt({ line: 'grazing', detour: -4 }, hz, SPEED);
    expect(at(1000)).toBe(obstructionDb(fresnelNumber(-4, 1000, SPEED)));
    expect(at(1000)).toBeGreaterThan(0);
    expect(at(1000)).toBeLessThan(5);
    expect(at(10000)).toBe(0);
  });

  test('is not known where a line is blocked and nothing leads round', () => {
    expect(obstructionAt({ line: 'blocked', detour: null }, 4000, SPEED)).toBe(null);
  });
});
