/** The pillars behind the front doors: where each stands on the belt line and meets the roof edge. */

import { length, sub, type Vec3 } from '../../vector';
import type { Dimensions } from '../dimensions';
import { B_PILLAR_WIDTH, type Rear } from './rear';
import { atX } from './weave';

/** The B-pillar narrows by a third towards the roof. Typical, from memory. */
export const B_TOP_WIDTH = 0.68 * B_PILLAR_WIDTH;
/** The roof edge's glass side lies this much below its roof side. Typical, from memory. */
export const EDGE_DOWN = 26;
/** Top of the C-pillar against its foot. Typical, from memory. */
const C_TOP = 0.55;
/** The pillar beside the rear glass of a car with a third side window, against its C-pillar. */
const D_PILLAR = 0.85;
/** The C-pillar's top against its foot, where it stands between two windows. */
const C_BETWEEN = 0.9;

/** One upright of the side behind the B-pillar: its foot on the belt line, its top at the roof edge. */
export interface Upright {
  foot: Vec3;
  top: Vec3;
}

/** The pillars behind the B-pillar, their tops on one straight line of roof edge. */
export function layOutUprights(
  d: Dimensions,
  rear: Rear,
  lean: number,
  bTop: Vec3,
  sideRear: Vec3,
  thirdSideGlass: boolean,
) {
  const bTopRearX = bTop[0] + B_TOP_WIDTH;
  const last = thirdSideGlass ? D_PILLAR * d.cPillarWidth : d.cPillarWidth;
  const lastTopX = Math.max(sideRear[0] - C_TOP * last, bTopRearX + 30);
  const lastTopZ = sideRear[2] - EDGE_DOWN;
  const foot = rear.belt(lastTopX);
  const lastTop: Vec3 = [lastTopX, foot[1] - Math.max(0, lastTopZ - foot[2]) * lean, lastTopZ];
  const onEdge = (x: number) => atX(bTop, lastTop, x);
  const bTopRear = onEdge(bTopRearX);
  const beltRun = sub(rear.tail, rear.bRear);
  const lastFootX = rear.tail[0] - (last * beltRun[0]) / length(beltRun);
  const room = lastFootX - rear.bRear[0];
  if (thirdSideGlass && room > 520 && lastTopX - bTopRearX > 420) {
    // The C-pillar stands behind the rear seat, between the rear door's window and the third one.
    const x = Math.min(
      Math.max(rear.wallTop[0] - 0.3 * d.cPillarWidth, rear.bRear[0] + 0.45 * room),
      lastFootX - d.cPillarWidth - 150,
    );
    const share = (x - rear.bRear[0]) / room;
    const topX = bTopRearX + share * (lastTopX - bTopRearX);
    return {
      bTopRear,
      cFront: { foot: rear.belt(x), top: onEdge(topX) },
      cRear: {
        foot: rear.belt(x + d.cPillarWidth),
        top: onEdge(Math.min(topX + C_BETWEEN * d.cPillarWidth, lastTopX - 60)),
      },
      dFront: { foot: rear.belt(lastFootX), top: lastTop },
      rearWindow: true,
    };
  }
  const rearWindow = room > 90 && lastTopX > bTopRearX + 25;
  return {
    bTopRear,
    cFront: rearWindow
      ? { foot: rear.belt(lastFootX), top: lastTop }
      : { foot: rear.bRear, top: bTopRear },
    cRear: null,
    dFront: null,
    rearWindow,
  };
}
