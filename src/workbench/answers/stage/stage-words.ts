import type { CompareRow, Stage } from '../../../geometry';
import { optionTitle } from '../../../plan/edits';
import { formatLength, type LengthUnit } from '../../../plan/units';

/**
 * "With “Mids on the pillars” the paths from one side's speakers differ by up to 410 mm on the left
 * and 365 mm on the right." One for each option.
 */
export function spreadSentences(
  options: readonly Stage['option'][],
  rows: readonly CompareRow[],
  unit: LengthUnit,
): string[] {
  return options.map((option) => {
    const spreads = (['left', 'right'] as const).flatMap((side) => {
      const row = rows.find(
        ({ measure }) => measure.kind === 'pathSpread' && measure.side === side,
      );
      const value = row?.cells.find((cell) => cell.option === option.id)?.value.value;
      return typeof value === 'number' ? [`${formatLength(value, unit)} on the ${side}`] : [];
    });
    const title = `“${optionTitle(option)}”`;
    return spreads.length === 0
      ? `With ${title} no side has two speakers whose paths could differ.`
      : `With ${title} the paths from the speakers of one side differ by up to ${spreads.join(' and ')}.`;
  });
}

/** "12° L", "ahead", "90° R+" where it is at least so far. */
export function shortAngle(deg: number, atLimit = false): string {
  const whole = Math.round(Math.abs(deg));
  if (whole === 0) return 'ahead';
  return `${whole}° ${deg < 0 ? 'L' : 'R'}${atLimit ? '+' : ''}`;
}
