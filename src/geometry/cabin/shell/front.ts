/** Screen, A-pillars, belt line and mirror corner: the points the front of the cabin hangs on. */

import { add, along, direction, dot, length, mix, radians, sub, type Vec3 } from '../../vector';
import type { Dimensions } from '../dimensions';
import type { Conflicts } from './conflict';
import { atX } from './weave';

/** Share of the screen's bow at its base that is left at its top. Typical, from memory. */
const TOP_BOW = 0.55;
/** Share of the roof's crown at the screen's top edge. Typical, from memory. */
export const HEADER_CROWN = 0.75;
/** How far the pillar's top leans from the side glass towards the screen: lateral part of its width. */
const PILLAR_LATERAL = 0.62;
/** The screen's bulge out of the flat in its vertical section, at the middle. */
const SCREEN_BULGE = 14;
/** How far its side edge swells outboard, as a control point. */
const SIDE_BULGE = 5;
/** Repetitions until the pillar's width stands to well under a thousandth of a millimetre. */
const SETTLE = 24;

export interface Front {
  /** Screen base and top on the centreline. */
  base: Vec3;
  top: Vec3;
  /** Right-hand corners of the screen. */
  baseCorner: Vec3;
  topCorner: Vec3;
  /** Middle control points of the screen's base and top edges, and of its side edge. */
  baseBend: Vec3;
  topBend: Vec3;
  sideBend: Vec3;
  /** x, z of the middle row's middle control point. */
  middleBend: readonly [number, number];
  /** Point of the belt line (a straight line from the screen's base corner to the B-pillar). */
  belt: (x: number) => Vec3;
  /** Rear edge of the A-pillar: foot on the belt line and top at the roof edge. */
  pillarFoot: Vec3;
  pillarTop: Vec3;
  /** Rear end of the mirror corner on the belt line, and its tip on the pillar. */
  mirrorRear: Vec3;
  mirrorTip: Vec3;
  /** How far inboard side glass stands at a height above the belt, mm per mm. */
  lean: number;
}

export function layOutFront(d: Dimensions, conflicts: Conflicts): Front {
  const lean = Math.tan(radians(d.sideGlassTumblehome));
  const rise = (d.headerX - d.cowlX) / Math.tan(radians(d.screenSlope));
  const headerHeight = d.cowlHeight + rise;
  const topBow = TOP_BOW * d.screenBow;
  conflicts.need(
    d.headerX - d.cowlX > 120 && rise > 120,
    'the screen would have no height',
    'headerX',
    'cowlX',
    'screenSlope',
  );
  const headerCrown = HEADER_CROWN * d.roofCrown;
  const base: Vec3 = [d.cowlX, 0, d.cowlHeight];
  const top: Vec3 = [d.headerX, 0, headerHeight];
  const baseCorner: Vec3 = [d.cowlX + d.screenBow, d.cowlWidth / 2, d.cowlHeight];

  const run = d.seatReach - baseCorner[0];
  conflicts.need(
    run > 250,
    'the seat would stand in the windscreen',
    'seatReach',
    'cowlX',
    'screenBow',
  );
  conflicts.need(
    Math.abs(d.beltHeight - d.cowlHeight) < 0.4 * run,
    'the belt line would run too steeply from the screen to the seat',
    'beltHeight',
    'cowlHeight',
    'seatReach',
    'cowlX',
  );
  conflicts.need(
    Math.abs(d.shoulderRoom - d.cowlWidth) < 0.6 * run,
    'the doors would stand too far askew',
    'shoulderRoom',
    'cowlWidth',
    'seatReach',
    'cowlX',
  );
  const beltAtSeat: Vec3 = [d.seatReach, d.shoulderRoom / 2, d.beltHeight];
  const belt = (x: number) => atX(baseCorner, beltAtSeat, x);

  // The pillar's top hangs on the side glass, the glass on the pillar's top, and the width is
  // measured between the bent front edge and the rear edge: settled by repetition.
  let topCorner: Vec3 = [d.headerX + topBow, d.cowlWidth / 2 - 100, headerHeight - headerCrown];
  let pillarTop = topCorner;
  let pillarFoot = baseCorner;
  let sideBend = baseCorner;
  let width = d.pillarWidth;
  const out = screenOut(d.screenSlope);
  const beltAlong = direction(sub(beltAtSeat, baseCorner)) ?? [1, 0, 0];
  for (let pass = 0; pass < SETTLE; pass++) {
    const e = direction(sub(topCorner, baseCorner)) ?? [0, 0, 1];
    const sine = length(along(beltAlong, e, -dot(beltAlong, e)));
    pillarFoot = along(baseCorner, beltAlong, width / sine);
    pillarTop = along(topCorner, acrossPillar(e), width);
    const inside = belt(pillarTop[0]);
    const y = inside[1] - Math.max(0, pillarTop[2] - inside[2]) * lean;
    topCorner = [topCorner[0], topCorner[1] + (y - pillarTop[1]), topCorner[2]];
    pillarTop = [pillarTop[0], y, pillarTop[2]];
    sideBend = add(mix(baseCorner, topCorner, 0.5), [out[0], SIDE_BULGE, out[2]]);
    const edge = mix(mix(baseCorner, topCorner, 0.5), sideBend, 0.5);
    width *= d.pillarWidth / distanceToLine(edge, pillarFoot, pillarTop);
  }
  conflicts.need(
    topCorner[1] > 260,
    'the screen would close to a point at its top',
    'sideGlassTumblehome',
    'shoulderRoom',
    'screenSlope',
    'headerX',
    'cowlWidth',
    'cowlX',
    'cowlHeight',
    'beltHeight',
    'pillarWidth',
  );
  conflicts.need(
    pillarTop[2] > pillarFoot[2] + 120,
    'the screen would end below the belt line',
    'beltHeight',
    'screenSlope',
    'headerX',
    'cowlX',
    'cowlHeight',
    'roofCrown',
    'pillarWidth',
  );

  const mirrorRear = along(pillarFoot, beltAlong, d.mirrorCornerLength);
  const mirrorX = mirrorRear[0];
  const share = Math.min(0.55, (mirrorX - pillarFoot[0]) / (pillarTop[0] - pillarFoot[0]));
  const mirrorTip = mix(pillarFoot, pillarTop, share);
  conflicts.need(
    mirrorX < d.bPillarX - 150 && pillarTop[0] < d.bPillarX - 80,
    'the front side window would have no length',
    'bPillarX',
    'headerX',
    'mirrorCornerLength',
    'pillarWidth',
    'cowlX',
    'screenBow',
  );

  // A quadratic through a middle point needs its control point twice as far out.
  const centre = along(mix(base, top, 0.5), out, 2);
  return {
    base,
    top,
    baseCorner,
    topCorner,
    baseBend: [2 * base[0] - baseCorner[0], 0, 2 * base[2] - baseCorner[2]],
    topBend: [2 * top[0] - topCorner[0], 0, 2 * top[2] - topCorner[2]],
    sideBend,
    middleBend: [2 * centre[0] - sideBend[0], 2 * centre[2] - sideBend[2]],
    belt,
    pillarFoot,
    pillarTop,
    mirrorRear,
    mirrorTip,
    lean,
  };
}

/** The screen's bulge, square to it, seen from the side. */
function screenOut(slopeDeg: number): Vec3 {
  const slope = radians(slopeDeg);
  return [-Math.cos(slope) * SCREEN_BULGE, 0, Math.sin(slope) * SCREEN_BULGE];
}

function distanceToLine(point: Vec3, a: Vec3, b: Vec3): number {
  const e = direction(sub(b, a)) ?? [0, 0, 1];
  const ap = sub(point, a);
  return length(along(ap, e, -dot(ap, e)));
}

/** Unit vector across the pillar's top, square to its length: rearward, outboard, down. */
function acrossPillar(e: Vec3): Vec3 {
  const h = Math.sqrt(e[0] * e[0] + e[2] * e[2]);
  const a = (-PILLAR_LATERAL * e[1]) / h;
  const b = Math.sqrt(Math.max(0.05, 1 - PILLAR_LATERAL * PILLAR_LATERAL - a * a));
  return [(a * e[0] + b * e[2]) / h, PILLAR_LATERAL, (a * e[2] - b * e[0]) / h];
}
