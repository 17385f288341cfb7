/** Sound on its way from every speaker of an option to one listener, to be watched; mm and ms. */
import type { Role, Side } from '../input';
import type { Line } from '../result';
import type { Vec3 } from '../vector';

/** With every channel at once, or each as late as the alignment has it, in whole samples. */
export type MotionDelays = 'none' | 'aligned';

/** Where sound is waited for: either ear, and the middle between them, where delays bring together. */
export type Receiver = Side | 'head';

/** The sound of one speaker, spreading as a sphere where nothing is in its way. */
export interface Wave {
  speaker: string;
  role: Role;
  side: Side | null;
  pair: string | null;
  centre: Vec3;
  /** When it leaves, counted from the first channel's signal. */
  start: number;
  /** To the middle of the head. */
  line: Line;
  /** The way of what arrives there where it bends round something; `null` where it is straight. */
  round: readonly Vec3[] | null;
}

/**
 * `straight`: the sphere itself; `round`: later than the sphere, by the shortest way round what is
 * in between; `unknown`: something is in between and no way round it was found, so the time is the
 * straight line's and the sound comes later than that.
 */
export type Coming = 'straight' | 'round' | 'unknown';

/** The sound of one speaker reaches a place. */
export interface Reach {
  speaker: string;
  at: Receiver;
  time: number;
  /** When the sphere, which knows no obstacle, passes there. */
  free: number;
  comes: Coming;
}

export interface SlowMotion {
  option: string;
  seat: string;
  delays: MotionDelays;
  /** mm/ms */
  speed: number;
  /** In the order of the option's speakers. */
  waves: readonly Wave[];
  /** By time; at one time in the order of the speakers. */
  reaches: readonly Reach[];
  /** When the last of it has reached the last ear; 0 without speakers. */
  end: number;
  /** The seat the delays are for; `null` without delays, and for a compromise over several. */
  alignedFor: string | null;
  /** Why there are no delays although they were asked for. */
  problem?: string;
}
