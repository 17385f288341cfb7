/** What the engine answers: mm, ms, dB, degrees. `null` always comes with a sentence in `reasons`. */
import type { Side } from './input';
import type { Vec3 } from './vector';

/**
 * `grazing`: nothing crosses the line, but something stands within 0.6 of the first Fresnel radius
 * at the bottom of the speaker's band.
 */
export type Line = 'clear' | 'grazing' | 'blocked';

export interface EarArrival {
  direct: number;
  path: number;
  time: number;
  line: Line;
  blockedBy: string[];
  /** The id of what a grazing line passes nearest, alone; the head's tell all. */
  grazedBy: string[];
}

/** One octave of the direct sound at one seat. */
export interface Band {
  /** Nominal octave centre. */
  frequencyHz: number;
  /** Level towards the listener, re on axis. */
  directivityDb: number | null;
  /** Loss round, or close past, what is in the way, ≥ 0. */
  obstructionDb: number | null;
  /** Why something above is null. */
  reason?: string;
}

/** One way the sound takes by a panel, or by two. */
export interface Reflection {
  panel: string;
  point: Vec3;
  /** Second order only: the panel and the place of the second bounce. */
  second?: { panel: string; point: Vec3 };
  /** Length of all legs. */
  path: number;
  /** path − the straight line from source to receiver, blocked or not. */
  extra: number;
  extraTime: number;
  /**
   * Relative to the direct sound: spreading, the panels' reflectivity, and the speaker's
   * directivity in this direction against the direct one. The gathering or scattering of sound by
   * a curved panel is left out. `null` with a sentence in `reasons`.
   */
  levelDb: number | null;
  /** Where the reflection first cancels the direct sound, Hz. */
  firstNotchHz: number;
  reasons?: string[];
}

export interface Arrival {
  speaker: string;
  /** Straight line from the speaker's reference point to the head. */
  direct: number;
  /** What the sound travels: `direct` where the line is free, else the shortest way round. */
  path: number;
  time: number;
  /** The way itself: speaker, every bend, head. */
  way: Vec3[];
  /** Ids of what the way bends round, nearest the speaker first. */
  round: string[];
  /**
   * How much longer than straight the way by the edge that matters is: `path` − `direct` where
   * blocked, minus the same by the nearest edge where grazing. `null` on a clear line, and on a
   * blocked one without a way round (a sentence in `reasons`).
   */
  detour: number | null;
  /** Angle between the speaker's axis and the direction to the head. */
  offAxisDeg: number | null;
  /** Seen in the speaker's own frame: positive to the speaker's right. */
  offAxisHorizontalDeg: number | null;
  /** Positive upward. */
  offAxisVerticalDeg: number | null;
  line: Line;
  /** Ids of panels and obstacles on the straight line, nearest the speaker first. */
  blockedBy: string[];
  /** Ids of what a grazing line passes too near, the nearest first. */
  grazedBy: string[];
  /** Spreading, re 1 m on axis: free field, direct sound only. */
  levelDb: number | null;
  ears: Record<Side, EarArrival>;
  /** Octaves within the speaker's band; none where the plan gives no band. */
  bands: Band[];
  /** First order, shortest way first; levels at the middle of the speaker's band. */
  reflections: Reflection[];
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
  detail: 'full';
  placed: PlacedSpeaker[];
  seats: SeatResult[];
}
