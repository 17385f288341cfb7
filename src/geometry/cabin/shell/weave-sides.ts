/** Doors, B-pillars below the belt line, sills and kick panels. */
import type { Layout } from './build-shell';
import type { Skin } from './skin';
import { quad } from './weave';

/** Door cards stand in a little towards the seats: four times their middle's bulge. */
const CARD_LIFT = [0, -36, 0] as const;

export function weaveSides(skin: Skin, { front, dash, foot, rear }: Layout): void {
  const inward = [0, -1, 0] as const;
  const { outer, doorX, doorEdge, waist } = dash;
  const edgeTop = front.belt(doorX);
  const edgeFoot = waist(doorX);
  const [edgeHigh, edgeLow] = [doorEdge(outer.faceTop[2]), doorEdge(outer.faceFoot[2])];
  skin.pair(
    'door-edge-upper',
    quad(outer.faceTop, edgeHigh, edgeTop, outer.rollTop, { west: outer.rollBend }),
    inward,
  );
  skin.pair('door-edge-middle', quad(outer.faceFoot, edgeLow, edgeHigh, outer.faceTop), inward);
  skin.pair('door-edge-lower', quad(outer.lowerEdge, edgeFoot, edgeLow, outer.faceFoot), inward);

  skin.pair(
    'door-upper',
    quad(edgeFoot, rear.bWaistFront, rear.bFront, edgeTop, { lift: CARD_LIFT }),
    inward,
  );
  skin.pair(
    'door-lower',
    quad(rear.sillTop(foot.doorX), rear.bSillFront, rear.bWaistFront, waist(foot.doorX), {
      lift: CARD_LIFT,
    }),
    inward,
  );
  skin.pair(
    'b-pillar-waist',
    quad(rear.bWaistFront, rear.bWaistRear, rear.bRear, rear.bFront),
    inward,
  );
  skin.pair(
    'b-pillar-foot',
    quad(rear.bSillFront, rear.bSillRear, rear.bWaistRear, rear.bWaistFront),
    inward,
  );
  if (rear.doorSill && rear.doorBelt) {
    skin.pair(
      'rear-door',
      quad(rear.bSillRear, rear.doorSill, rear.doorBelt, rear.bRear, { lift: CARD_LIFT }),
      inward,
    );
  }
  skin.pair(
    'rear-quarter',
    quad(rear.doorSill ?? rear.bSillRear, rear.wallSill, rear.wallTop, rear.doorBelt ?? rear.bRear),
    inward,
  );
  skin.pair('kick', quad(foot.toeOuter, foot.kickFoot, foot.kickTop, foot.kickTopFront), inward);
  skin.pair(
    'kick-upper',
    quad(foot.kickTopFront, foot.kickTop, foot.kickWaist, foot.toeTopOuter),
    inward,
  );
  skin.pair(
    'hinge-post',
    quad(foot.sillFront, rear.sillTop(foot.doorX), waist(foot.doorX), foot.kickWaist),
    inward,
  );
  skin.pair('sill', quad(foot.kickFoot, rear.wallFoot, rear.wallSill, foot.sillFront), [0, -1, 1]);
}
