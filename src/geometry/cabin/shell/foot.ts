/** Footwells: toe boards, kick panels, sills' front ends. */

import { mix, radians, type Vec3 } from '../../vector';
import type { Dimensions } from '../dimensions';
import type { Conflicts } from './conflict';
import type { Dash } from './dash';
import { atX, atZ } from './weave';

/** Where the toe board meets the floor: ahead of the heel, under the pedals. Typical, from memory. */
export const TOE_BASE_X = -90;
/** The footwell's roof rises this much from the toe board to the kick panel's rear edge. */
const FRONT_RISE = 20;
/** How far the tunnel's sides lean, as a share of its half width over the toe board's height. */
const TUNNEL_LEAN = 0.25;

export interface Foot {
  /** Toe board corners: at the tunnel and at the kick panel, on the floor and at its top. */
  toeInner: Vec3;
  toeOuter: Vec3;
  toeTopInner: Vec3;
  toeTopOuter: Vec3;
  /** Rear edge of the kick panel: on the floor, at its top, at the door's waist. */
  kickFoot: Vec3;
  kickTop: Vec3;
  kickWaist: Vec3;
  /** Top of the kick panel on the toe board's edge. */
  kickTopFront: Vec3;
  /** Front end of the sill's top edge. */
  sillFront: Vec3;
  /** Front edge of the door. */
  doorX: number;
  /** Inner edge of the footwell's roof above the kick panel's rear edge. */
  roofInner: Vec3;
}

export function layOutFoot(d: Dimensions, dash: Dash, conflicts: Conflicts): Foot {
  const splay = Math.tan(radians(d.kickSplay));
  const half = d.tunnelWidth / 2;
  const kickX = TOE_BASE_X + d.kickLength * Math.cos(radians(d.kickSplay));
  const kickY = (x: number) => half + d.footwellWidth + x * splay;
  const kickWaist = dash.waist(kickX);
  const topZ = kickWaist[2] - FRONT_RISE;
  const topX = TOE_BASE_X - topZ / Math.tan(radians(d.toeBoardSlope));

  const toeInner: Vec3 = [TOE_BASE_X, half, 0];
  const toeTopInner: Vec3 = [topX, half * (1 - TUNNEL_LEAN), topZ];
  const toeOuter: Vec3 = [TOE_BASE_X, kickY(TOE_BASE_X), 0];
  const toeTopOuter: Vec3 = [topX, kickY(topX), topZ];
  const kickFoot: Vec3 = [kickX, kickY(kickX), 0];

  conflicts.need(
    kickFoot[1] < kickWaist[1] + 40,
    'the kick panel would stand outside the door',
    'footwellWidth',
    'hipRoom',
    'tunnelWidth',
    'cowlWidth',
    'shoulderRoom',
    'kickSplay',
    'kickLength',
  );
  conflicts.need(
    kickWaist[1] - kickFoot[1] < 260,
    'the kick panel would stand too far inside the door',
    'footwellWidth',
    'hipRoom',
    'tunnelWidth',
    'cowlWidth',
    'shoulderRoom',
    'kickSplay',
    'kickLength',
  );
  conflicts.need(
    toeTopOuter[1] - toeTopInner[1] > d.footrestWidth + 70,
    'the footwell would close to a point at the toe board',
    'kickSplay',
    'footwellWidth',
    'toeBoardSlope',
    'footrestWidth',
    'dashLowerEdge',
  );
  conflicts.need(
    d.kickHeight < topZ - 15,
    'the kick panel would reach above the footwell',
    'kickHeight',
    'dashLowerEdge',
  );
  conflicts.need(
    dash.inner.lowerEdge[0] > kickX + 25,
    'the kick panel would reach behind the lower dash',
    'dashDepth',
    'kickLength',
    'cowlX',
    'dashFaceSlope',
    'dashHeight',
    'dashLowerEdge',
    'kickSplay',
  );
  const doorX = d.bPillarX - d.doorLength;
  conflicts.need(
    doorX > kickX + 12,
    "the kick panel would reach past the door's front edge",
    'doorLength',
    'kickLength',
    'bPillarX',
    'kickSplay',
  );
  conflicts.need(
    d.sillHeight < kickWaist[2] - 80,
    'the door would have no height under the dash',
    'sillHeight',
    'dashLowerEdge',
  );
  return {
    toeInner,
    toeOuter,
    toeTopInner,
    toeTopOuter,
    kickFoot,
    kickTop: atZ(kickFoot, kickWaist, d.kickHeight),
    kickWaist,
    kickTopFront: atZ(toeOuter, toeTopOuter, d.kickHeight),
    sillFront: atZ(kickFoot, kickWaist, d.sillHeight),
    doorX,
    roofInner: atX(toeTopInner, dash.inner.lowerEdge, kickX),
  };
}

/**
 * The line on the toe board between it and the footrest: beside the kick panel, or beside the
 * tunnel (the left foot in a right-hand-drive car). Low end and high end.
 */
export function footrestLine(d: Dimensions, foot: Foot, beside: 'kick' | 'tunnel'): [Vec3, Vec3] {
  const step = (from: Vec3, to: Vec3): Vec3 =>
    mix(from, to, d.footrestWidth / Math.abs(to[1] - from[1]));
  return beside === 'kick'
    ? [step(foot.toeOuter, foot.toeInner), step(foot.toeTopOuter, foot.toeTopInner)]
    : [step(foot.toeInner, foot.toeOuter), step(foot.toeTopInner, foot.toeTopOuter)];
}
