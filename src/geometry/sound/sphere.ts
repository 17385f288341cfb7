import { type Complex, polar, times } from './complex';

/** The series stops when two terms in a row add less than this to a pressure of 1. */
const SMALLEST_TERM = 1e-7;

/**
 * Pressure on a rigid sphere from a point source, relative to what the same source gives at the
 * sphere's centre with the sphere away; time runs as e^(+jωt).
 * H = −(ρ/μ) e^(−iμρ) Σ (2m + 1) P_m(cos γ) h_m(μρ)/h′_m(μ), μ = ka, ρ = r/a, and its conjugate.
 * Source: R. O. Duda & W. L. Martens, J. Acoust. Soc. Am. 104, 3048 (1998), after Rayleigh.
 * Limits: no torso, no outer ears; a sphere is not a head.
 * @param radius mm
 * @param distance of the source from the centre, mm, more than the radius
 * @param cosine of the angle between source and point, seen from the centre
 * @param speed mm/ms
 */
export function spherePressure(
  radius: number,
  distance: number,
  cosine: number,
  frequencyHz: number,
  speed: number,
): Complex {
  if (!(distance > radius) || !(radius > 0))
    throw new RangeError(
      `spherePressure: expected a source outside the sphere of ${radius} mm, got ${distance} mm`,
    );
  const near = (2 * Math.PI * (frequencyHz / 1000) * radius) / speed;
  const far = (near * distance) / radius;
  // Spherical Hankel functions of the first kind by upward recurrence, h_(m−1) and h_m, at both.
  let [aRe, aIm] = [Math.sin(far) / far, -Math.cos(far) / far];
  let [bRe, bIm] = firstOrder(far);
  let [cRe, cIm] = [Math.sin(near) / near, -Math.cos(near) / near];
  let [dRe, dIm] = firstOrder(near);
  // Legendre polynomials P_m and P_(m+1).
  let [p, pNext] = [1, cosine];
  let [sumRe, sumIm] = [0, 0];
  let small = 0;
  for (let m = 0; small < 2 && m < 400; m++) {
    // h′_m = (m/x)·h_m − h_(m+1); c and d stand for h_m and h_(m+1) at the surface.
    const [slopeRe, slopeIm] = [(m / near) * cRe - dRe, (m / near) * cIm - dIm];
    const size = slopeRe * slopeRe + slopeIm * slopeIm;
    if (!(size < 1e300)) break;
    const weight = ((2 * m + 1) * p) / size;
    const [re, im] = [
      (aRe * slopeRe + aIm * slopeIm) * weight,
      (aIm * slopeRe - aRe * slopeIm) * weight,
    ];
    sumRe += re;
    sumIm += im;
    // A zero of one Legendre polynomial is no end; two small terms in a row beyond m = ka are.
    const term = ((Math.abs(re) + Math.abs(im)) * far) / (near * near);
    small = m > near && term < SMALLEST_TERM ? small + 1 : 0;
    const k = 2 * m + 3;
    [aRe, aIm, bRe, bIm] = [bRe, bIm, (k / far) * bRe - aRe, (k / far) * bIm - aIm];
    [cRe, cIm, dRe, dIm] = [dRe, dIm, (k / near) * dRe - cRe, (k / near) * dIm - cIm];
    [p, pNext] = [pNext, (k * cosine * pNext - (m + 1) * p) / (m + 2)];
  }
  const [re, im] = times([sumRe, sumIm], polar(-far / (near * near), -far));
  return [re, -im];
}

/** h_1(x) = j_1(x) + i·y_1(x) */
function firstOrder(x: number): [number, number] {
  const [sin, cos] = [Math.sin(x), Math.cos(x)];
  return [sin / (x * x) - cos / x, -cos / (x * x) - sin / x];
}
