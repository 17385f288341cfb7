/** What the engine answers: mm, ms, dB, degrees. `null` always comes with a sentence in `reasons`. */
import type { Side } from './input';
import type { Vec3 } from './vector';

/** `grazing` (a near miss) appears only in full detail. */
export type Line = 'clear' | 'grazing' | 'blocked';

export interface EarArrival {
  direct: number;
  path: number;
  time: number;
  line: Line;
  blockedBy: string[];
}

export interface Arrival {
  speaker: string;
  /** Straight line from the speaker's reference point to the head. */
  direct: number;
  /** What the sound travels; equals `direct` in straight-line detail. */
  path: number;
  time: number;
  /** Angle between the speaker's axis and the direction to the head. */
  offAxisDeg: number | null;
  /** Seen in the speaker's own frame: positive to the speaker's right. */
  offAxisHorizontalDeg: number | null;
  /** Positive upward. */
  offAxisVerticalDeg: number | null;
  line: Line;
  /** Ids of panels and obstacles on the straight line, nearest the speaker first. */
  blockedBy: string[];
  /** Spreading, re 1 m on axis: free field, direct sound only. */
  levelDb: number | null;
  ears: Record<Side, EarArrival>;
  /** Why something above is null; absent when nothing is. */
  reasons?: string[];
}

export interface PairDifference {
  pair: string;
  /** Left path − right path. */
  difference: number | null;
  differenceTime: number | null;
  /** Left level − right level. */
  levelDifferenceDb: number | null;
  reasons?: string[];
}

export interface Delay {
  speaker: string;
  /** Added so that all arrive together at this seat's head; the longest path gets 0. */
  delay: number;
  /** The same in samples at the alignment's rate, not rounded. */
  samples: number;
  /** The nearest whole sample, as a time. */
  roundedDelay: number;
  /** roundedDelay − delay. */
  residual: number;
  /** ≤ 0: brings the nearer of a pair down to the farther. */
  gainDb: number;
}

export interface SeatResult {
  id: string;
  head: Vec3;
  arrivals: Arrival[];
  pairs: PairDifference[];
  delays: Delay[];
}

/** Where a speaker came to stand and which way it looks. */
export interface PlacedSpeaker {
  speaker: string;
  position: Vec3;
  axis: Vec3 | null;
  /** The panel's normal into the cabin at the spot, when mounted. */
  normal: Vec3 | null;
}

export interface OptionResult {
  id: string;
  title?: string;
  speedOfSound: number;
  detail: 'straight-line' | 'full';
  placed: PlacedSpeaker[];
  seats: SeatResult[];
}
