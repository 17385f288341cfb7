import type { Side } from '../input';
import { thirdOctaveCentres } from '../sound/bands';
import {
  type BandDifference,
  type BandLevel,
  directLevels,
  levelDifferences,
} from '../sound/direct-level';
import { pairsOf } from '../stage/pairs';
import { beamingHzOf } from './beaming';
import { type DirectAt, directAt, obstructionDbOf } from './direct-sound';
import { missingSide, SIDES, type Stage, seatResultOf } from './stage';

/** The direct level of one pair at one seat. */
export interface PairLevels {
  pair: string;
  /** Third-octaves within the speaker's band; none without a speaker or a band. */
  left: BandLevel[];
  right: BandLevel[];
  /** Left − right, in the third-octaves both have. */
  differences: BandDifference[];
  /** Where both begin to beam; `null` where they differ or it is not known: see `beaming`. */
  beamingHz: number | null;
  /** The same for each; see `beamingHzOf`. */
  beaming: Record<Side, number | null>;
  /** Level off the axis re the listening window, mean over the third-octaves, dB. */
  windowDb: Record<Side, number | null>;
  /** Left − right of these, dB. */
  windowDifferenceDb: number | null;
  /** Why something above is null or empty. */
  reasons?: string[];
}

/**
 * Direct levels at a seat in third-octaves, dB re 1 m on each speaker's own axis: spreading,
 * directivity and obstruction. Free field and direct sound only; a cabin's total does not follow it.
 * Sources: those of `directLevels`. None for a seat the answer does not have.
 */
export function levelsAt(stage: Stage, seatId: string): PairLevels[] {
  const seat = seatResultOf(stage, seatId);
  if (!seat) return [];
  return pairsOf(stage.option.speakers).map((members) => {
    const reasons: string[] = [];
    const [left, right] = SIDES.map((side) => {
      const id = members[side];
      const direct = id === null ? null : directAt(stage, seat, id);
      if (!direct) reasons.push(missingSide(members.pair, side));
      return direct;
    }) as [DirectAt | null, DirectAt | null];
    const levels = { left: bandsOf(left, reasons), right: bandsOf(right, reasons) };
    const beaming = { left: beamingOf(left, reasons), right: beamingOf(right, reasons) };
    const windowDb = { left: meanWindowDb(levels.left), right: meanWindowDb(levels.right) };
    for (const side of SIDES)
      if (windowDb[side] === null && levels[side].length > 0)
        reasons.push(`${side}: ${levels[side].find((band) => band.windowDb === null)?.reason}`);
    return {
      pair: members.pair,
      ...levels,
      differences: levelDifferences(levels.left, levels.right),
      beamingHz: beaming.left === beaming.right ? beaming.left : null,
      beaming,
      windowDb,
      windowDifferenceDb:
        windowDb.left === null || windowDb.right === null ? null : windowDb.left - windowDb.right,
      ...(reasons.length > 0 && { reasons: [...new Set(reasons)] }),
    };
  });
}

function bandsOf(direct: DirectAt | null, reasons: string[]): BandLevel[] {
  if (!direct) return [];
  const { speaker, arrival, law, offAxisDeg } = direct;
  const { bandHz, id } = speaker;
  if (!bandHz) {
    reasons.push(`the plan gives no band for the speaker "${id}"`);
    return [];
  }
  const centres = thirdOctaveCentres(bandHz);
  if (centres.length === 0) reasons.push(`no third-octave lies within the band of "${id}"`);
  const levels = directLevels(
    {
      path: arrival.direct,
      offAxisDeg,
      law: law.law,
      obstructionDbAt: (frequencyHz) => obstructionDbOf(direct, frequencyHz),
    },
    centres,
  );
  const { problem } = law;
  return problem ? levels.map((band) => ({ ...band, reason: problem })) : levels;
}

function beamingOf(direct: DirectAt | null, reasons: string[]): number | null {
  if (!direct) return null;
  const answer = beamingHzOf(direct.speaker, direct.speed);
  if (answer.beamingHz === null) reasons.push(answer.reason);
  return answer.beamingHz;
}

function meanWindowDb(bands: readonly BandLevel[]): number | null {
  let sum = 0;
  for (const { windowDb } of bands) {
    if (windowDb === null) return null;
    sum += windowDb;
  }
  return bands.length > 0 ? sum / bands.length : null;
}
