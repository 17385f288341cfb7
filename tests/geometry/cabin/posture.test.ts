import { describe, expect, test } from 'vitest';
import { hipUnderEye, leanBack, sitDown } from '../../../src/geometry/cabin/posture';

describe('leaning back', () => {
  test('a quarter turn takes what was above to the rear', () => {
    const p = leanBack({ x: 10, z: 620 }, { x: 10, z: 20 }, 90);
    expect(p.x).toBeCloseTo(610, 9);
    expect(p.z).toBeCloseTo(20, 9);
  });

  test('and forward again ends where it began', () => {
    const about = { x: 850, z: 270 };
    const p = leanBack(leanBack({ x: 900, z: 890 }, about, 17), about, -17);
    expect(p.x).toBeCloseTo(900, 9);
    expect(p.z).toBeCloseTo(890, 9);
  });
});

describe('the hip under the eyes', () => {
  const r = { x: 850, z: 270 };
  test('stands on the rails between the R point and the foremost stop', () => {
    expect(hipUnderEye({ x: 2000, z: 900 }, r, 24, 240)).toEqual({ x: 850, z: 270 });
    expect(hipUnderEye({ x: 0, z: 900 }, r, 24, 240)).toEqual({ x: 610, z: 270 });
  });

  test('of a seat without travel is the R point', () => {
    expect(hipUnderEye({ x: 800, z: 900 }, r, 24, 0)).toEqual(r);
  });
});

describe('sitting down', () => {
  const hip = { x: 750, z: 270 };
  const eye = { x: 750, z: 910 };

  test('the median man has his ears 85 behind and 17 below the standard eye', () => {
    const sat = sitDown(eye, hip, { stature: 1755, reclineDeg: 0, slide: 0 });
    expect(sat).toEqual({ head: { x: 835, z: 893 }, eye, hip });
  });

  test('somebody 100 mm taller sits 45.8 higher', () => {
    const sat = sitDown(eye, hip, { stature: 1855, reclineDeg: 0, slide: 0 });
    expect(sat.head.x).toBeCloseTo(835, 9);
    expect(sat.head.z).toBeCloseTo(893 + 80400 / 1755, 9);
  });

  test('eyes on the hip itself give finite numbers', () => {
    const sat = sitDown(hip, hip, { stature: 1500, reclineDeg: 5, slide: 0 });
    expect(Number.isFinite(sat.head.x + sat.head.z)).toBe(true);
  });
});
