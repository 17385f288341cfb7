/**
 * A drive unit in a sealed pocket, after R. H. Small, "Closed-Box Loudspeaker Systems", Part I:
 * Analysis, J. Audio Eng. Soc. 20(10), 1972: compliance ratio α = Vas/Vb, resonance and total Q
 * raised by √(1 + α), response that of a second-order high-pass. Small signals; no filling, no
 * leaks, losses of the box left out; the pocket as one stiffness, so well below the frequencies
 * where it is a room.
 */

/** Of the drive unit's own sheet, or measured. */
export interface DriveUnit {
  /** fs: resonance in free air, Hz. */
  resonanceHz: number;
  /** Qts: total Q at it. */
  q: number;
  /** Vas: volume of air as compliant as its suspension, litres. */
  vasLitres: number;
}

export interface ClosedBox {
  /** Net volume, litres. */
  litres: number;
  /** α = Vas/Vb. */
  complianceRatio: number;
  /** fc, Hz. */
  resonanceHz: number;
  /** Qtc. */
  q: number;
  /** −3 dB (half power), Hz. */
  halfPowerHz: number;
  /** Highest place of the response and by how much it stands out; null where it has none. */
  peak: { frequencyHz: number; levelDb: number } | null;
}

export type ClosedBoxAnswer = { ok: true; box: ClosedBox } | { ok: false; message: string };

/**
 * Resonance, Q and half-power frequency in a sealed volume.
 * @param litres net of the speaker's own body and of walls
 * @returns the box, or one sentence saying which number makes no sense
 */
export function closedBox(unit: DriveUnit, litres: number): ClosedBoxAnswer {
  const { resonanceHz: fs, q: qts, vasLitres } = unit;
  for (const [name, value] of [
    ['fs', fs],
    ['Qts', qts],
    ['Vas', vasLitres],
    ['the net volume', litres],
  ] as const)
    if (!(value > 0 && Number.isFinite(value)))
      return { ok: false, message: `${name} must be more than 0, got ${value}` };
  const complianceRatio = vasLitres / litres;
  const rise = Math.sqrt(1 + complianceRatio);
  const [resonanceHz, q] = [fs * rise, qts * rise];
  return {
    ok: true,
    box: {
      litres,
      complianceRatio,
      resonanceHz,
      q,
      halfPowerHz: resonanceHz * halfPowerRatio(q),
      peak: peakOf(resonanceHz, q),
    },
  };
}

/** f3/fc: where the squared response is one half. */
function halfPowerRatio(q: number): number {
  const b = 1 / (q * q) - 2;
  return Math.sqrt((b + Math.sqrt(b * b + 4)) / 2);
}

/** Above Q = 1/√2 the response stands out: by Q²/√(Q² − ¼), at fc/√(1 − 1/2Q²). */
function peakOf(resonanceHz: number, q: number): ClosedBox['peak'] {
  if (q <= Math.SQRT1_2 + 1e-12) return null;
  return {
    frequencyHz: resonanceHz / Math.sqrt(1 - 1 / (2 * q * q)),
    levelDb: 20 * Math.log10((q * q) / Math.sqrt(q * q - 0.25)),
  };
}

/** Response at a frequency, dB re its own level far above resonance. */
export function closedBoxLevelDb(
  { resonanceHz, q }: Pick<ClosedBox, 'resonanceHz' | 'q'>,
  frequencyHz: number,
): number {
  const square = (frequencyHz / resonanceHz) ** 2;
  return 10 * Math.log10(square ** 2 / ((1 - square) ** 2 + square / (q * q)));
}

/** Net volume that gives a wanted Qtc, litres; `null` where the unit's own Q is that high already. */
export function litresForQ({ q, vasLitres }: DriveUnit, wantedQ: number): number | null {
  const complianceRatio = (wantedQ / q) ** 2 - 1;
  return complianceRatio > 0 ? vasLitres / complianceRatio : null;
}

export interface PocketPair {
  left: ClosedBox;
  right: ClosedBox;
  /** Response of each and left − right, at the frequencies asked for. */
  levels: { frequencyHz: number; leftDb: number; rightDb: number; differenceDb: number }[];
  /** Where left and right differ most. */
  worst: { frequencyHz: number; differenceDb: number } | null;
}

export type PocketPairAnswer = { ok: true; pair: PocketPair } | { ok: false; message: string };

/**
 * The same drive unit in the two pockets of a car, at the same voltage: what unequal volumes do to
 * the two responses. Far above resonance they are alike.
 */
export function comparePockets(
  unit: DriveUnit,
  leftLitres: number,
  rightLitres: number,
  frequenciesHz: readonly number[],
): PocketPairAnswer {
  const left = closedBox(unit, leftLitres);
  if (!left.ok) return { ok: false, message: `left pocket: ${left.message}` };
  const right = closedBox(unit, rightLitres);
  if (!right.ok) return { ok: false, message: `right pocket: ${right.message}` };
  const levels = frequenciesHz.map((frequencyHz) => {
    const leftDb = closedBoxLevelDb(left.box, frequencyHz);
    const rightDb = closedBoxLevelDb(right.box, frequencyHz);
    return { frequencyHz, leftDb, rightDb, differenceDb: leftDb - rightDb };
  });
  let worst: PocketPair['worst'] = null;
  for (const { frequencyHz, differenceDb } of levels)
    if (!worst || Math.abs(differenceDb) > Math.abs(worst.differenceDb))
      worst = { frequencyHz, differenceDb };
  return { ok: true, pair: { left: left.box, right: right.box, levels, worst } };
}
