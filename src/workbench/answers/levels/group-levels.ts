import {
  beamingHzOf,
  levelsAt,
  type PairLevels,
  type SpeakerInput,
  type Stage,
  spreadingDb,
} from '../../../geometry';
import type { Group } from '../groups';

type BandLevel = PairLevels['left'][number];

/** One speaker of the group. */
export interface SideLevels {
  speaker: SpeakerInput;
  bands: readonly BandLevel[];
  beamingHz: number | null;
  /** Mean over the bands re the listening window, dB. */
  windowDb: number | null;
  reasons: string[];
}

export interface GroupLevels {
  /** Left before right; one for a speaker without a twin. */
  sides: SideLevels[];
  /** Left − right; none for a lone speaker. */
  differences: PairLevels['differences'];
  bandName: 'third-octave' | 'octave';
}

/**
 * The direct levels of a pair, or of a speaker without a twin, at a seat. A pair has third-octaves;
 * a speaker that belongs to none has the octaves of its arrival. `null` without an answer.
 */
export function groupLevels(stage: Stage, seatId: string, { members }: Group): GroupLevels | null {
  const [first] = members;
  const pair =
    first.pair && first.side
      ? levelsAt(stage, seatId).find((levels) => levels.pair === first.pair)
      : undefined;
  if (!pair) {
    const side = loneLevels(stage, seatId, first);
    return side && { sides: [side], differences: [], bandName: 'octave' };
  }
  const sides = members.flatMap((speaker): SideLevels[] => {
    const { side } = speaker;
    if (!side) return [];
    const bands = pair[side];
    return [
      {
        speaker,
        bands,
        beamingHz: pair.beaming[side],
        windowDb: pair.windowDb[side],
        reasons: [...bandReasons(bands), ...beamingReason(stage, speaker), ...noBands(speaker)],
      },
    ];
  });
  return { sides, differences: pair.differences, bandName: 'third-octave' };
}

function loneLevels(stage: Stage, seatId: string, speaker: SpeakerInput): SideLevels | null {
  const seat = stage.result.seats.find(({ id }) => id === seatId);
  const arrival = seat?.arrivals.find((one) => one.speaker === speaker.id);
  if (!arrival) return null;
  // The loss round an edge is told against the free straight line, so that is what spreads.
  const spreading = spreadingDb(arrival.direct);
  const bands = arrival.bands.map(({ frequencyHz, directivityDb, obstructionDb, reason }) => ({
    frequencyHz,
    directivityDb,
    windowDb: null,
    obstructionDb,
    levelDb:
      spreading === null || directivityDb === null || obstructionDb === null
        ? null
        : spreading + directivityDb - obstructionDb,
    ...(reason && { reason }),
  }));
  const beaming = beamingHzOf(speaker, stage.result.speedOfSound);
  return {
    speaker,
    bands,
    beamingHz: beaming.beamingHz,
    windowDb: null,
    reasons: [
      ...(arrival.reasons ?? []),
      ...bandReasons(bands),
      ...beamingReason(stage, speaker),
      ...noBands(speaker),
    ],
  };
}

const bandReasons = (bands: readonly BandLevel[]): string[] =>
  bands.flatMap(({ reason }) => reason ?? []);

function beamingReason(stage: Stage, speaker: SpeakerInput): string[] {
  const beaming = beamingHzOf(speaker, stage.result.speedOfSound);
  return beaming.beamingHz === null ? [beaming.reason] : [];
}

const noBands = ({ bandHz }: SpeakerInput): string[] =>
  bandHz ? [] : ['the plan gives it no band, so there are no levels by frequency'];
