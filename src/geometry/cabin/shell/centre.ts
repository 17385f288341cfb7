/** Tunnel, console and the foot of the dash's centre. */

import { radians, type Vec3 } from '../../vector';
import type { Dimensions } from '../dimensions';
import type { Conflicts } from './conflict';
import type { Dash } from './dash';
import type { Foot } from './foot';
import { atZ } from './weave';

/** The foot of the dash's centre runs out rearward to the console by this slope. Typical. */
const FOOT_SLOPE = Math.tan(radians(24));

export interface Centre {
  /** Top edge of the tunnel: at the toe board, under the lower dash, at the console's end. */
  tunnelFront: Vec3;
  tunnelUnderDash: Vec3;
  tunnelAtEnd: Vec3;
  /** A point of the tunnel's top edge. */
  tunnelTop: (x: number) => Vec3;
  /** Top edge of the console: at the dash and at its rear end. */
  consoleFront: Vec3;
  consoleEnd: Vec3;
}

export function layOutCentre(d: Dimensions, dash: Dash, foot: Foot, conflicts: Conflicts): Centre {
  const tunnelFront = atZ(foot.toeInner, foot.toeTopInner, d.tunnelHeight);
  conflicts.need(
    d.tunnelHeight < foot.toeTopInner[2] - 40,
    'the tunnel would reach into the dash',
    'tunnelHeight',
    'dashLowerEdge',
  );
  conflicts.need(
    d.consoleHeight > d.tunnelHeight + 20,
    'the console would lie inside the tunnel',
    'consoleHeight',
    'tunnelHeight',
  );
  const { faceFoot, lowerEdge } = dash.inner;
  conflicts.need(
    d.consoleHeight < faceFoot[2] - 30,
    "the console would reach above the foot of the dash's face",
    'consoleHeight',
    'dashHeight',
    'dashLowerEdge',
  );
  const tunnelTop = (x: number): Vec3 => [x, tunnelFront[1], d.tunnelHeight];
  const frontX = Math.max(
    faceFoot[0] + (faceFoot[2] - d.consoleHeight) * FOOT_SLOPE,
    lowerEdge[0] + 60,
  );
  const endX = frontX + d.consoleLength;
  const half = d.consoleWidth / 2;
  return {
    tunnelFront,
    tunnelUnderDash: tunnelTop(lowerEdge[0]),
    tunnelAtEnd: tunnelTop(endX),
    tunnelTop,
    consoleFront: [frontX, half, d.consoleHeight],
    consoleEnd: [endX, half, d.consoleHeight],
  };
}
