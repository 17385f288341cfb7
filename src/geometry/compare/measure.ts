/** What options are compared by: each measure's unit, which way is better, and how fine it is told. */
import type { Role, Side } from '../input';
import { ANGLE_SCALE_DEG, DIFFERENCE_SCALE, OBSTRUCTION_SCALE_DB } from '../map/penalty';

export type MeasureKind =
  | 'difference'
  | 'pathSpread'
  | 'longestDelay'
  | 'levelDifferenceDb'
  | 'offAxisDeg'
  | 'line'
  | 'obstructionDb'
  | 'firstReflectionTime'
  | 'misfits'
  | 'keepClear'
  | 'pillarAddedDeg'
  | 'crossoverDb'
  | 'crossoverDipDb'
  | 'imageDeg'
  | 'imageSpreadDeg'
  | 'imageOctaveDeg';

export type MeasureGroup =
  | 'times'
  | 'levels'
  | 'angles'
  | 'obstruction'
  | 'reflections'
  | 'fit'
  | 'stage';

/** A pair, or a speaker without a twin, as it is found again in another option. */
export interface Who {
  role: Role;
  /** From 0, among the pairs (or the lone speakers) of that role. */
  nth: number;
  /** A speaker without a twin. */
  lone?: true;
}

/** One row: a kind, and what it is told of. */
export interface Measure {
  /** The same in every option of a plan. */
  id: string;
  kind: MeasureKind;
  /** `null`: of the option as a whole. */
  seat: string | null;
  who?: Who;
  /** Of the car. */
  side?: Side;
  /** Which pair hands over to which. */
  crossing?: { below: Who; above: Who };
  octaveHz?: number;
}

export interface KindInfo {
  group: MeasureGroup;
  unit: 'mm' | 'ms' | 'dB' | 'deg' | 'speakers' | 'line';
  /** `none`: a matter of taste. */
  better: 'less' | 'more' | 'none';
  /** Told with its sign, compared without. */
  signed?: true;
  /** What differs by less in the last digit told is alike. */
  resolution: number;
  /**
   * How much of it weighs as much as a penalty of 1 when reasons are put in order. Where the search
   * has a scale it is that one; the others are choices of ours, no source.
   */
  scale: number;
  /** Takes long: uncertainty only at the seat asked about. */
  slow?: true;
}

/** Times of the search's penalties are not straight in ms: see `penalty`. */
const REFLECTION_TELLING = 2;

export const KINDS: Readonly<Record<MeasureKind, KindInfo>> = {
  difference: {
    group: 'times',
    unit: 'mm',
    better: 'less',
    signed: true,
    resolution: 1,
    scale: DIFFERENCE_SCALE,
  },
  pathSpread: {
    group: 'times',
    unit: 'mm',
    better: 'less',
    resolution: 1,
    scale: DIFFERENCE_SCALE,
  },
  longestDelay: { group: 'times', unit: 'ms', better: 'less', resolution: 0.01, scale: 4 },
  levelDifferenceDb: {
    group: 'levels',
    unit: 'dB',
    better: 'less',
    signed: true,
    resolution: 0.1,
    scale: OBSTRUCTION_SCALE_DB,
  },
  offAxisDeg: {
    group: 'angles',
    unit: 'deg',
    better: 'less',
    resolution: 1,
    scale: ANGLE_SCALE_DEG,
  },
  line: { group: 'obstruction', unit: 'line', better: 'less', resolution: 0.5, scale: 4 },
  obstructionDb: {
    group: 'obstruction',
    unit: 'dB',
    better: 'less',
    resolution: 0.1,
    scale: OBSTRUCTION_SCALE_DB,
  },
  firstReflectionTime: {
    group: 'reflections',
    unit: 'ms',
    better: 'more',
    resolution: 0.01,
    scale: REFLECTION_TELLING,
  },
  misfits: { group: 'fit', unit: 'speakers', better: 'less', resolution: 0.5, scale: 1 },
  keepClear: { group: 'fit', unit: 'speakers', better: 'less', resolution: 0.5, scale: 0.25 },
  pillarAddedDeg: { group: 'fit', unit: 'deg', better: 'less', resolution: 0.1, scale: 2 },
  crossoverDb: {
    group: 'stage',
    unit: 'dB',
    better: 'less',
    signed: true,
    resolution: 0.1,
    scale: OBSTRUCTION_SCALE_DB,
    slow: true,
  },
  crossoverDipDb: {
    group: 'stage',
    unit: 'dB',
    better: 'more',
    resolution: 0.1,
    scale: OBSTRUCTION_SCALE_DB,
    slow: true,
  },
  imageDeg: {
    group: 'stage',
    unit: 'deg',
    better: 'none',
    resolution: 1,
    scale: ANGLE_SCALE_DEG,
    slow: true,
  },
  imageSpreadDeg: {
    group: 'stage',
    unit: 'deg',
    better: 'less',
    resolution: 1,
    scale: ANGLE_SCALE_DEG,
    slow: true,
  },
  imageOctaveDeg: {
    group: 'stage',
    unit: 'deg',
    better: 'none',
    resolution: 1,
    scale: ANGLE_SCALE_DEG,
    slow: true,
  },
};

/** What one option has of a measure. */
export interface Value {
  /** `null` with a reason, or because there is nothing of the kind (`none`). */
  value: number | null;
  /** There is none, and that is the best there could be: no reflection. */
  none?: true;
  reason?: string;
  /** The nearer or worse side, where one can be named. */
  side?: Side;
  /** At least this much: the image at its limit. */
  atLimit?: true;
  /** What keeps speakers from fitting. */
  problems?: readonly { speaker: string; sentence: string; hard: boolean }[];
}

export type Values = ReadonlyMap<string, Value>;

const whoId = ({ role, nth, lone }: Who): string => `${role}${nth}${lone ? 'lone' : ''}`;

export function measureOf(
  kind: MeasureKind,
  seat: string | null,
  of: Omit<Measure, 'id' | 'kind' | 'seat'> = {},
): Measure {
  const { who, side, crossing, octaveHz } = of;
  const id = [
    kind,
    seat ?? '*',
    who && whoId(who),
    crossing && `${whoId(crossing.below)}>${whoId(crossing.above)}`,
    side,
    octaveHz,
  ]
    .filter((part) => part !== undefined)
    .join(' ');
  return { id, kind, seat, ...of };
}

/**
 * What is compared: the value without its sign where that only tells the side; nothing at all counts
 * as infinitely late. `null` where it is not known.
 */
export function compared({ kind }: Measure, value: Value | undefined): number | null {
  if (!value) return null;
  if (value.none) return KINDS[kind].better === 'more' ? Infinity : 0;
  if (value.value === null) return null;
  return KINDS[kind].signed ? Math.abs(value.value) : value.value;
}

/** Alike as far as the digits told go. */
export function isAlike({ kind }: Measure, a: number, b: number): boolean {
  if (a === b) return true;
  const { resolution } = KINDS[kind];
  return (
    Math.abs(a - b) < resolution / 2 || Math.round(a / resolution) === Math.round(b / resolution)
  );
}
