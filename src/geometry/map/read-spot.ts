import type { Refusal } from '../cabin/model';
import type { PlanInput, Side } from '../input';
import { besideAt, twinOf } from './beside';
import { createSpotFitter, type MakeFitter, type Misfit, type Standing } from './fits';
import { firstReflectionTime, hearSpot, pathAt } from './hear-spot';
import type { GridSpot } from './panel-grid';
import { penalty, SPOT_AIMS, type SpotAim } from './penalty';
import { prepareMap } from './prepare-map';
import { spotSide } from './spot-side';
import { standAt } from './stand';
import type { MapQuantity, MapRequest } from './types';

/** Everything a map could show of one spot. */
export interface SpotReading {
  /** As {@link SpotMap} has them, worst over the seats; `null` where a map would hold NaN. */
  values: Readonly<Record<MapQuantity, number | null>>;
  /** Why the speaker cannot stand there, its moving twin or fixed partner included; empty: it can. */
  misfits: readonly Misfit[];
  /** The side of the car the spot belongs to; `null` on the centreline. */
  side: Side | null;
}

export interface SpotReader {
  /** `null` where the cabin has no such panel. */
  read(spot: GridSpot): SpotReading | null;
  /** Whether the speaker can stand there; cheaper than reading it. */
  fits(spot: GridSpot): boolean;
  /** Whether it would reach into a place kept clear there; `false` where the cabin has no such panel. */
  isKeptClear(spot: GridSpot): boolean;
}

export type SpotReaderAnswer = { ok: true; reader: SpotReader } | { ok: false; error: Refusal };

const ALL: readonly MapQuantity[] = [...SPOT_AIMS, 'pathSpread', 'blend'];

/** So long a step that every panel has one spot: the grids are not used here. */
const NO_GRID = 1e9;

/**
 * Reads single spots, on a grid or between, for a request to map panels: the numbers are those the
 * map holds and `evaluatePlan` gives. Made ready once, a few milliseconds a spot.
 */
export function createSpotReader(
  plan: PlanInput,
  request: MapRequest,
  makeFitter: MakeFitter = createSpotFitter,
): SpotReaderAnswer {
  const prepared = prepareMap(
    plan,
    { ...request, quantities: ALL, step: NO_GRID, fits: true },
    makeFitter,
  );
  if (!prepared.ok) return prepared;
  const { ready } = prepared;
  const { room, seats, partner, others, weights } = ready;

  function stand(spot: GridSpot) {
    const panel = room.panelById.get(spot.panel);
    if (!panel) return null;
    const side = spotSide(panel, spot.u, spot.v);
    return { side, standing: standAt(ready.movers[side ?? ready.own], spot, room) };
  }

  const pathsOf = (one: Standing) => seats.map((seat) => pathAt(one, seat, room));

  return {
    ok: true,
    reader: {
      read(spot) {
        const here = stand(spot);
        if (!here) return null;
        const { side, standing } = here;
        const { speaker, placed } = standing;
        const heard = seats.map((seat) => hearSpot(speaker, placed, seat, room));
        const times = seats.flatMap(
          (seat) => firstReflectionTime(speaker, placed, seat, room) ?? [],
        );
        const twin = partner ? null : stand(twinOf(spot));
        const theirs = partner?.paths ?? (twin && pathsOf(twin.standing));
        const isLeft = partner ? partner.side === 'right' : side !== 'right';
        const worst: Record<SpotAim, number | null> = {
          difference:
            theirs &&
            farthestFromZero(
              heard.map(({ path }, s) => (isLeft ? 1 : -1) * (path - (theirs[s] as number))),
            ),
          offAxisDeg: largest(heard.map(({ offAxisDeg }) => offAxisDeg)),
          obstructionDb: largest(heard.map(({ obstructionDb }) => obstructionDb)),
          firstReflectionTime: times.length > 0 ? Math.min(...times) : null,
        };
        const spreads = heard.flatMap(({ path }, s) => {
          const span = side && others[side][s];
          return span ? [Math.max(path, span[1]) - Math.min(path, span[0])] : [];
        });
        return {
          values: {
            ...worst,
            pathSpread: spreads.length > 0 ? Math.max(...spreads) : null,
            blend: SPOT_AIMS.reduce(
              (sum, aim) =>
                weights[aim] > 0 ? sum + weights[aim] * penalty(aim, worst[aim]) : sum,
              0,
            ),
          },
          misfits: ready.fits?.(speaker, placed, besideAt(ready, spot, side)) ?? [],
          side,
        };
      },
      fits(spot) {
        const here = stand(spot);
        const { speaker, placed } = here?.standing ?? {};
        return (
          (speaker &&
            placed &&
            ready.fits?.fits(speaker, placed, besideAt(ready, spot, here?.side ?? null))) ??
          false
        );
      },
      isKeptClear(spot) {
        const { speaker, placed } = stand(spot)?.standing ?? {};
        return (speaker && placed && ready.fits?.isKeptClear(speaker, placed)) ?? false;
      },
    },
  };
}

/** Not knowing one of them is worse than any number. */
const largest = (all: readonly (number | null)[]): number | null =>
  all.some((x) => x === null) ? null : Math.max(...(all as number[]));

const farthestFromZero = (all: readonly number[]): number =>
  all.reduce((worst, x) => (Math.abs(x) > Math.abs(worst) ? x : worst));
