import { useMemo } from 'react';
import {
  createSpotReader,
  type GridSpot,
  type MapRequest,
  type SpotReader,
  type SpotReading,
  type Stage,
} from '../../../geometry';

export type Reading = (spot: GridSpot) => SpotReading | null;

/**
 * Reads single spots for a map request; made ready when first asked, since that takes a moment.
 * @param key equal where stage and request lead to the same map
 */
export function useReader(
  stage: Stage | null,
  request: MapRequest | null,
  key: string,
): { reading: Reading } & Pick<SpotReader, 'fits' | 'isKeptClear'> {
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key says when it is another map
  return useMemo(() => {
    let reader: SpotReader | null | undefined;
    let last: { spot: GridSpot; reading: SpotReading | null } | null = null;
    const ready = () => {
      if (reader === undefined) {
        const answer = stage && request ? createSpotReader(stage.plan, request) : null;
        reader = answer?.ok ? answer.reader : null;
      }
      return reader;
    };
    return {
      reading: (spot) => {
        const { panel, u, v } = spot;
        if (last?.spot.panel !== panel || last.spot.u !== u || last.spot.v !== v)
          last = { spot, reading: ready()?.read(spot) ?? null };
        return last.reading;
      },
      fits: (spot) => ready()?.fits(spot) ?? false,
      isKeptClear: (spot) => ready()?.isKeptClear(spot) ?? false,
    };
  }, [key]);
}
