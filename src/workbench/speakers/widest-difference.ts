import type { OptionResult } from '../../geometry';

/** The largest left-right difference of an option's pairs at a seat, mm; null without a pair. */
export function widestDifference(result: OptionResult | undefined, seatId: string): number | null {
  const seat = result?.seats.find(({ id }) => id === seatId) ?? result?.seats[0];
  const known = (seat?.pairs ?? []).flatMap(({ difference }) =>
    difference === null ? [] : [Math.abs(difference)],
  );
  return known.length > 0 ? Math.max(...known) : null;
}
