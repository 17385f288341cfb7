import type { Arrival } from '../geometry';
import { inARow } from './thing-name';

/** What stands in a line: its name, with an article, by id. */
export type NameOf = (id: string) => string;

/** At low frequencies half the car is near a line: only the nearest are named. */
const MOST_NEAR = 2;

/**
 * How the sound gets from a speaker to a seat: "free", "free, but passes close to the wheel", "blocked by
 * the wheel; the path goes round the wheel, +12.3 mm".
 * @param length how lengths are written; left out: in mm, to a tenth
 */
export function lineWords(
  { line, blockedBy, grazedBy, round, detour }: Arrival,
  nameOf: NameOf,
  length: (mm: number) => string = inMm,
): string {
  const names = (ids: readonly string[]) => inARow([...new Set(ids.map(nameOf))]) || 'something';
  if (line === 'clear') return 'free';
  if (line === 'grazing') {
    const near = [...new Set(grazedBy.map(nameOf))];
    const others = near.length - MOST_NEAR;
    if (others <= 0) return `free, but passes close to ${names(grazedBy)}`;
    const named = near.slice(0, MOST_NEAR).join(', ');
    return `free, but passes close to ${named} and ${others} other ${others > 1 ? 'things' : 'thing'}`;
  }
  const blocked = `blocked by ${names(blockedBy)}`;
  return detour === null
    ? `${blocked}; no way round is known, so the path is the straight line`
    : `${blocked}; the path goes round ${names(round)}, +${length(detour)}`;
}

const inMm = (mm: number): string => `${mm.toFixed(1)} mm`;
