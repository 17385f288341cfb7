import { DIMENSIONS, type DimensionInfo } from '../../geometry';
import { formatAngle, formatLength, type LengthUnit } from '../../plan/units';
import { angleKind, type FieldKind, lengthKind } from '../parts/field-kind';

/** How a dimension is typed and shown: lengths in the user's unit, angles in degrees. */
export const kindOf = (info: DimensionInfo, unit: LengthUnit): FieldKind =>
  info.unit === 'deg' ? angleKind : lengthKind(unit);

/** A value of a dimension with its unit: "270 mm", "24°". */
export const showDimension = (info: DimensionInfo, value: number, unit: LengthUnit): string =>
  info.unit === 'deg' ? formatAngle(value, value % 1 === 0 ? 0 : 1) : formatLength(value, unit);

/** "120 mm to 480 mm". */
export const showRange = (info: DimensionInfo, unit: LengthUnit): string =>
  `${showDimension(info, info.min, unit)} to ${showDimension(info, info.max, unit)}`;

/** "Seat height" → "seat height", but "A-pillar width" and "B-pillar from heel" as they are. */
const lowered = (label: string): string =>
  /^[A-Z]-/.test(label) ? label : label.charAt(0).toLowerCase() + label.slice(1);

const LABELS: ReadonlyMap<string, string> = new Map(
  DIMENSIONS.map(({ id, label }) => [id, lowered(label)]),
);

/** The engine's sentence with dimensions called as they are on screen, not as they are in a file. */
export const inWords = (message: string): string =>
  message.replace(/[A-Za-z]+/g, (word) => LABELS.get(word) ?? word);
