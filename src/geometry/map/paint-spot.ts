import type { Side } from '../input';
import { besideAt, reachOf } from './beside';
import { angleAt, firstReflectionTime, hearSpot, pathAt } from './hear-spot';
import { gridSpot } from './panel-grid';
import { penalty, SPOT_AIMS, type SpotAim } from './penalty';
import type { ReadyMap } from './prepare-map';
import { spotSide } from './spot-side';
import { standAt } from './stand';
import { DOES_NOT_FIT, FITS, KEEP_CLEAR, type MapPanel, type SpotMap } from './types';

/** A spot, and its mirror image where there is one; numbers into the map's arrays. */
export interface Couple {
  panel: number;
  cell: number;
  twin: { panel: number; cell: number } | null;
}

interface HeardSpot {
  paths: number[];
  /** Worst over the seats; NaN where there is none. */
  offAxisDeg: number;
  obstructionDb: number;
  firstReflectionTime: number;
  fit: number;
  side: Side | null;
}

/** Works out a spot and its twin, and writes both into the map. */
export function paintInPlace(ready: ReadyMap, map: SpotMap, { panel, cell, twin }: Couple): void {
  const here = hear(ready, panel, cell);
  const there = twin
    ? isSame(panel, cell, twin)
      ? here
      : hear(ready, twin.panel, twin.cell)
    : null;
  write(ready, map, panel, cell, here, there);
  if (twin && there) write(ready, map, twin.panel, twin.cell, there, here);
}

const isSame = (panel: number, cell: number, twin: { panel: number; cell: number }): boolean =>
  twin.panel === panel && twin.cell === cell;

function hear(ready: ReadyMap, p: number, cell: number): HeardSpot {
  const { room, seats, movers, own, needs, fits } = ready;
  const grid = ready.panels[p] as MapPanel;
  const spot = gridSpot(grid, cell);
  const panel = room.panelById.get(grid.panel);
  const side = panel ? spotSide(panel, spot.u, spot.v) : null;
  const { speaker, placed } = standAt(movers[side ?? own], spot, room);
  const heard: HeardSpot = {
    paths: [],
    offAxisDeg: 0,
    obstructionDb: 0,
    firstReflectionTime: Number.NaN,
    fit: 0,
    side,
  };
  for (const seat of seats) {
    // NaN stays once it is there: not knowing is worse than any number.
    if (needs.has('obstructionDb')) {
      const { path, offAxisDeg, obstructionDb } = hearSpot(speaker, placed, seat, room);
      heard.paths.push(path);
      heard.offAxisDeg = Math.max(heard.offAxisDeg, offAxisDeg ?? Number.NaN);
      heard.obstructionDb = Math.max(heard.obstructionDb, obstructionDb ?? Number.NaN);
    } else {
      if (ready.needsPath) heard.paths.push(pathAt({ speaker, placed }, seat, room));
      heard.offAxisDeg = Math.max(
        heard.offAxisDeg,
        angleAt({ speaker, placed }, seat) ?? Number.NaN,
      );
    }
    if (!needs.has('firstReflectionTime')) continue;
    const time = firstReflectionTime(speaker, placed, seat, room);
    if (time !== null && !(time >= heard.firstReflectionTime)) heard.firstReflectionTime = time;
  }
  if (fits) {
    const apart = 2 * Math.abs(placed.position[1]);
    // Mirror images are that far apart: most are clear of each other without being looked at.
    const beside = ready.partner || apart < 2 * reachOf(speaker) ? besideAt(ready, spot, side) : [];
    heard.fit = fits.isKeptClear(speaker, placed)
      ? KEEP_CLEAR
      : fits.fits(speaker, placed, beside)
        ? FITS
        : DOES_NOT_FIT;
  }
  return heard;
}

function write(
  ready: ReadyMap,
  { values, done, fit }: SpotMap,
  panel: number,
  cell: number,
  here: HeardSpot,
  twin: HeardSpot | null,
): void {
  const k = (ready.panels[panel] as MapPanel).first + cell;
  const worst: Record<SpotAim, number> = {
    difference: differenceOf(ready, here, twin),
    offAxisDeg: here.offAxisDeg,
    obstructionDb: here.obstructionDb,
    firstReflectionTime: here.firstReflectionTime,
  };
  done[k] = 1;
  fit[k] = here.fit;
  for (const aim of SPOT_AIMS) put(values[aim], k, worst[aim]);
  if (values.pathSpread) put(values.pathSpread, k, spreadOf(ready, here));
  if (values.blend) {
    let sum = 0;
    for (const aim of SPOT_AIMS)
      if (ready.weights[aim] > 0) {
        const value = worst[aim];
        sum += ready.weights[aim] * penalty(aim, Number.isNaN(value) ? null : value);
      }
    put(values.blend, k, sum);
  }
}

function put(values: Float64Array | undefined, k: number, value: number): void {
  if (values) values[k] = value;
}

/** Left path − right path at the seat where it is largest; NaN where there is no other. */
function differenceOf({ partner }: ReadyMap, here: HeardSpot, twin: HeardSpot | null): number {
  const others = partner?.paths ?? twin?.paths;
  if (!others) return Number.NaN;
  const isLeft = partner ? partner.side === 'right' : here.side !== 'right';
  let worst = Number.NaN;
  here.paths.forEach((path, s) => {
    const other = others[s] as number;
    const difference = isLeft ? path - other : other - path;
    if (!(Math.abs(difference) <= Math.abs(worst))) worst = difference;
  });
  return worst;
}

function spreadOf({ others }: ReadyMap, { side, paths }: HeardSpot): number {
  if (!side) return Number.NaN;
  let most = Number.NaN;
  paths.forEach((path, s) => {
    const span = others[side][s];
    if (!span) return;
    const spread = Math.max(path, span[1]) - Math.min(path, span[0]);
    if (!(spread <= most)) most = spread;
  });
  return most;
}
