/** What is compared, in the trade's words: the names of rows, their values, and how two differ. */
import {
  KINDS,
  LINES,
  type Measure,
  type MeasureGroup,
  type Value,
  type Who,
} from '../../../geometry';
import { roleName, rolePlural } from '../../../plan/names';
import {
  formatAngle,
  formatFrequency,
  formatLength,
  formatLevel,
  formatTime,
  type LengthUnit,
  NO_VALUE,
} from '../../../plan/units';

export interface CompareWording {
  unit: LengthUnit;
  /** mm/ms: what a path takes in time. */
  speed: number;
}

export const GROUP_NAMES: Readonly<Record<MeasureGroup, string>> = {
  times: 'Times',
  levels: 'Levels',
  angles: 'Angles',
  obstruction: 'In the way',
  reflections: 'Reflections',
  fit: 'Fit and safety',
  stage: 'Whole stage',
};

/** "mids", "mids 2", "subwoofer". */
export const whoName = ({ role, nth, lone }: Who): string => {
  const name = lone ? roleName(role) : rolePlural(role);
  return nth > 0 ? `${name} ${nth + 1}` : name;
};

/** "midbasses to mids" */
export const crossingName = ({ below, above }: { below: Who; above: Who }): string =>
  `${whoName(below)} to ${whoName(above)}`;

/** The head of a row. */
export function measureName({ kind, who, side, crossing, octaveHz }: Measure): string {
  const of = who ? whoName(who) : '';
  const across = crossing ? crossingName(crossing) : '';
  switch (kind) {
    case 'difference':
      return `Left and right ${of} apart`;
    case 'pathSpread':
      return `Path spread on the ${side}`;
    case 'longestDelay':
      return 'Longest delay';
    case 'levelDifferenceDb':
      return `Left and right ${of} in level`;
    case 'offAxisDeg':
      return `Off axis, ${of}`;
    case 'line':
      return `Line, ${of}`;
    case 'obstructionDb':
      return `Loss in mid band, ${of}`;
    case 'firstReflectionTime':
      return `First reflection, ${of}`;
    case 'misfits':
      return 'Speakers that do not fit';
    case 'keepClear':
      return 'Speakers in places kept clear';
    case 'pillarAddedDeg':
      return `Added to the ${side} pillar`;
    case 'crossoverDb':
      return `Sum at hand-over, ${across}`;
    case 'crossoverDipDb':
      return `Deepest dip, ${across}`;
    case 'imageDeg':
      return 'Image, 250 Hz to 4 kHz';
    case 'imageSpreadDeg':
      return 'Image spread over its octaves';
    case 'imageOctaveDeg':
      return `Image at ${formatFrequency(octaveHz)}`;
  }
}

const LINE_WORDS = { clear: 'free', grazing: 'near miss', blocked: 'blocked' } as const;

/** "free", "near miss", "blocked". */
export const lineWord = (value: number | null): string => {
  const line = value === null ? undefined : LINES[value];
  return line ? LINE_WORDS[line] : NO_VALUE;
};

/** "4° right", "ahead". */
export function sideAngle(deg: number | null, atLimit = false): string {
  if (deg === null) return NO_VALUE;
  const whole = Math.round(Math.abs(deg));
  if (whole === 0) return 'ahead';
  return `${whole}° ${deg < 0 ? 'left' : 'right'}${atLimit ? ' or more' : ''}`;
}

/** A value by itself: "298 mm", "62°", "blocked", "none". */
export function valueWords(measure: Measure, value: Value, wording: CompareWording): string {
  const { kind } = measure;
  if (value.none) return 'none';
  if (value.value === null) return NO_VALUE;
  const number = KINDS[kind].signed && kind !== 'crossoverDb' ? Math.abs(value.value) : value.value;
  if (kind === 'imageDeg' || kind === 'imageOctaveDeg') return sideAngle(number, value.atLimit);
  if (kind === 'line') return lineWord(number);
  if (KINDS[kind].unit === 'speakers') return number === 0 ? 'none' : String(number);
  return amount(measure, number, wording);
}

/** A number of a measure in its unit. */
export function amount({ kind }: Measure, number: number, { unit }: CompareWording): string {
  switch (KINDS[kind].unit) {
    case 'mm':
      return formatLength(number, unit);
    case 'ms':
      return formatTime(number);
    case 'dB':
      return formatLevel(number);
    case 'deg':
      return formatAngle(number, kind === 'pillarAddedDeg' ? 1 : 0);
    default:
      return String(number);
  }
}

/** What stands smaller under a value: "0.87 ms, left nearer", "on the right". */
export function valueNote(
  measure: Measure,
  { value, side }: Value,
  { speed }: CompareWording,
): string {
  if (value === null) return '';
  switch (measure.kind) {
    case 'difference':
      return `${formatTime(Math.abs(value) / speed)}${side ? `, ${side} nearer` : ''}`;
    case 'pathSpread':
      return formatTime(value / speed);
    case 'levelDifferenceDb':
      return Math.abs(value) < 0.05 ? '' : `${value > 0 ? 'left' : 'right'} louder`;
    case 'offAxisDeg':
    case 'obstructionDb':
    case 'crossoverDb':
    case 'crossoverDipDb':
    case 'firstReflectionTime':
    case 'line':
      return side && value !== 0 ? side : '';
    default:
      return '';
  }
}
