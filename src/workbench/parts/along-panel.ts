import { distance, type Patch, pointOnPatch, type Vec3 } from '../../geometry';

/** Chords a panel's edge is measured by: within 0.1 mm of the curve on a windscreen. */
const CHORDS = 64;

export type Direction = 'u' | 'v';

/** Arc lengths from the start of a panel's u or v line to each of its chords' ends, mm. */
function arc(patch: Patch, along: Direction, across: number): number[] {
  const at = (t: number): Vec3 =>
    along === 'u' ? pointOnPatch(patch, t, across) : pointOnPatch(patch, across, t);
  const lengths = [0];
  let before = at(0);
  for (let i = 1; i <= CHORDS; i++) {
    const point = at(i / CHORDS);
    lengths.push((lengths[i - 1] ?? 0) + distance(before, point));
    before = point;
  }
  return lengths;
}

/** The whole length of the panel along u (at v = `across`) or along v (at u = `across`), mm. */
export function panelLength(patch: Patch, along: Direction, across: number): number {
  return arc(patch, along, across)[CHORDS] ?? 0;
}

/** How far along the panel a parameter `t` (0 to 1) is, mm, measured on its surface. */
export function toLength(patch: Patch, along: Direction, across: number, t: number): number {
  const lengths = arc(patch, along, across);
  const place = Math.min(1, Math.max(0, t)) * CHORDS;
  const i = Math.min(CHORDS - 1, Math.floor(place));
  const [a, b] = [lengths[i] ?? 0, lengths[i + 1] ?? 0];
  return a + (b - a) * (place - i);
}

/** The parameter, 0 to 1, at `length` mm along the panel: the inverse of {@link toLength}. */
export function fromLength(patch: Patch, along: Direction, across: number, length: number): number {
  const lengths = arc(patch, along, across);
  const whole = lengths[CHORDS] ?? 0;
  if (!(whole > 0) || length <= 0) return 0;
  if (length >= whole) return 1;
  const i = Math.max(
    1,
    lengths.findIndex((l) => l >= length),
  );
  const [a, b] = [lengths[i - 1] ?? 0, lengths[i] ?? 0];
  return (i - 1 + (b > a ? (length - a) / (b - a) : 0)) / CHORDS;
}
