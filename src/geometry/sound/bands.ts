/** Nominal third-octave midband frequencies of one decade. Source: IEC 61260-1:2014. */
const DECADE = [10, 12.5, 16, 20, 25, 31.5, 40, 50, 63, 80] as const;

/** Nominal third-octave midband frequencies, 16 Hz to 20 kHz. Source: the same. */
export const THIRD_OCTAVES_HZ: readonly number[] = [1, 10, 100, 1000]
  .flatMap((factor) => DECADE.map((nominal) => nominal * factor))
  .filter((nominal) => nominal >= 16 && nominal <= 20000);

/** Nominal octave midband frequencies, 16 Hz to 16 kHz: every third of the above. */
export const OCTAVES_HZ: readonly number[] = THIRD_OCTAVES_HZ.filter((_, i) => i % 3 === 0);

/** Octave ratio G = 10^(3/10). Source: the same, base ten. */
export const OCTAVE_RATIO = 10 ** 0.3;

function within(centres: readonly number[], [low, high]: readonly [number, number]): number[] {
  if (!(low > 0) || !(high >= low))
    throw new RangeError(`band centres: expected 0 < low ≤ high in Hz, got [${low}, ${high}]`);
  return centres.filter((centre) => centre >= low && centre <= high);
}

/** Nominal octave centres within a band in Hz, ends included; those of hearing only. */
export const octaveCentres = (bandHz: readonly [number, number]): number[] =>
  within(OCTAVES_HZ, bandHz);

/** Nominal third-octave centres within a band in Hz, ends included; those of hearing only. */
export const thirdOctaveCentres = (bandHz: readonly [number, number]): number[] =>
  within(THIRD_OCTAVES_HZ, bandHz);

/**
 * Edges of the band round a nominal centre, Hz: the exact midband frequency 1000·G^(x/3) divided
 * and multiplied by G^(1/2b). Source: the same.
 * @param perOctave b: 1 for octaves, 3 for third-octaves
 */
export function bandEdges(nominalHz: number, perOctave: 1 | 3): [number, number] {
  const step = Math.round((Math.log(nominalHz / 1000) / Math.log(OCTAVE_RATIO)) * 3);
  const exact = 1000 * OCTAVE_RATIO ** (step / 3);
  const half = OCTAVE_RATIO ** (1 / (2 * perOctave));
  return [exact / half, exact * half];
}

/** Middle of a band, Hz: its geometric mean, the centre on a logarithmic axis. */
export const middleOfBand = ([low, high]: readonly [number, number]): number =>
  Math.sqrt(low * high);
