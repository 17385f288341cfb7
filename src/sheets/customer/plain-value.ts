import { LINES, type MeasureKind, type Value, type Who } from '../../geometry';
import { NO_VALUE } from '../../plan/units';
import type { PrintedWords } from '../words/use-words';

/** "mids", "mids 2", "subwoofer". */
export function whoName({ role, nth, lone }: Who, { t, names }: PrintedWords): string {
  const name = lone ? names.role(role) : names.roles(role);
  return nth > 0 ? t('name.numbered', { name, number: nth + 1 }) : name;
}

/**
 * A measure's value for a reader without the trade's words: differences of way as time.
 * @param speed of sound, mm/ms
 */
export function plainValue(
  kind: MeasureKind,
  { value, none }: Value,
  speed: number,
  { t, n }: PrintedWords,
): string {
  if (value === null) return none ? n.number(0) : NO_VALUE;
  switch (kind) {
    case 'difference':
      return n.time(Math.abs(value) / speed);
    case 'offAxisDeg':
      return n.angle(value);
    case 'obstructionDb':
      return n.level(value);
    case 'line':
      return t(`line.${LINES[value] ?? 'clear'}`);
    default:
      return n.number(value);
  }
}
