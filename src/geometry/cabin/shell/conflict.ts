/** Two dimensions that cannot both be true of one closed cabin, and why, in words. */
import type { DimensionId } from '../dimensions';

export interface Conflict {
  first: DimensionId;
  second: DimensionId;
  because: string;
}

/** Collects what disagrees while the shell is laid out; the first found is the one reported. */
export class Conflicts {
  readonly found: Conflict[] = [];

  /** Notes a conflict unless the condition holds (a NaN never holds). */
  need(holds: boolean, first: DimensionId, second: DimensionId, because: string): void {
    if (!holds) this.found.push({ first, second, because });
  }
}
