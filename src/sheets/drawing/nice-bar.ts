import { type LengthUnit, MM_PER_INCH } from '../../plan/units';

const NICE_MM = [50, 100, 200, 250, 500, 1000, 2000];
const NICE_INCHES = [2, 4, 6, 12, 24, 36, 48, 72];

/** How long a scale bar is in the car, mm: a round number that takes at most `most` mm of paper. */
export function niceBar(scale: number, unit: LengthUnit, most: number): number {
  const lengths = unit === 'in' ? NICE_INCHES.map((inches) => inches * MM_PER_INCH) : NICE_MM;
  return lengths.filter((mm) => mm * scale <= most).at(-1) ?? (lengths[0] as number);
}
