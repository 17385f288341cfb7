import { listeningWindowDb, pistonDirectivityDb } from './directivity';
import { spreadingDb } from './level';
import type { MeasuredDirectivity } from './measured-directivity';

/** Level of a speaker at an angle off its axis, dB re on axis; `null` where it is not known. */
export type DirectivityLaw = (offAxisDeg: number, frequencyHz: number) => number | null;

/**
 * The law of one speaker: what was measured, else the piston of its diaphragm, else none, which
 * knows no loss at any angle: then it counts as radiating alike all round.
 * @param diaphragm mm @param speed mm/ms
 */
export function directivityLaw(
  known: { measured?: MeasuredDirectivity; diaphragm?: number },
  speed: number,
): DirectivityLaw {
  const { measured, diaphragm } = known;
  if (measured) return measured.levelDbAt;
  if (diaphragm === undefined) return () => 0;
  return (offAxisDeg, frequencyHz) =>
    pistonDirectivityDb(diaphragm, frequencyHz, offAxisDeg, speed);
}

/** One speaker's direct sound in one band at one seat, dB re 1 m on its axis. */
export interface BandLevel {
  frequencyHz: number;
  /** Loss off the axis, ≤ 0 for a piston. */
  directivityDb: number | null;
  /** Loss re the mean of the listening window, which is how a speaker is usually rated. */
  windowDb: number | null;
  /** Loss round what is in the way, ≥ 0; `null` where no way round is known. */
  obstructionDb: number | null;
  /** Spreading, directivity and obstruction together. */
  levelDb: number | null;
  /** Why something above is null. */
  reason?: string;
}

export interface DirectSound {
  /**
   * From speaker to listener, mm: the straight line where something blocks it, since the loss round
   * an edge is told against the free straight line.
   */
  path: number;
  /** `null` when the speaker has no axis. */
  offAxisDeg: number | null;
  law: DirectivityLaw;
  /** Loss by frequency, dB, ≥ 0, `null` where not known; left out: the line is clear. */
  obstructionDbAt?: (frequencyHz: number) => number | null;
}

/**
 * Direct level at a seat, band by band. Direct sound in a free field only; a cabin's total does not
 * follow it. Sources: those of spreading, directivity and obstruction.
 * @param centresHz see `octaveCentres`, `thirdOctaveCentres`
 */
export function directLevels(sound: DirectSound, centresHz: readonly number[]): BandLevel[] {
  const spreading = spreadingDb(sound.path);
  const { law, offAxisDeg } = sound;
  return centresHz.map((frequencyHz) => {
    const obstructionDb = sound.obstructionDbAt ? sound.obstructionDbAt(frequencyHz) : 0;
    const directivityDb = offAxisDeg === null ? null : law(offAxisDeg, frequencyHz);
    const window = windowMean(law, frequencyHz);
    const level =
      spreading === null || directivityDb === null || obstructionDb === null
        ? null
        : spreading + directivityDb - obstructionDb;
    const reason = reasonFor(spreading, offAxisDeg, directivityDb, obstructionDb, window);
    return {
      frequencyHz,
      directivityDb,
      windowDb: directivityDb === null || window === null ? null : directivityDb - window,
      obstructionDb,
      levelDb: level,
      ...(reason && { reason }),
    };
  });
}

function windowMean(law: DirectivityLaw, frequencyHz: number): number | null {
  let known = true;
  const mean = listeningWindowDb((angle) => {
    const level = law(angle, frequencyHz);
    if (level === null) known = false;
    return level ?? 0;
  });
  return known ? mean : null;
}

function reasonFor(
  spreading: number | null,
  offAxisDeg: number | null,
  directivityDb: number | null,
  obstructionDb: number | null,
  window: number | null,
): string | null {
  if (spreading === null) return 'the listener is at the speaker, so there is no level';
  if (offAxisDeg === null) return 'the aim has no direction, so there is no loss off the axis';
  if (directivityDb === null) return 'the measured responses do not cover this angle and frequency';
  if (obstructionDb === null)
    return 'something blocks the line and no way round is known, so its loss is not';
  return window === null ? 'the measured responses do not cover the listening window' : null;
}

/** Left over right in one band, dB. */
export interface BandDifference {
  frequencyHz: number;
  /** Of the loss off the axis. */
  directivityDb: number | null;
  /** Of the whole direct level. */
  levelDb: number | null;
  reason?: string;
}

/** Left minus right, in the bands both have. */
export function levelDifferences(
  left: readonly BandLevel[],
  right: readonly BandLevel[],
): BandDifference[] {
  return left.flatMap((l) => {
    const r = right.find((band) => band.frequencyHz === l.frequencyHz);
    if (!r) return [];
    const minus = (a: number | null, b: number | null) => (a === null || b === null ? null : a - b);
    const levelDb = minus(l.levelDb, r.levelDb);
    const directivityDb = minus(l.directivityDb, r.directivityDb);
    const [side, reason] = l.levelDb === null ? ['left', l.reason] : ['right', r.reason];
    return {
      frequencyHz: l.frequencyHz,
      directivityDb,
      levelDb,
      ...(levelDb === null && { reason: `${side} speaker: ${reason}` }),
    };
  });
}
