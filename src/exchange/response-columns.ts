import { readNumber } from './csv-cells';

/** What the columns of a response file hold; the first is always the frequency. */
export type ResponseColumns =
  /** One column of levels for each response. */
  | {
      kind: 'wide';
      /** Hz per unit of the first column. */
      factor: number;
      levels: { column: number; offAxisDeg: number | null }[];
      phase: number | null;
      /** True where nothing in the file says what the third of three columns holds. */
      unnamedThird?: boolean;
    }
  /** Level in the second column, its angle in another. */
  | { kind: 'long'; factor: number; angle: number; unnamedThird?: boolean };

/** "15", "15°", "15deg", "15 deg", "on-axis": an angle from 0 to 180, or null. */
export function angleOf(word: string): number | null {
  if (/^on[\s-]?axis$/i.test(word)) return 0;
  const value = readNumber(word.replace(/\s*(?:°|deg|degrees?)\s*$/i, ''));
  return value !== null && value >= 0 && value <= 180 ? value : null;
}

/**
 * The columns of a file, by its heading (words, perhaps none) and how many it has; or one sentence
 * on why they cannot be told apart.
 * @param third what a third column without a name holds
 */
export function columnsFrom(
  heading: readonly string[],
  count: number,
  third: 'phase' | 'angle',
): ResponseColumns | string {
  const named = heading.length === count ? heading : [];
  if (named.length === 0 && heading.filter((word) => angleOf(word) !== null).length > 1)
    return `the heading names ${heading.length} columns where there are ${count}`;
  const factor = /k\s*hz/i.test(named[0] ?? '') ? 1000 : 1;
  if (count < 2) return 'one column only; a frequency and a level are needed';
  const angles = named.slice(1).map(angleOf);
  if (angles.length > 0 && angles.every((angle) => angle !== null)) {
    const twice = angles.find((angle, i) => angles.indexOf(angle) !== i);
    if (twice !== undefined) return `the heading names ${twice}° twice`;
    const levels = angles.map((offAxisDeg, i) => ({ column: i + 1, offAxisDeg }));
    return { kind: 'wide', factor, levels, phase: null };
  }
  const level = [{ column: 1, offAxisDeg: null }];
  if (count === 2) return { kind: 'wide', factor, levels: level, phase: null };
  const angle = named.findIndex((name, i) => i > 1 && /angle|axis/i.test(name));
  if (angle > 0) return { kind: 'long', factor, angle };
  if (count > 3)
    return `${count} columns, and no heading that names the angle of each: write for example "Hz 0 15 30"`;
  const phase = /phase/i.test(named[2] ?? '');
  if (third === 'angle' && !phase) return { kind: 'long', factor, angle: 2, unnamedThird: true };
  return { kind: 'wide', factor, levels: level, phase: 2, ...(!phase && { unnamedThird: true }) };
}
