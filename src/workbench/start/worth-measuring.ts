import { type DimensionInfo, type DimensionRank, dimensionInfo } from '../../geometry';

/** As many as are measured in ten minutes: common practice, no source. */
export const HOW_MANY = 8;

/** Smaller changes than this are not heard and hardly measured, mm. Chosen by eye. */
const WORTH = 0.5;

export interface WorthMeasuring {
  info: DimensionInfo;
  rank: DimensionRank;
}

/** The first few of a ranking that move anything to speak of, most telling first. */
export function worthMeasuring(ranks: readonly DimensionRank[]): WorthMeasuring[] {
  const list: WorthMeasuring[] = [];
  for (const rank of ranks) {
    const info = dimensionInfo(rank.dimension);
    const change = Math.max(rank.path?.change ?? 0, rank.difference?.change ?? 0);
    if (info && change >= WORTH && list.length < HOW_MANY) list.push({ info, rank });
  }
  return list;
}
