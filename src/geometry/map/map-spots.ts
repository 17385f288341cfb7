import type { Refusal } from '../cabin/model';
import type { PlanInput } from '../input';
import { createSpotFitter, type MakeFitter } from './fits';
import { type Couple, paintInPlace } from './paint-spot';
import { gridSize, twinPanel, twinSpot } from './panel-grid';
import { prepareMap, type ReadyMap } from './prepare-map';
import type { MapProgress, MapRequest, SpotMap } from './types';

export type MapAnswer = { ok: true; map: SpotMap } | { ok: false; error: Refusal };

/** One of several equal shares of the work. */
export interface MapShare {
  index: number;
  of: number;
}

/**
 * Quantities over panels, from a coarse grid to the whole one: every eighth spot either way first,
 * then every fourth, and so on, so that a picture stands early and is refined while it is looked
 * at. The numbers are those `evaluatePlan` gives for the speaker at the same spot. A spot and its
 * mirror image are worked out together, since each is the other's twin.
 */
export function* mapInSteps(
  plan: PlanInput,
  request: MapRequest,
  share: MapShare = { index: 0, of: 1 },
  makeFitter: MakeFitter = createSpotFitter,
): Generator<MapProgress, MapAnswer> {
  const prepared = prepareMap(plan, request, makeFitter);
  if (!prepared.ok) return prepared;
  const { ready } = prepared;
  const couples = couplesOf(ready).filter((_, n) => n % share.of === share.index);
  const last = ready.panels[ready.panels.length - 1];
  const size = last ? last.first + gridSize(last) : 0;
  const map: SpotMap = {
    panels: ready.panels.map(({ panel, columns, rows, first }) => ({
      panel,
      columns,
      rows,
      first,
    })),
    done: new Uint8Array(size),
    fit: new Uint8Array(size),
    values: Object.fromEntries(
      request.quantities.map((name) => [name, new Float64Array(size).fill(Number.NaN)]),
    ),
  };
  for (const [n, couple] of couples.entries()) {
    paintInPlace(ready, map, couple);
    yield { done: n + 1, total: couples.length, map };
  }
  return { ok: true, map };
}

/** {@link mapInSteps} in one go. */
export function mapSpots(
  plan: PlanInput,
  request: MapRequest,
  share?: MapShare,
  makeFitter?: MakeFitter,
): MapAnswer {
  const steps = mapInSteps(plan, request, share, makeFitter);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

const PASSES = [8, 4, 2, 1] as const;

/** Every spot once, with its twin, in the order they are painted. */
function couplesOf({ panels, needs, partner }: ReadyMap): Couple[] {
  const numberOf = new Map(panels.map(({ panel }, p) => [panel, p]));
  const pairUp = needs.has('difference') && !partner;
  const byPass: Couple[][] = PASSES.map(() => []);
  panels.forEach((grid, p) => {
    const twin = twinPanel(grid.panel);
    const isAcross = twin === grid.panel;
    const q = pairUp ? numberOf.get(twin) : undefined;
    // The twin's panel has painted both already.
    if (q !== undefined && q < p) return;
    for (let cell = 0; cell < gridSize(grid); cell++) {
      const other = twinSpot(grid, cell, isAcross);
      if (q === p && other < cell) continue;
      const column = cell % grid.columns;
      const row = Math.floor(cell / grid.columns);
      const pass = PASSES.findIndex((stride) => column % stride === 0 && row % stride === 0);
      byPass[pass]?.push({
        panel: p,
        cell,
        twin: q === undefined ? null : { panel: q, cell: other },
      });
    }
  });
  return byPass.flat();
}
