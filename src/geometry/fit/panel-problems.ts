/** Does the speaker fit its panel: outline, curvature, cut-out, depth and airspace behind. */
import type { Panel } from '../cabin/model';
import { dot } from '../vector';
import type { Body } from './body';
import { type Ground, liftOf } from './panel-ground';
import { type FitProblem, litres, millimetres, nameOf } from './problem';
import { type EdgesOf, reachOver } from './seams';

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
  edgesOf: EdgesOf,
  report: (make: () => FitProblem) => boolean,
): boolean {
  const put: Put = (kind, by, sentence, of = panel) =>
    report(() => ({ kind, sentence: sentence(), by, with: of.id, hard: false }));
  const on = () => nameOf(panel);
  if (!panel.mountable && put('no-panel', null, () => `nothing can be mounted on ${on()}`))
    return true;
  if (body.flange === 0) return false;

  // Only what comes over its own panel's edge asks how the surface goes on there.
  const edgeFor = (radius: number) =>
    radius - ground.edge > SLACK
      ? reachOver(panel, ground, radius, edgesOf)
      : { edge: ground.edge, onto: [] };
  const over = body.flange - edgeFor(body.flange).edge;
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
  const opening = edgeFor(body.cutout);
  const wide = body.cutout - opening.edge;
  if (
    wide > SLACK &&
    put('cutout', wide, () => `the cut-out reaches ${millimetres(wide)} over the edge of ${on()}`)
  )
    return true;

  // An opening across a seam has less of what is free behind the two.
  for (const one of [panel, ...opening.onto]) {
    if (one.depthBehind === null) continue;
    const deep = behind - one.depthBehind;
    if (
      deep > SLACK &&
      put('depth', deep, () => `${millimetres(deep)} too deep for ${nameOf(one)}`, one)
    )
      return true;
  }
  return airspaceProblem(panel.airspaceBehind, body, behind, put, on);
}

type Put = (
  kind: FitProblem['kind'],
  by: number | null,
  sentence: () => string,
  of?: Panel,
) => boolean;

function airspaceProblem(
  airspace: number | null,
  body: Body,
  behind: number,
  put: Put,
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
