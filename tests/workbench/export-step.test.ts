import { describe, expect, it } from 'vitest';
import { readStepChoice, startingChoice } from '../../src/workbench/export/step-choice';

describe('the step a processor takes', () => {
  const start = startingChoice(48000);

  it('is one sample at the plan’s own rate to begin with', () => {
    expect(readStepChoice(start)).toEqual({ ok: true, step: { kind: 'samples', rateHz: 48000 } });
    expect(readStepChoice(startingChoice(50000))).toEqual({
      ok: true,
      step: { kind: 'samples', rateHz: 50000 },
    });
  });

  it('reads a typed rate in Hz or kHz', () => {
    const typed = { ...start, rate: 'other' as const, otherRate: '88,2 kHz' };
    expect(readStepChoice(typed)).toEqual({ ok: true, step: { kind: 'samples', rateHz: 88200 } });
  });

  it('reads steps in ms, mm and cm with a decimal comma', () => {
    const amounts = { ms: '0,02', mm: '7,5', cm: '0,5' };
    const step = (kind: 'ms' | 'mm' | 'cm') => readStepChoice({ ...start, kind, amounts });
    expect(step('ms')).toEqual({ ok: true, step: { kind: 'time', ms: 0.02 } });
    expect(step('mm')).toEqual({ ok: true, step: { kind: 'length', mm: 7.5 } });
    expect(step('cm')).toEqual({ ok: true, step: { kind: 'length', mm: 5 } });
  });

  it('refuses a step of nothing and a limit below zero, and says which field is meant', () => {
    const nothing = readStepChoice({
      ...start,
      kind: 'ms',
      amounts: { ms: '0', mm: '1', cm: '1' },
    });
    expect(nothing).toMatchObject({ ok: false, field: 'step' });
    const below = readStepChoice({ ...start, largest: '-1' });
    expect(below).toMatchObject({ ok: false, field: 'largest' });
    expect(readStepChoice({ ...start, largest: 'long' })).toMatchObject({ field: 'largest' });
  });

  it('takes the longest delay in ms, and an empty field as no limit', () => {
    expect(readStepChoice({ ...start, largest: '12,5 ms' })).toMatchObject({ largestMs: 12.5 });
    expect(readStepChoice({ ...start, largest: '  ' })).not.toHaveProperty('largestMs');
  });
});
