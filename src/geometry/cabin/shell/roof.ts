/** Roof, roof edges and the glass behind the front doors: everything above the belt line. */

import { mix, radians, type Vec3 } from '../../vector';
import type { Dimensions } from '../dimensions';
import type { Patch } from '../model';
import { patchPartials, pointOnPatch } from '../patch';
import type { Conflicts } from './conflict';
import type { Front } from './front';
import { REAR_BOW, type Rear } from './rear';
import { B_TOP_WIDTH, EDGE_DOWN, layOutUprights, type Upright } from './uprights';
import { across, type Net } from './weave';

/** The B-pillar leans rearward by this much from belt line to roof edge. Typical, from memory. */
const B_LEAN = 22;
/** Width of the trim between the side glass and the headliner, across and down. Typical. */
const EDGE_ACROSS = 46;
/** Shares of the roof's crown and of the rear bow left at the roof's rear end. */
const REAR_CROWN = 0.85;
const REAR_TOP_BOW = 0.6;
/** Rise of the rear half of the roof out of the straight, as a share of its length. */
const REAR_ARCH = 0.016;

export interface Roof {
  roof: Net;
  rearRoof: Net;
  /** Roof edge above the front door: lower edge (glass side) and upper edge (roof side) bends. */
  edgeLowerBend: Vec3;
  edgeUpperBend: Vec3;
  rearEdgeUpperBend: Vec3;
  /** Roof-side corners: above the B-pillar and above the rear glass. */
  sideB: Vec3;
  sideRear: Vec3;
  rearBend: readonly [number, number];
  /** B-pillar's upper corners. */
  bTopFront: Vec3;
  bTopRear: Vec3;
  /** Front and rear of the C-pillar; the rear one is the rear glass's edge or a third window's. */
  cFront: Upright;
  cRear: Upright | null;
  /** Front edge of the pillar beside the rear glass, with a third side window. */
  dFront: Upright | null;
  /** True when there is a window between the B- and C-pillar. */
  rearWindow: boolean;
}

export function layOutRoof(
  d: Dimensions,
  thirdSideGlass: boolean,
  front: Front,
  rear: Rear,
  conflicts: Conflicts,
): Roof {
  const rearTopX = d.tailX - (d.roofHeight - d.shelfHeight) * Math.tan(radians(d.rearGlassSlope));
  conflicts.need(
    d.roofHeight > d.shelfHeight + 130,
    'the rear glass would have no height',
    'roofHeight',
    'shelfHeight',
  );
  conflicts.need(
    rearTopX > d.bPillarX + B_LEAN + B_TOP_WIDTH + 75 + 0.24 * d.screenBow,
    'the rear glass would reach ahead of the B-pillar',
    'rearGlassSlope',
    'tailX',
    'bPillarX',
    'roofHeight',
    'shelfHeight',
    'screenBow',
  );
  const x = d.seatReach + (d.headroom - 102) * Math.sin(radians(8));
  const z = d.seatHeight + (d.headroom - 102) * Math.cos(radians(8));
  conflicts.need(
    z > front.top[2] - 40 && x > d.headerX + 30,
    'the headliner above the seat would lie below the top of the windscreen',
    'headroom',
    'screenSlope',
    'seatHeight',
    'headerX',
    'cowlX',
    'cowlHeight',
    'seatReach',
  );

  // The headliner's height above the seat is linear in its height above the B-pillar: two tries give
  // the answer, a third and fourth take up what little of the width depends on it.
  const error = (b: number) => {
    const made = weaveRoof(d, front, rear, rearTopX, b, thirdSideGlass);
    return heightAt(x < made.sideB[0] ? made.roof : made.rearRoof, x, d.seatOffset) - z;
  };
  let [b0, b1] = [z, z + 10];
  let [e0, e1] = [error(b0), error(b1)];
  for (let pass = 0; pass < 6 && Math.abs(e1) > 1e-9 && Math.abs(e1 - e0) > 1e-12; pass++) {
    const b2 = b1 - (e1 * (b1 - b0)) / (e1 - e0);
    [b0, e0, b1] = [b1, e1, b2];
    e1 = error(b1);
  }
  const roof = weaveRoof(d, front, rear, rearTopX, b1, thirdSideGlass);
  const [z0, z1, z2] = [1, 4, 7].map((k) => (roof.roof[k] as Vec3)[2]) as [number, number, number];
  const [frontLength, rearLength] = [roof.sideB[0] - d.headerX, rearTopX - roof.sideB[0]];
  conflicts.need(
    Math.abs(z1 - (z0 + z2) / 2) < 0.2 * frontLength &&
      Math.abs(z2 - z0) < 0.8 * frontLength &&
      Math.abs(b1 - d.roofHeight) < 0.55 * rearLength,
    'the roof would have a hump or a hollow',
    'headroom',
    'roofHeight',
    'seatHeight',
    'screenSlope',
    'headerX',
    'cowlX',
    'cowlHeight',
    'seatReach',
    'rearGlassSlope',
    'tailX',
    'shelfHeight',
    'bPillarX',
    'roofCrown',
    'seatOffset',
    'screenBow',
    'shoulderRoom',
    'sideGlassTumblehome',
  );
  conflicts.need(
    roof.bTopFront[2] > rear.bFront[2] + 120 && roof.sideRear[2] > d.shelfHeight + 60,
    'the side windows would have no height',
    'headroom',
    'beltHeight',
    'shelfHeight',
    'roofHeight',
    'roofCrown',
    'seatHeight',
    'cowlHeight',
    'bPillarX',
  );
  conflicts.need(
    roof.sideRear[1] > 230 && roof.sideB[1] > 260,
    'the roof would have no width',
    'sideGlassTumblehome',
    'shoulderRoom',
    'headroom',
    'roofHeight',
    'beltHeight',
    'tailX',
    'cowlWidth',
  );
  return roof;
}

function weaveRoof(
  d: Dimensions,
  front: Front,
  rear: Rear,
  rearTopX: number,
  heightB: number,
  thirdSideGlass: boolean,
): Roof {
  const { topCorner, lean } = front;
  const inward = (foot: Vec3, z: number) => foot[1] - Math.max(0, z - foot[2]) * lean;
  const xB = d.bPillarX + B_LEAN;
  const crownB = d.roofCrown;
  const crownRear = REAR_CROWN * d.roofCrown;

  const edgeB = heightB - crownB;
  const bTopFront: Vec3 = [xB, inward(front.belt(xB), edgeB - EDGE_DOWN), edgeB - EDGE_DOWN];
  const sideB: Vec3 = [xB, bTopFront[1] - EDGE_ACROSS, edgeB];

  const edgeRear = d.roofHeight - crownRear;
  const rearX = rearTopX - REAR_TOP_BOW * REAR_BOW * d.screenBow;
  const sideRear: Vec3 = [
    rearX,
    inward(rear.belt(rearX), edgeRear - EDGE_DOWN) - 1.25 * EDGE_ACROSS,
    edgeRear,
  ];

  // Two parabolas along the car that meet above the B-pillar without a kink: the rear one has a
  // given arch, the front one the slope that fits it.
  const k = (rearTopX - xB) / (xB - d.headerX);
  const rearLength = rearTopX - xB;
  const rearMid = (heightB + d.roofHeight) / 2 + 2 * REAR_ARCH * rearLength;
  const frontMid = heightB - (rearMid - heightB) / k;
  const rearMidCrown = (crownB + crownRear) / 2;
  const frontMidCrown = crownB - (rearMidCrown - crownB) / k;
  const rearMidX = (xB + rearTopX) / 2;
  const frontMidX = (xB + d.headerX) / 2;

  const rearEdgeUpperBend: Vec3 = [
    (xB + rearX) / 2,
    (sideB[1] + sideRear[1]) / 2 + 6,
    rearMid - rearMidCrown,
  ];
  const edgeUpperBend: Vec3 = [
    (topCorner[0] + xB) / 2,
    Math.min(sideB[1] - (rearEdgeUpperBend[1] - sideB[1]) / k, (topCorner[1] + sideB[1]) / 2 + 40),
    frontMid - frontMidCrown,
  ];
  const frontRow = { right: topCorner, middle: [front.topBend[0], front.topBend[2]] as const };
  const bRow = { right: sideB, middle: [xB, heightB + crownB] as const };
  const roof = across(
    frontRow,
    {
      right: edgeUpperBend,
      middle: [2 * frontMidX - edgeUpperBend[0], frontMid + frontMidCrown],
    },
    bRow,
  );
  const rearBend = [2 * rearTopX - rearX, d.roofHeight + crownRear] as const;
  const rearRoof = across(
    bRow,
    {
      right: rearEdgeUpperBend,
      middle: [2 * rearMidX - rearEdgeUpperBend[0], rearMid + rearMidCrown],
    },
    { right: sideRear, middle: rearBend },
  );
  const lowerMiddle = mix(front.pillarTop, bTopFront, 0.5);
  const upperMiddle = mix(topCorner, sideB, 0.5);
  // Follows the roof's arch, but never rises more steeply than the window's front edge does.
  const { pillarTop, mirrorRear } = front;
  const steepest = (pillarTop[2] - mirrorRear[2]) / (pillarTop[0] - mirrorRear[0]);
  const bendZ = Math.min(
    lowerMiddle[2] + (edgeUpperBend[2] - upperMiddle[2]),
    pillarTop[2] + 0.8 * steepest * (lowerMiddle[0] - pillarTop[0]),
  );
  // The edge's middle, too, stands where the side glass's lean puts it.
  const edgeMiddleZ = (lowerMiddle[2] + bendZ) / 2;
  const edgeLowerBend: Vec3 = [
    lowerMiddle[0],
    2 * inward(front.belt(lowerMiddle[0]), edgeMiddleZ) - lowerMiddle[1],
    bendZ,
  ];
  return {
    roof,
    rearRoof,
    edgeLowerBend,
    edgeUpperBend,
    rearEdgeUpperBend,
    sideB,
    sideRear,
    rearBend,
    bTopFront,
    ...layOutUprights(d, rear, lean, bTopFront, sideRear, thirdSideGlass),
  };
}

/** Height of a patch across the car above the place (x, y), by Newton in u and v. */
function heightAt(net: Net, x: number, y: number): number {
  const patch: Patch = { control: net, facing: 1 };
  let [u, v] = [0.5, 0.5];
  for (let pass = 0; pass < 20; pass++) {
    const p = pointOnPatch(patch, u, v);
    const { du, dv } = patchPartials(patch, u, v);
    const det = du[0] * dv[1] - dv[0] * du[1];
    const [rx, ry] = [x - p[0], y - p[1]];
    u += (dv[1] * rx - dv[0] * ry) / det;
    v += (du[0] * ry - du[1] * rx) / det;
    if (Math.abs(rx) + Math.abs(ry) < 1e-9) break;
  }
  return pointOnPatch(patch, u, v)[2];
}
