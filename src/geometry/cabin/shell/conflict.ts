/** Dimensions that cannot all be true of one closed cabin, and why, in words. */
import type { DimensionId } from '../dimensions';

export interface Conflict {
  because: string;
  /** Every dimension that takes part, the ones an installer would suspect first in front. */
  among: readonly DimensionId[];
}

/** Collects what disagrees while the shell is laid out; the first found is the one reported. */
export class Conflicts {
  readonly found: Conflict[] = [];

  /** Notes a conflict unless the condition holds (a NaN never holds). */
  need(holds: boolean, because: string, ...among: DimensionId[]): void {
    if (!holds) this.found.push({ because, among });
  }
}

/**
 * The two to name: those that differ from the template first, since the template itself agrees;
 * without a template the two suspected first.
 */
export function twoOf(
  { among }: Conflict,
  values: Readonly<Record<string, number>>,
  template: Readonly<Record<string, number>> | undefined,
): [DimensionId, DimensionId] {
  const changed = template ? among.filter((id) => values[id] !== template[id]) : [];
  const [first, second] = new Set([...changed, ...among]);
  return [first as DimensionId, second as DimensionId];
}
