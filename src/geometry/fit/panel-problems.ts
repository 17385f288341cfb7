/** Does the speaker fit its panel: outline, curvature, cut-out, depth and airspace behind. */
import type { Panel } from '../cabin/model';
import { dot } from '../vector';
import type { Body } from './body';
import { type Ground, liftOf } from './panel-ground';
import { type FitProblem, litres, millimetres, nameOf } from './problem';

/**
 * A flange may lift off a curved panel so far before it wants a ring: what a gasket takes up, mm.
 * Choice of ours, no source.
 */
export const FLANGE_LIFT = 2;

/** Steeper than this on its panel, a flange stands on an angled ring, shaped to fit; degrees. */
export const ON_A_RING_DEG = 3;
const ON_A_RING = Math.cos((ON_A_RING_DEG * Math.PI) / 180);

/** Less than this is rounding, mm. */
const SLACK = 1e-6;

/** How far behind the panel's surface the body's deepest point lies, mm (negative: before it). */
export function depthBehindPanel(body: Body, ground: Ground, standoff: number): number {
  const straight = dot(body.axis, ground.normal);
  const slant = Math.sqrt(Math.max(0, 1 - straight * straight));
  return Math.max(0, body.depth * straight) + body.cutout * slant - standoff;
}

/**
 * Calls `report` with what the panel does not allow, until it answers true.
 * @returns whether it was stopped
 */
export function panelProblems(
  panel: Panel,
  ground: Ground,
  standoff: number,
  body: Body,
  report: (make: () => FitProblem) => boolean,
): boolean {
  const put = (kind: FitProblem['kind'], by: number | null, sentence: () => string) =>
    report(() => ({ kind, sentence: sentence(), by, with: panel.id, hard: false }));
  const on = () => nameOf(panel);
  if (!panel.mountable && put('no-panel', null, () => `nothing can be mounted on ${on()}`))
    return true;
  if (body.flange === 0) return false;

  const over = body.flange - ground.edge;
  if (
    over > SLACK &&
    put('outline', over, () => `the flange reaches ${millimetres(over)} over the edge of ${on()}`)
  )
    return true;

  const upright = dot(body.axis, ground.normal) >= ON_A_RING;
  const lift = upright ? liftOf(ground.bend, Math.min(body.cutout, body.flange), body.flange) : 0;
  const proud = lift - FLANGE_LIFT - standoff;
  if (
    proud > SLACK &&
    put(
      'curvature',
      proud,
      () =>
        `the flange lifts ${millimetres(lift)} off ${on()}, which is curved there: ` +
        `${millimetres(proud)} more than a gasket takes up`,
    )
  )
    return true;

  const behind = depthBehindPanel(body, ground, standoff);
  // A body wholly before the panel, in a pod, needs no opening, no depth and no airspace.
  if (behind <= SLACK) return false;
  const wide = body.cutout - ground.edge;
  if (
    wide > SLACK &&
    put('cutout', wide, () => `the cut-out reaches ${millimetres(wide)} over the edge of ${on()}`)
  )
    return true;

  const { depthBehind, airspaceBehind } = panel;
  if (depthBehind !== null) {
    const deep = behind - depthBehind;
    if (deep > SLACK && put('depth', deep, () => `${millimetres(deep)} too deep for ${on()}`))
      return true;
  }
  return airspaceProblem(airspaceBehind, body, behind, put, on);
}

function airspaceProblem(
  airspace: number | null,
  body: Body,
  behind: number,
  put: (kind: FitProblem['kind'], by: number | null, sentence: () => string) => boolean,
  on: () => string,
): boolean {
  if (airspace === null) return false;
  const own = (Math.PI * body.cutout ** 2 * Math.min(behind, body.depth)) / 1e6;
  const wanted = own + (body.airspaceLitres ?? 0);
  const short = wanted - airspace;
  if (short <= 1e-9) return false;
  return put(
    'airspace',
    short,
    () =>
      `${litres(short)} too little airspace behind ${on()}: ${litres(wanted)} needed, body included`,
  );
}
