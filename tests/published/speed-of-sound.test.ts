import { describe, expect, test } from 'vitest';
import { cramerSpeed, isoSpeed, speedOfSound } from '../../src/geometry';

/** 1 mm/s, in m/s: what the formulas are held to. */
const ONE_MM_PER_S = 0.001;

describe('speed of sound by Cramer’s equation', () => {
  // Source: IEC 61094-2:2009, Table F.1 (published), given to ± 0.002 m/s.
  test.each([
    [23, 101325, 50, 345.86652],
    [20, 80000, 65, 344.38267],
  ])('%f °C, %f Pa, %f %% is %f m/s by IEC 61094-2 Table F.1', (t, p, rh, speed) => {
    expect(Math.abs(cramerSpeed(t, p, rh, 0.0004) - speed)).toBeLessThan(ONE_MM_PER_S);
  });

  // Source: equation 15 of O. Cramer, JASA 93, 2510 (1993), computed from the printed formula.
  test.each([
    [0, 343.36],
    [50, 343.987],
  ])('20 °C at %f %% humidity is %f m/s by Cramer’s equation 15', (rh, speed) => {
    expect(Math.abs(cramerSpeed(20, 101325, rh) - speed)).toBeLessThan(ONE_MM_PER_S);
  });

  test('moist air carries sound faster, and warm air does', () => {
    expect(cramerSpeed(20, 101325, 80)).toBeGreaterThan(cramerSpeed(20, 101325, 20));
    expect(cramerSpeed(25, 101325, 50)).toBeGreaterThan(cramerSpeed(20, 101325, 50));
  });
});

describe('speed of sound by ISO 9613-1', () => {
  // Source: ISO 9613-1:1993, c = 343.2·√(T/293.15), computed from the formula.
  test.each([
    [-20, 318.927],
    [0, 331.286],
    [20, 343.2],
    [40, 354.714],
    [50, 360.333],
  ])('%f °C is %f m/s', (t, speed) => {
    expect(Math.abs(isoSpeed(t) - speed)).toBeLessThan(ONE_MM_PER_S);
  });
});

describe('speed of sound in a plan', () => {
  const at = (temperatureC: number, relativeHumidityPercent = 50, pressureKPa = 101.325) =>
    speedOfSound({ temperatureC, relativeHumidityPercent, pressureKPa });

  test('is Cramer’s within 0 to 30 °C, with the pressure in kPa', () => {
    expect(Math.abs(at(23).speed - 345.86652)).toBeLessThan(ONE_MM_PER_S);
    expect(Math.abs(at(20, 65, 80).speed - 344.38267)).toBeLessThan(ONE_MM_PER_S);
    expect(at(23).withinCramerRange).toBe(true);
  });

  test.each([0, 30])('joins ISO 9613-1’s law at %i °C without a jump', (t) => {
    const step = Math.abs(at(t - 1e-6).speed - at(t + 1e-6).speed);
    expect(step).toBeLessThan(1e-5);
  });

  test.each([-30, -0.001, 30.001, 60])('says at %f °C that it is outside Cramer’s range', (t) => {
    expect(at(t).withinCramerRange).toBe(false);
  });

  test('follows ISO 9613-1 outside the range: from 30 to 50 °C by the root of 323.15/303.15', () => {
    const ratio = at(50).speed / at(30).speed;
    expect(Math.abs(ratio - Math.sqrt(323.15 / 303.15))).toBeLessThan(1e-12);
  });

  test('rises steadily with the temperature from −40 to 60 °C', () => {
    for (let t = -40; t < 60; t += 0.5) expect(at(t + 0.5).speed).toBeGreaterThan(at(t).speed);
  });
});
