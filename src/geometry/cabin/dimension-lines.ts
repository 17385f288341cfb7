/**
 * Where the tape goes for each dimension, or along what the angle finder is held: two points in the
 * car and the view that shows them best.
 */
import type { Side } from '../input';
import {
  add,
  along,
  clamp,
  distance,
  dot,
  mirrorY,
  mix,
  radians,
  scale,
  sub,
  type Vec3,
} from '../vector';
import type { DimensionId, Dimensions } from './dimensions';
import type { DimensionLine, Panel } from './model';
import { patchNormal, pointOnPatch } from './patch';

type View = DimensionLine['view'];

/** How long a line along a leaning surface is drawn where the surface itself sets no length. */
const ARM = 500;

/**
 * One line for every dimension that is measured in the car; the occupant's height is measured
 * standing, and a car with one row has no rear seat to measure.
 * @param d every dimension
 * @param panels the shell built from them
 * @param wheelSide the side the lines that belong to the steering wheel's seat are drawn on
 */
export function dimensionLines(
  d: Dimensions,
  panels: readonly Panel[],
  wheelSide: Side = 'left',
): DimensionLine[] {
  const byId = new Map(panels.map((p) => [p.id, p]));
  const lines: DimensionLine[] = [];
  const put = (dimension: DimensionId, view: View, from: Vec3, to: Vec3) => {
    const turn = (p: Vec3) => (wheelSide === 'left' ? p : mirrorY(p));
    lines.push({ dimension, view, from: turn(from), to: turn(to) });
  };
  /** A place on a panel of the left-hand-drive car's left, wherever the wheel is. */
  const on = (id: string, u: number, v: number): Vec3 | null => {
    const sided = id.endsWith('-left') && wheelSide === 'right';
    const panel = byId.get(sided ? id.replace(/left$/, 'right') : id);
    if (!panel) return null;
    const p = pointOnPatch(panel.patch, u, v);
    return sided ? mirrorY(p) : p;
  };
  const between = (dimension: DimensionId, view: View, a: Vec3 | null, b: Vec3 | null) => {
    if (a && b) put(dimension, view, a, b);
  };
  const up = (dimension: DimensionId, top: Vec3 | null, height?: number) => {
    if (top) put(dimension, 'side', [top[0], top[1], 0], [top[0], top[1], height ?? top[2]]);
  };
  const back = (dimension: DimensionId, x: number, y: number, z: number) =>
    put(dimension, 'side', [0, y, z], [x, y, z]);
  const across = (dimension: DimensionId, view: View, x: number, half: number, z: number) =>
    put(dimension, view, [x, -half, z], [x, half, z]);
  const lean = (deg: number, length: number): Vec3 => [
    length * Math.sin(radians(deg)),
    0,
    length * Math.cos(radians(deg)),
  ];

  // Front seat. The seat's reference is the hip joint; drawn in the plane of the wheel's seat.
  const y = -d.seatOffset;
  const hip: Vec3 = [d.seatReach, y, d.seatHeight];
  up('seatHeight', hip);
  back('seatReach', d.seatReach, y, 0);
  put('seatOffset', 'plan', [d.seatReach, 0, d.seatHeight], hip);
  put('torsoAngle', 'side', hip, add(hip, lean(d.torsoAngle, ARM)));
  put('seatTravel', 'side', [d.seatReach - d.seatTravel, y, d.seatHeight], hip);
  put('headroom', 'side', hip, add(hip, lean(8, d.headroom - 102)));

  across('shoulderRoom', 'front', d.seatReach, d.shoulderRoom / 2, d.beltHeight);
  const waist = on('door-upper-left', 0, 0)?.[2] ?? d.seatHeight;
  across('hipRoom', 'front', d.seatReach, d.hipRoom / 2, waist);
  across('cowlWidth', 'plan', d.cowlX + d.screenBow, d.cowlWidth / 2, d.cowlHeight);
  const tunnel = d.tunnelWidth / 2;
  put('footwellWidth', 'plan', [0, -tunnel, 0], [0, -tunnel - d.footwellWidth, 0]);

  const wheel: Vec3 = [d.wheelReach, y, d.wheelHeight];
  back('wheelReach', d.wheelReach, y, d.wheelHeight);
  up('wheelHeight', wheel);
  const radius = d.wheelDiameter / 2;
  put('wheelDiameter', 'front', along(wheel, [0, 1, 0], -radius), along(wheel, [0, 1, 0], radius));
  const rim = lean(-d.wheelTilt, radius);
  put('wheelTilt', 'side', sub(wheel, rim), add(wheel, rim));

  // Windscreen and roof.
  const top = on('screen', 0.5, 1);
  back('cowlX', d.cowlX, 0, d.cowlHeight);
  up('cowlHeight', [d.cowlX, 0, d.cowlHeight]);
  between('screenSlope', 'side', on('screen', 0.5, 0), top);
  if (top) back('headerX', top[0], 0, top[2]);
  up('roofHeight', on('roof-rear', 0.5, 1));
  const crown = on('roof', 0.5, 1);
  if (crown) put('roofCrown', 'front', along(crown, [0, 0, 1], -d.roofCrown), crown);
  const base: Vec3 = [d.cowlX, 0, d.cowlHeight];
  put('screenBow', 'plan', along(base, [1, 0, 0], d.screenBow), base);

  // Sides.
  put(
    'beltHeight',
    'side',
    [d.seatReach, -d.shoulderRoom / 2, 0],
    [d.seatReach, -d.shoulderRoom / 2, d.beltHeight],
  );
  const glass = [on('side-glass-left', 0, 0), on('side-glass-left', 1, 0)] as const;
  const glassTop = on('side-glass-left', 0.5, 1);
  if (glass[0] && glass[1] && glassTop) {
    const share = (glassTop[0] - glass[0][0]) / (glass[1][0] - glass[0][0]);
    put('sideGlassTumblehome', 'front', mix(glass[0], glass[1], share), glassTop);
  }
  const [edge, foot, head] = [
    on('pillar-left', 0, 0.5),
    on('pillar-left', 1, 0),
    on('pillar-left', 1, 1),
  ];
  if (edge && foot && head) put('pillarWidth', 'side', edge, nearestOnLine(edge, foot, head));
  between(
    'mirrorCornerLength',
    'side',
    on('mirror-corner-left', 0, 0),
    on('mirror-corner-left', 1, 0),
  );
  between('doorLength', 'side', on('door-lower-left', 0, 0), on('door-lower-left', 1, 0));
  const door = byId.get('door-lower-left');
  if (door) {
    const card = pointOnPatch(door.patch, 0.35, 0.5);
    put(
      'doorThickness',
      'front',
      card,
      along(card, patchNormal(door.patch, 0.35, 0.5), -d.doorThickness),
    );
  }

  // Dash.
  const dashEnd = d.cowlX + d.dashDepth;
  put('dashDepth', 'side', [d.cowlX, 0, d.dashHeight], [dashEnd, 0, d.dashHeight]);
  up('dashHeight', on('dash-top-center', 0.5, 1));
  between('dashFaceSlope', 'side', on('dash-face-center', 0.5, 1), on('dash-face-center', 0.5, 0));
  up('dashLowerEdge', on('dash-lower-left', 0, 0));
  const hood: Vec3 = [dashEnd - 80, y, d.dashHeight];
  put('binnacleHeight', 'side', hood, along(hood, [0, 0, 1], d.binnacleHeight));

  // Footwell and centre.
  between('toeBoardSlope', 'side', on('toe-board-left', 0.5, 0), on('toe-board-left', 0.5, 1));
  between('kickLength', 'side', on('kick-left', 0, 0), on('kick-left', 1, 0));
  up('kickHeight', on('kick-left', 1, 1));
  between('kickSplay', 'plan', on('kick-left', 1, 0), on('kick-left', 0, 0));
  up('sillHeight', on('sill-left', 0.5, 1));
  between('footrestWidth', 'front', on('footrest-left', 0, 0.5), on('footrest-left', 1, 0.5));
  across('tunnelWidth', 'plan', 0, tunnel, 0);
  const tunnelEnd = on('tunnel-left', 0.75, 1);
  up('tunnelHeight', tunnelEnd);
  between('consoleWidth', 'plan', on('console-top', 0, 0.4), on('console-top', 1, 0.4));
  up('consoleHeight', on('console-top', 0.5, 0.6));
  between('consoleLength', 'side', on('console-top', 0.5, 0), on('console-top', 0.5, 1));

  // Rear.
  if (byId.has('rear-door-left')) {
    const rearHip: Vec3 = [d.seatReach + d.secondRowDistance, -d.rearSeatOffset, d.rearSeatHeight];
    put('secondRowDistance', 'side', hip, [rearHip[0], y, d.seatHeight]);
    put('rearSeatOffset', 'plan', [rearHip[0], 0, rearHip[2]], rearHip);
    up('rearSeatHeight', rearHip);
  }
  const belt = on('b-pillar-left', 0, 0);
  if (belt) back('bPillarX', belt[0], belt[1], belt[2]);
  const pillarRear = on('c-pillar-left', 1, 0);
  const pillarFront = on('c-pillar-left', 0, 0);
  if (pillarRear && pillarFront && pillarRear[0] > pillarFront[0]) {
    const share = d.cPillarWidth / distance(pillarRear, pillarFront);
    put('cPillarWidth', 'side', along(pillarRear, sub(pillarFront, pillarRear), share), pillarRear);
  }
  between('rearGlassSlope', 'side', on('rear-glass', 0.5, 0), on('rear-glass', 0.5, 1));
  up('shelfHeight', [d.tailX, 0, d.shelfHeight]);
  back('tailX', d.tailX, 0, d.shelfHeight);
  return lines;
}

function nearestOnLine(point: Vec3, a: Vec3, b: Vec3): Vec3 {
  const ab = sub(b, a);
  return add(a, scale(ab, clamp(dot(sub(point, a), ab) / dot(ab, ab), 0, 1)));
}
