/** The dash: one profile lofted across the car, and the line under it that the doors hang on. */

import { radians, type Vec3 } from '../../vector';
import type { Dimensions } from '../dimensions';
import type { Conflicts } from './conflict';
import type { Front } from './front';
import { atZ } from './weave';

/** From the corner the dash top and face would meet in, to where its roll begins and ends. */
const ROLL = 55;
/** The lower dash falls away from the knees by this much more than the face. Typical, from memory. */
const KNEE_SLOPE_DEG = 24;
/** Share of the height under the roll that belongs to the lower dash. */
const LOWER_SHARE = 0.42;
/** The lower edge of the dash and the waist of the door rise rearward by this slope. */
const WAIST_RISE = Math.tan(radians(3));
/** The door card shows this far ahead of the dash's rearmost edge. */
const DOOR_EDGE = 25;
/** The centre of the dash is this much wider than the console on each side, at least so wide. */
const CENTRE_MARGIN = 28;
const CENTRE_HALF_MIN = 110;

/** A profile at one place across the car: top edge of the roll, roll, face, lower edge. */
export interface DashProfile {
  rollTop: Vec3;
  rollBend: Vec3;
  faceTop: Vec3;
  faceFoot: Vec3;
  lowerEdge: Vec3;
}

export interface Dash {
  /** Half the width of the dash's centre. */
  centreHalf: number;
  /** Where the centre meets the sides. */
  inner: DashProfile;
  /** Where the dash meets the door. */
  outer: DashProfile;
  /** x from which the door card is whole, behind the dash's end. */
  doorX: number;
  /** A point of the door's waist: the crease between its upper and lower part. */
  waist: (x: number) => Vec3;
  /** The line down the door where the dash's end stops, by height. */
  doorEdge: (z: number) => Vec3;
}

export function layOutDash(d: Dimensions, front: Front, conflicts: Conflicts): Dash {
  const cornerX = d.cowlX + d.dashDepth;
  const fall = (d.dashHeight - d.cowlHeight) / Math.max(1, d.dashDepth - ROLL);
  conflicts.need(
    Math.abs(d.dashHeight - d.cowlHeight) < 0.36 * d.dashDepth,
    'the dash top would be too steep',
    'dashHeight',
    'cowlHeight',
    'dashDepth',
  );
  conflicts.need(
    d.dashDepth > d.screenBow + ROLL + 60,
    'the ends of the dash top would have no depth',
    'dashDepth',
    'screenBow',
  );
  const slope = radians(d.dashFaceSlope);
  const rollTop = [cornerX - ROLL, d.dashHeight] as const;
  const rollBend = [cornerX, d.dashHeight + fall * ROLL] as const;
  const faceTop = [
    rollBend[0] - ROLL * Math.sin(slope),
    rollBend[1] - ROLL * Math.cos(slope),
  ] as const;
  const height = faceTop[1] - d.dashLowerEdge;
  conflicts.need(
    height > 90,
    'the dash would have no face between its roll and its lower edge',
    'dashLowerEdge',
    'dashHeight',
  );
  const footZ = d.dashLowerEdge + LOWER_SHARE * height;
  const faceFoot = [faceTop[0] - (faceTop[1] - footZ) * Math.tan(slope), footZ] as const;
  const knee = radians(Math.min(60, d.dashFaceSlope + KNEE_SLOPE_DEG));
  const lowerX = faceFoot[0] - (footZ - d.dashLowerEdge) * Math.tan(knee);

  const centreHalf = Math.max(CENTRE_HALF_MIN, d.consoleWidth / 2 + CENTRE_MARGIN);
  const hips = (d.shoulderRoom - d.hipRoom) / 2;
  const waist = (x: number): Vec3 => {
    const b = front.belt(x);
    return [x, b[1] - hips, d.dashLowerEdge + (x - lowerX) * WAIST_RISE];
  };
  conflicts.need(
    Math.abs(hips) < 160,
    'the door cards would lean too far',
    'hipRoom',
    'shoulderRoom',
  );
  conflicts.need(
    centreHalf < front.belt(lowerX)[1] - 180 - Math.max(0, hips),
    'the console would leave no room for the footwells',
    'consoleWidth',
    'shoulderRoom',
    'hipRoom',
    'cowlWidth',
  );
  const onDoor = (x: number, z: number): Vec3 => {
    const [low, high] = [waist(x), front.belt(x)];
    const share = (z - low[2]) / (high[2] - low[2]);
    return [x, low[1] + share * (high[1] - low[1]), z];
  };
  const at = (p: readonly [number, number]): Vec3 => [p[0], centreHalf, p[1]];

  const beltTop = front.belt(rollTop[0]);
  const drop = beltTop[2] - d.dashHeight;
  // The dash top meets the belt line at the door; what it rises or falls by fades out at the knees.
  const outer: DashProfile = {
    rollTop: beltTop,
    // A little below the belt line, so that roll and door edge part at an angle.
    rollBend: onDoor(rollBend[0], front.belt(rollBend[0])[2] - 8),
    faceTop: onDoor(faceTop[0], faceTop[1] + drop),
    faceFoot: onDoor(faceFoot[0], faceFoot[1] + drop * LOWER_SHARE),
    lowerEdge: waist(lowerX),
  };
  conflicts.need(
    outer.faceTop[2] - outer.faceFoot[2] > 30 && outer.faceFoot[2] - d.dashLowerEdge > 30,
    'the ends of the dash would have no height',
    'beltHeight',
    'dashLowerEdge',
    'dashHeight',
    'cowlHeight',
  );
  const doorX = Math.max(cornerX, faceFoot[0], lowerX) + DOOR_EDGE;
  const [edgeTop, edgeFoot] = [front.belt(doorX), waist(doorX)];
  conflicts.need(
    doorX < d.bPillarX - 200,
    'the dash would reach too near the B-pillar',
    'dashDepth',
    'bPillarX',
    'cowlX',
    'dashFaceSlope',
  );
  conflicts.need(
    front.belt(d.bPillarX)[2] - waist(d.bPillarX)[2] > 80,
    'the upper door card would have no height',
    'beltHeight',
    'dashLowerEdge',
    'bPillarX',
    'cowlHeight',
  );
  return {
    centreHalf,
    inner: {
      rollTop: at(rollTop),
      rollBend: at(rollBend),
      faceTop: at(faceTop),
      faceFoot: at(faceFoot),
      lowerEdge: [lowerX, centreHalf, d.dashLowerEdge],
    },
    outer,
    doorX,
    waist,
    doorEdge: (z) => atZ(edgeFoot, edgeTop, z),
  };
}
