import { describe, expect, test } from 'vitest';
import { CIVIDIS, cividisAt, toLab } from '../../src/plan/cividis';

const lightness = (k: number) => toLab([0, 1, 2].map((c) => CIVIDIS[3 * k + c]) as never)[0];

describe('the colours of painted maps', () => {
  test('rise in lightness from every colour to the next but for rounding, and evenly on the whole', () => {
    expect(CIVIDIS).toHaveLength(768);
    const [from, to] = [lightness(0), lightness(255)];
    for (let k = 0; k < 255; k++) expect(lightness(k + 1)).toBeGreaterThan(lightness(k) - 0.2);
    for (let k = 0; k < 250; k++) expect(lightness(k + 5)).toBeGreaterThan(lightness(k));
    // The published map is even in another measure of lightness (J′ of CAM02-UCS).
    for (let k = 0; k <= 255; k++)
      expect(Math.abs(lightness(k) - (from + ((to - from) * k) / 255))).toBeLessThan(4);
  });

  test('begin with the published dark blue and end with its yellow', () => {
    expect(cividisAt(0)).toEqual([0, 32, 77]);
    expect(cividisAt(1)).toEqual([255, 234, 70]);
    expect(cividisAt(-3)).toEqual(cividisAt(0));
    expect(cividisAt(7)).toEqual(cividisAt(1));
  });

  test('pass the published middle grey within a few bytes (#7C7B78, from memory)', () => {
    const middle = cividisAt(0.5);
    for (const [c, byte] of [0x7c, 0x7b, 0x78].entries())
      expect(Math.abs((middle[c] as number) - byte)).toBeLessThan(4);
  });

  test('lightness is CIELAB’s: white 100, black 0, and middle grey 53.6 (sRGB 128)', () => {
    expect(Math.abs(toLab([255, 255, 255])[0] - 100)).toBeLessThan(0.01);
    expect(toLab([0, 0, 0])[0]).toBe(0);
    expect(Math.abs(toLab([128, 128, 128])[0] - 53.585)).toBeLessThan(0.01);
  });
});
