/** Windscreen, roof, pillars and glass. */
import { mix, type Vec3 } from '../../vector';
import type { Layout } from './build-shell';
import type { Skin } from './skin';
import { across, acrossFlat, quad } from './weave';

/** How far the rear glass stands out of the flat between its edges; four times its middle's. */
const REAR_GLASS_LIFT = 40;
/** The same for side windows: outward. */
const SIDE_GLASS_LIFT = 28;

export function weaveTop(skin: Skin, { front, rear, roof }: Layout): void {
  const f = front;
  const r = roof;
  const centre = (p: readonly number[]) => [p[0] as number, p[2] as number] as const;
  skin.across(
    'screen',
    across(
      { right: f.baseCorner, middle: centre(f.baseBend) },
      { right: f.sideBend, middle: f.middleBend },
      { right: f.topCorner, middle: centre(f.topBend) },
    ),
    [1, 0, -0.5],
  );
  skin.across('roof', r.roof, [0, 0, -1]);
  skin.across('roof-rear', r.rearRoof, [0, 0, -1]);

  const glassSide = mix(rear.tail, r.sideRear, 0.5);
  const glassMiddle = mix(
    [rear.tailBend[0], 0, rear.tailBend[1]],
    [r.rearBend[0], 0, r.rearBend[1]],
    0.5,
  );
  skin.across(
    'rear-glass',
    across(
      { right: rear.tail, middle: rear.tailBend },
      { right: glassSide, middle: [glassMiddle[0] + REAR_GLASS_LIFT, glassMiddle[2] + 20] },
      { right: r.sideRear, middle: r.rearBend },
    ),
    [-1, 0, -0.3],
  );
  skin.across(
    'parcel-shelf',
    across(
      { right: rear.wallTop },
      { right: mix(rear.wallTop, rear.tail, 0.5) },
      { right: rear.tail, middle: rear.tailBend },
    ),
    [0, 0, 1],
  );
  skin.across('rear-wall', acrossFlat(rear.wallFoot, rear.wallTop), [-1, 0, 0]);

  // The cabin lies inboard of everything on its right-hand side.
  const inward = [0, -1, 0] as const;
  skin.pair(
    'pillar',
    quad(f.baseCorner, f.pillarFoot, f.pillarTop, f.topCorner, {
      west: f.sideBend,
      lift: [-6, -8, 0],
    }),
    [0.5, -1, -0.3],
  );
  // Three-sided panels keep four corners: the fourth lies in the middle of their rear edge.
  skin.pair(
    'mirror-corner',
    quad(f.pillarFoot, f.mirrorRear, mix(f.mirrorRear, f.mirrorTip, 0.5), f.mirrorTip),
    inward,
  );
  skin.pair(
    'quarter-glass',
    quad(f.mirrorTip, f.mirrorRear, mix(f.mirrorRear, f.pillarTop, 0.5), f.pillarTop),
    inward,
  );
  // A window with a short upper edge has no room to bulge.
  const bulge = (upperEdge: number): Vec3 => [
    0,
    SIDE_GLASS_LIFT * Math.min(1, Math.max(0, upperEdge) / 400),
    0,
  ];
  skin.pair(
    'side-glass',
    quad(f.mirrorRear, rear.bFront, r.bTopFront, f.pillarTop, {
      north: r.edgeLowerBend,
      lift: bulge(r.bTopFront[0] - f.pillarTop[0]),
    }),
    inward,
  );
  skin.pair(
    'roof-edge',
    quad(f.pillarTop, r.bTopFront, r.sideB, f.topCorner, {
      south: r.edgeLowerBend,
      north: r.edgeUpperBend,
    }),
    [0, -1, -1],
  );
  const last = r.dFront?.top ?? r.cFront.top;
  skin.pair(
    'roof-edge-rear',
    quad(r.bTopFront, last, r.sideRear, r.sideB, { north: r.rearEdgeUpperBend }),
    [0, -1, -1],
  );
  skin.pair('b-pillar', quad(rear.bFront, rear.bRear, r.bTopRear, r.bTopFront), inward);
  if (r.rearWindow) {
    skin.pair(
      'rear-side-glass',
      quad(rear.bRear, r.cFront.foot, r.cFront.top, r.bTopRear, {
        lift: bulge(r.cFront.top[0] - r.bTopRear[0]),
      }),
      inward,
    );
  }
  if (r.cRear && r.dFront) {
    skin.pair('c-pillar', quad(r.cFront.foot, r.cRear.foot, r.cRear.top, r.cFront.top), inward);
    skin.pair(
      'third-side-glass',
      quad(r.cRear.foot, r.dFront.foot, r.dFront.top, r.cRear.top, {
        lift: bulge(r.dFront.top[0] - r.cRear.top[0]),
      }),
      inward,
    );
    skin.pair('d-pillar', quad(r.dFront.foot, rear.tail, r.sideRear, r.dFront.top), inward);
  } else {
    skin.pair('c-pillar', quad(r.cFront.foot, rear.tail, r.sideRear, r.cFront.top), inward);
  }
}
