import { describe, expect, test } from 'vitest';
import type { Reflection, SpeakerInput } from '../../../src/geometry';
import {
  firstReflectionWords,
  tellingReflections,
} from '../../../src/workbench/answers/reflections/first-reflection';
import { arrivalOf } from './arrival-of';

const tweeter: SpeakerInput = { id: 't', role: 'tweeter', side: 'left' };
const wording = { speaker: () => 'left tweeter', panel: (id: string) => id };

/** At 344 mm/ms; first notch c / (2 · extra), in Hz. */
const off = (panel: string, extra: number, levelDb: number | null): Reflection => ({
  panel,
  point: [0, 0, 0],
  path: 1000 + extra,
  extra,
  extraTime: extra / 344,
  levelDb,
  firstNotchHz: 344_000 / (2 * extra),
});

describe('reflections in words', () => {
  test('tells panel, time, level and first notch of the first strong one', () => {
    const arrival = arrivalOf('t', { reflections: [off('windscreen', 209.8, -2.1)] });
    expect(firstReflectionWords(tweeter, arrival, wording)).toBe(
      'First strong reflection of the left tweeter: windscreen after 0.61 ms at −2.1 dB, ' +
        'first notch 820 Hz.',
    );
  });

  test('an earlier weak one does not count, a later stronger one is told as well', () => {
    const reflections = [off('sill', 40, -18), off('roof', 300, -1), off('pillar', 100, -6)];
    const { first, strongest } = tellingReflections(reflections);
    expect([first?.panel, strongest?.panel]).toEqual(['pillar', 'roof']);
    const text = firstReflectionWords(tweeter, arrivalOf('t', { reflections }), wording);
    expect(text).toContain('pillar after 0.29 ms');
    expect(text).toContain('Strongest: roof after 0.87 ms at −1.0 dB');
  });

  test('when all are weak it says so, with the strongest', () => {
    const text = firstReflectionWords(
      tweeter,
      arrivalOf('t', { reflections: [off('sill', 40, -18)] }),
      wording,
    );
    expect(text).toContain('No reflection of the left tweeter is above −10 dB; strongest: sill');
  });

  test('none, and none of known level, are different things', () => {
    expect(firstReflectionWords(tweeter, arrivalOf('t'), wording)).toBe(
      'No panel throws the sound of the left tweeter to this head.',
    );
    const unknown = arrivalOf('t', { reflections: [off('roof', 40, null)] });
    expect(firstReflectionWords(tweeter, unknown, wording)).toContain('is not known');
  });
});
