import type { MapQuantity } from '../../../geometry';
import { PAINTED_UNITS } from '../../../plan/painted';
import {
  formatAngle,
  formatLength,
  formatLevel,
  formatNumber,
  formatTime,
  type LengthUnit,
  NO_VALUE,
  signedLength,
} from '../../../plan/units';

/** What can be painted, in the order it is offered. */
export const QUANTITIES: readonly MapQuantity[] = [
  'difference',
  'offAxisDeg',
  'obstructionDb',
  'firstReflectionTime',
  'pathSpread',
  'blend',
];

interface Words {
  /** In the list of choices. */
  title: string;
  /** "Least difference where it fits". */
  best: string;
  /** One sentence under the legend. */
  means: string;
}

export const WORDS: Readonly<Record<MapQuantity, Words>> = {
  difference: {
    title: 'Difference, left minus right',
    best: 'Least difference',
    means: 'Painted by its size, whichever side is later; the reading says which.',
  },
  offAxisDeg: {
    title: 'Off-axis angle',
    best: 'Smallest angle',
    means: 'With the speaker aimed there as it is aimed now.',
  },
  obstructionDb: {
    title: 'Obstruction',
    best: 'Least obstruction',
    means: 'What is lost round whatever is in the way, at the middle of the speaker’s band.',
  },
  firstReflectionTime: {
    title: 'Time to the first reflection',
    best: 'Latest first reflection',
    means: 'After the direct sound. Plain where nothing is thrown back.',
  },
  pathSpread: {
    title: 'Path spread of its side',
    best: 'Least spread',
    means: 'Longest less shortest path among this speaker and the others of its side.',
  },
  blend: {
    title: 'Blend by weights',
    best: 'Lowest blend',
    means: 'The sum of weight times penalty: 0 could not be better.',
  },
};

/** The later the first reflection the better; of all else, less is better. */
export const moreIsBetter = (quantity: MapQuantity): boolean => quantity === 'firstReflectionTime';

/** "283 mm", "31°", "2.4 dB", "1.20 ms", "0.85". */
export function valueText(
  quantity: MapQuantity,
  value: number | null | undefined,
  unit: LengthUnit,
): string {
  switch (PAINTED_UNITS[quantity]) {
    case 'length':
      return formatLength(value, unit);
    case 'deg':
      return formatAngle(value);
    case 'db':
      return formatLevel(value);
    case 'ms':
      return formatTime(value);
    case 'none':
      return formatNumber(value, 2);
  }
}

/** As {@link valueText}; a difference with its sign, and which side is later. */
export function readingText(
  quantity: MapQuantity,
  value: number | null | undefined,
  unit: LengthUnit,
): string {
  if (quantity === 'firstReflectionTime' && (value === null || value === undefined)) return 'none';
  if (quantity !== 'difference') return valueText(quantity, value, unit);
  const text = signedLength(value, unit);
  if (text === NO_VALUE || !value || /^[0.]+ /.test(text)) return text;
  return `${text}, ${value > 0 ? 'left' : 'right'} later`;
}

/** "mm", "in", "degrees", "dB", "ms"; nothing for a bare number. */
export function unitWord(quantity: MapQuantity, unit: LengthUnit): string {
  const words = { length: unit, deg: 'degrees', db: 'dB', ms: 'ms', none: '' } as const;
  return words[PAINTED_UNITS[quantity]];
}
