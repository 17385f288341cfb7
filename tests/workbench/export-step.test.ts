import { describe, expect, it } from 'vitest';
import { fileName } from '../../src/workbench/export/file-name';
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

describe('the name a file is saved under', () => {
  it('keeps letters and figures of any script', () => {
    expect(fileName('Kombi 2.0 (grün) 車', 'csv')).toBe('Kombi-2-0-grün-車.csv');
  });

  it('holds no path, no markup, no hidden start and no direction signs', () => {
    expect(fileName('../../x', 'json')).toBe('x.json');
    expect(fileName('<img src=x onerror=alert(1)>', 'json')).toBe('img-src-x-onerror-alert-1.json');
    expect(fileName('.\u202ehidden', 'txt')).toBe('hidden.txt');
  });

  it('is short for a title of ten thousand signs', () => {
    expect([...fileName('🚗x'.repeat(5000), 'json')].length).toBeLessThan(70);
  });

  it('is never empty and never the name of a device', () => {
    expect(fileName('', 'json')).toBe('plan.json');
    expect(fileName('🙂', 'json')).toBe('plan.json');
    expect(fileName('con', 'json')).toBe('plan-con.json');
  });
});
