import { describe, expect, test } from 'vitest';
import { printerScale } from '../../../src/sheets/mark-out/printer-scale';

describe('what the printer made of the rulers', () => {
  test.each([
    [100, 100, true],
    [99.5, 100.5, true],
    [100.6, 100, false],
    [100, 99.4, false],
    [97, 97, false],
  ])('%f mm across and %f mm up: usable %s', (across, up, ok) => {
    const scale = printerScale(across, up);
    expect(scale.ok).toBe(ok);
    expect(scale.across).toBeCloseTo(across / 100 - 1, 12);
    expect(scale.up).toBeCloseTo(up / 100 - 1, 12);
  });

  test('what is no length is refused', () => {
    for (const mm of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => printerScale(100, mm)).toThrow('expected lengths above 0 mm');
  });
});
