import type { SeatResult } from '../../../geometry';

/** The pair whose difference is widest at the seat: the one most in want of another place. */
export function widestPair(seat: Pick<SeatResult, 'pairs'> | null): string | null {
  let widest: { pair: string; size: number } | null = null;
  for (const { pair, difference } of seat?.pairs ?? []) {
    const size = Math.abs(difference ?? 0);
    if (!widest || size > widest.size) widest = { pair, size };
  }
  return widest?.pair ?? null;
}
