/**
 * Closed boxes against R. H. Small, "Closed-Box Loudspeaker Systems", JAES 20(10), 1972 and 21(1),
 * 1973. The formulas were known, the printed pages were not before us: the values below are those
 * of the second-order filters Small names (Butterworth B2, Chebyshev C2, Bessel, critically damped),
 * worked out from the filters' own textbook definitions, and his design procedure run backwards.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { closedBox, closedBoxLevelDb, comparePockets, litresForQ } from '../../src/geometry';

const boxOf = (fs: number, qts: number, vas: number, litres: number) => {
  const answer = closedBox({ resonanceHz: fs, q: qts, vasLitres: vas }, litres);
  if (!answer.ok) throw new Error(answer.message);
  return answer.box;
};
/** A box with fc = 100 Hz and the wanted Qtc: α = 3 doubles both. */
const withQ = (q: number) => boxOf(50, q / 2, 30, 10);

describe('closed box', () => {
  test('resonance and Q rise together by √(1 + Vas/Vb)', () => {
    // By hand: α = 24/3 = 8, √9 = 3.
    const box = boxOf(55, 0.35, 24, 3);
    expect(box.complianceRatio).toBe(8);
    expect(box.resonanceHz).toBeCloseTo(165, 10);
    expect(box.q).toBeCloseTo(1.05, 10);
  });

  test('B2, the Butterworth: Qtc 1/√2 has −3.01 dB at resonance and no peak', () => {
    const box = withQ(Math.SQRT1_2);
    expect(box.halfPowerHz).toBeCloseTo(100, 8);
    expect(closedBoxLevelDb(box, 100)).toBeCloseTo(-3.0103, 4);
    expect(box.peak).toBeNull();
  });

  // Chebyshev C2 of Qtc 1: 1.249 dB of ripple at √2·fc, half power at 0.786 fc = √((√5 − 1)/2) fc.
  test('C2 with Qtc 1: a peak of 1.25 dB at 1.414 fc, half power at 0.786 fc', () => {
    const box = withQ(1);
    expect(box.peak?.levelDb).toBeCloseTo(1.2494, 4);
    expect(box.peak?.frequencyHz).toBeCloseTo(141.421, 3);
    expect(box.halfPowerHz).toBeCloseTo(78.6151, 4);
    expect(closedBoxLevelDb(box, 100)).toBeCloseTo(0, 9);
  });

  // Bessel: Qtc 1/√3; f3 = √((1 + √5)/2) fc = 1.272 fc.
  test('Bessel, Qtc 0.577: half power at 1.272 fc', () => {
    expect(withQ(1 / Math.sqrt(3)).halfPowerHz).toBeCloseTo(127.202, 3);
  });

  // Critically damped: two equal real poles; −6.02 dB at fc; f3 = fc·√(1 + √2) = 1.554 fc.
  test('critically damped, Qtc 0.5: −6.02 dB at resonance, half power at 1.554 fc', () => {
    const box = withQ(0.5);
    expect(closedBoxLevelDb(box, 100)).toBeCloseTo(-6.0206, 4);
    expect(box.halfPowerHz).toBeCloseTo(155.3774, 4);
  });

  test('far below resonance it falls 12 dB an octave', () => {
    const box = withQ(0.8);
    expect(closedBoxLevelDb(box, 2) - closedBoxLevelDb(box, 1)).toBeCloseTo(12.04, 2);
    expect(Math.abs(closedBoxLevelDb(box, 100_000))).toBeLessThan(1e-4);
  });

  test('the volume for a wanted Q gives that Q', () => {
    const unit = { resonanceHz: 60, q: 0.4, vasLitres: 12 };
    const litres = litresForQ(unit, Math.SQRT1_2);
    // α = (0.7071/0.4)² − 1 = 2.125.
    expect(litres).toBeCloseTo(12 / 2.125, 10);
    expect(boxOf(60, 0.4, 12, litres ?? 0).q).toBeCloseTo(Math.SQRT1_2, 12);
    expect(litresForQ(unit, 0.4)).toBeNull();
  });

  test('what makes no sense is refused in a sentence', () => {
    expect(closedBox({ resonanceHz: 60, q: 0, vasLitres: 12 }, 5)).toEqual({
      ok: false,
      message: 'Qts must be more than 0, got 0',
    });
    expect(
      comparePockets({ resonanceHz: 60, q: 0.4, vasLitres: 12 }, 5, Number.NaN, [100]),
    ).toEqual({ ok: false, message: 'right pocket: the net volume must be more than 0, got NaN' });
  });
});

describe('two pockets of unequal size', () => {
  const unit = { resonanceHz: 60, q: 0.45, vasLitres: 12 };

  test('differ most near resonance and not far above it', () => {
    const answer = comparePockets(unit, 4, 6, [40, 80, 100, 125, 160, 1000, 10_000]);
    if (!answer.ok) throw new Error(answer.message);
    const { left, right, levels, worst } = answer.pair;
    // α 3 and 2: fc 120 and 103.92 Hz.
    expect(left.resonanceHz).toBeCloseTo(120, 10);
    expect(right.resonanceHz).toBeCloseTo(103.923, 3);
    expect(Math.abs(levels.at(-1)?.differenceDb ?? 1)).toBeLessThan(0.01);
    // Far below: 40 lg(fc ratio), the smaller pocket the quieter: −2.498 dB.
    expect(levels[0]?.differenceDb).toBeLessThan(-2);
    expect(worst?.frequencyHz).toBeLessThan(200);
  });

  test('change sides when the pockets do, and are alike when the pockets are', () => {
    const litres = fc.double({ min: 0.3, max: 40, noNaN: true });
    fc.assert(
      fc.property(litres, litres, (a, b) => {
        const one = comparePockets(unit, a, b, [50, 100, 200]);
        const two = comparePockets(unit, b, a, [50, 100, 200]);
        if (!one.ok || !two.ok) throw new Error('refused');
        for (const [i, { differenceDb }] of one.pair.levels.entries())
          expect(differenceDb + (two.pair.levels[i]?.differenceDb ?? Number.NaN)).toBe(0);
        const same = comparePockets(unit, a, a, [100]);
        expect(same.ok && same.pair.worst?.differenceDb).toBe(0);
      }),
    );
  });

  test('a smaller pocket always has the higher resonance and the higher Q', () => {
    const litres = fc.double({ min: 0.3, max: 40, noNaN: true });
    fc.assert(
      fc.property(litres, fc.double({ min: 1.01, max: 4, noNaN: true }), (a, times) => {
        const [small, large] = [boxOf(60, 0.45, 12, a), boxOf(60, 0.45, 12, a * times)];
        expect(small.resonanceHz).toBeGreaterThan(large.resonanceHz);
        expect(small.q).toBeGreaterThan(large.q);
      }),
    );
  });
});
