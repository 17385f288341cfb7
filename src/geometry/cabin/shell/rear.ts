/** Belt line behind the B-pillar, rear wall, shelf, and what stands behind the front doors. */

import { mix, radians, type Vec3 } from '../../vector';
import type { Dimensions } from '../dimensions';
import type { Conflicts } from './conflict';
import type { Dash } from './dash';
import type { Foot } from './foot';
import type { Front } from './front';
import { atX, atZ } from './weave';

/** Visible width of the B-pillar trim. Typical, from memory. */
export const B_PILLAR_WIDTH = 85;
/** The cabin narrows towards its tail by this slope on each side. Typical, from memory. */
const TAIL_TAPER = Math.tan(radians(3.4));
/** Share of the screen's bow the rear glass has. Typical, from memory. */
export const REAR_BOW = 0.4;
/** Seat-back wall behind the rear hip joint, level, and its lean. Typical, from memory. */
const WALL_BEHIND_REAR_HIP = 195;
const WALL_LEAN_DEG = 23;
/** The same with one row: room for the seat to slide and recline. */
const WALL_BEHIND_FRONT_HIP = 255;
const BULKHEAD_LEAN_DEG = 16;
/** The bulkhead's foot behind the B-pillar. Typical, from memory. */
const BEHIND_B_PILLAR = 85;
/** How far ahead of the rear hip joint the tunnel ends, at the foot of the rear seat. */
const TUNNEL_END_AHEAD = 350;

export interface Rear {
  /** Corners of the B-pillar on belt line, waist and sill: front and rear edge. */
  bFront: Vec3;
  bRear: Vec3;
  bWaistFront: Vec3;
  bWaistRear: Vec3;
  bSillFront: Vec3;
  bSillRear: Vec3;
  /** A point of the belt line behind the B-pillar, straight to the foot of the rear glass. */
  belt: (x: number) => Vec3;
  /** Foot of the rear glass: corner, and middle control point of its bowed lower edge. */
  tail: Vec3;
  tailBend: readonly [number, number];
  /** Rear wall: on the floor, at the sill's top, at the belt line (where the shelf begins). */
  wallFoot: Vec3;
  wallSill: Vec3;
  wallTop: Vec3;
  /** Rear edge of the rear door, on sill and belt line; null with one row. */
  doorSill: Vec3 | null;
  doorBelt: Vec3 | null;
  /** Where the tunnel ends. */
  tunnelEndX: number;
  /** A point of the sill's top edge and of the floor's outer edge. */
  sillTop: (x: number) => Vec3;
  floorEdge: (x: number) => Vec3;
}

export function layOutRear(
  d: Dimensions,
  rows: 1 | 2,
  front: Front,
  dash: Dash,
  foot: Foot,
  consoleEndX: number,
  conflicts: Conflicts,
): Rear {
  const bFront = front.belt(d.bPillarX);
  const bRear = front.belt(d.bPillarX + B_PILLAR_WIDTH);
  const bow = REAR_BOW * d.screenBow;
  const tailX = d.tailX - bow;
  const tail: Vec3 = [tailX, bRear[1] - (tailX - bRear[0]) * TAIL_TAPER, d.shelfHeight];
  conflicts.need(
    tailX > bRear[0] + 60,
    'there would be nothing behind the B-pillar',
    'tailX',
    'bPillarX',
    'screenBow',
  );
  conflicts.need(
    Math.abs(d.shelfHeight - bRear[2]) < 0.7 * (tailX - bRear[0]),
    'the belt line would run too steeply to the rear glass',
    'shelfHeight',
    'beltHeight',
    'tailX',
    'bPillarX',
    'screenBow',
    'cowlHeight',
  );
  const belt = (x: number) => atX(bRear, tail, x);

  const hipX = d.seatReach + (rows === 2 ? d.secondRowDistance : 0);
  const hipZ = rows === 2 ? d.rearSeatHeight : d.seatHeight;
  const behind = rows === 2 ? WALL_BEHIND_REAR_HIP : WALL_BEHIND_FRONT_HIP;
  const lean = Math.tan(radians(rows === 2 ? WALL_LEAN_DEG : BULKHEAD_LEAN_DEG));
  const climb = (tail[2] - bRear[2]) / (tailX - bRear[0]);
  const free = (hipX + behind + lean * (bRear[2] - hipZ - climb * bRear[0])) / (1 - lean * climb);
  // A wall that would stand behind the rear glass stands up straighter instead, if there is room.
  // With one row it stands behind the B-pillar, as a bulkhead does.
  const rowFootX = hipX + behind - lean * hipZ;
  const freeFootX = rows === 2 ? rowFootX : Math.max(rowFootX, bRear[0] + BEHIND_B_PILLAR);
  const topX = Math.min(Math.max(free, freeFootX + 15), tailX - 25);
  const wallTop = belt(topX);
  const footX = Math.min(freeFootX, topX - 10);
  conflicts.need(
    topX > hipX + behind * 0.75,
    'the rear glass would stand in the seats',
    'tailX',
    rows === 2 ? 'secondRowDistance' : 'seatReach',
    'seatReach',
    'seatHeight',
    'screenBow',
  );
  conflicts.need(
    footX > bRear[0] + 70 && topX > bRear[0] + 40,
    'the B-pillar would stand behind the seats',
    'bPillarX',
    rows === 2 ? 'secondRowDistance' : 'seatReach',
    'seatReach',
    'rearSeatHeight',
    'seatHeight',
    'tailX',
  );
  const wallFoot: Vec3 = [footX, Math.min(foot.kickFoot[1] + 10, wallTop[1] - 20), 0];
  const wallSill = atZ(wallFoot, wallTop, d.sillHeight);
  const sillTop = (x: number) => atX(foot.sillFront, wallSill, x);
  const floorEdge = (x: number) => atX(foot.kickFoot, wallFoot, x);

  const bSillFront = sillTop(bFront[0]);
  const bSillRear = sillTop(bRear[0]);
  const bWaistFront = dash.waist(d.bPillarX);
  conflicts.need(
    bWaistFront[2] > d.sillHeight + 80 && bFront[2] > bWaistFront[2] + 60,
    'the doors would have no height',
    'dashLowerEdge',
    'beltHeight',
    'sillHeight',
    'bPillarX',
    'cowlHeight',
  );

  const tunnelEndX = rows === 2 ? Math.max(hipX - TUNNEL_END_AHEAD, consoleEndX + 40) : footX - 60;
  conflicts.need(
    tunnelEndX > consoleEndX + 20 && tunnelEndX < footX - 40,
    'the console would reach into the wall behind the seats',
    'consoleLength',
    rows === 2 ? 'secondRowDistance' : 'seatReach',
    'seatReach',
    'dashDepth',
    'dashFaceSlope',
    'cowlX',
    'consoleHeight',
    'dashHeight',
    'bPillarX',
    'tailX',
  );
  const room = wallTop[0] - bRear[0];
  const twoDoors = rows === 2;
  conflicts.need(
    !twoDoors || (footX - bRear[0] > 220 && room > 320),
    'the rear door would have no length',
    'secondRowDistance',
    'bPillarX',
    'seatReach',
    'rearSeatHeight',
    'tailX',
  );
  return {
    bFront,
    bRear,
    bWaistFront,
    bWaistRear: atZ(bSillRear, bRear, bWaistFront[2]),
    bSillFront,
    bSillRear,
    belt,
    tail,
    tailBend: [2 * d.tailX - tailX, d.shelfHeight],
    wallFoot,
    wallSill,
    wallTop,
    doorSill: twoDoors ? mix(bSillRear, wallSill, 0.68) : null,
    doorBelt: twoDoors ? belt(bRear[0] + 0.84 * room) : null,
    tunnelEndX,
    sillTop,
    floorEdge,
  };
}
