/** What a map is asked and what it answers. */
import type { AimRule } from './aim-rule';
import type { SpotAim } from './penalty';

export type MapQuantity = SpotAim | 'pathSpread' | 'blend';

export interface MapRequest {
  option: string;
  /** The speaker whose body, band, stand-off and aim are tried everywhere. */
  speaker: string;
  /** What to work out; a blend needs the quantities it weighs, listed or not. */
  quantities: readonly MapQuantity[];
  /** Ids; the worst of them counts. Left out: the seat delays are set for, or the first. */
  seats?: readonly string[];
  /** Of the grid, mm. Left out: 20. */
  step?: number;
  /** Ids; left out: every mountable panel. */
  panels?: readonly string[];
  /** Left out: the speaker's own aim. */
  aim?: AimRule;
  standoff?: number;
  /** Difference against this speaker where it stands; left out: against the mirrored twin. */
  partner?: string;
  /** Of the blend. */
  weights?: Partial<Record<SpotAim, number>>;
  /** Also whether the speaker fits. */
  fits?: boolean;
}

/** Where one panel's spots stand in the arrays: row by row, see `gridSpot`. */
export interface MapPanel {
  panel: string;
  columns: number;
  rows: number;
  first: number;
}

/** Whether a speaker can stand at a spot. */
export const NOT_ASKED = 0;
export const FITS = 1;
export const DOES_NOT_FIT = 2;
export const KEEP_CLEAR = 3;

export interface SpotMap {
  panels: readonly MapPanel[];
  /** 1 where a spot has been worked out. */
  done: Uint8Array;
  fit: Uint8Array;
  /**
   * One number for each spot and quantity asked: the worst over the seats. Difference: left path −
   * right path, of the seat where it is largest. Angle and loss: the largest. First reflection:
   * ms after the direct sound, the earliest. Path spread: the longest less the shortest path among
   * this speaker and the others of its side. Blend: the sum of weight × penalty, 0 is perfect.
   * NaN where there is none, or none yet.
   */
  values: Partial<Record<MapQuantity, Float64Array>>;
}

export interface MapProgress {
  done: number;
  total: number;
  /** Grows while the map is being made; the same object each time. */
  map: SpotMap;
}
