/** The dash and what hangs under it. */

import { mirrorY } from '../../vector';
import type { Layout } from './build-shell';
import type { Skin } from './skin';
import { across, acrossFlat, curvePiece, quad } from './weave';

export function weaveDash(skin: Skin, { front, dash, foot, centre }: Layout): void {
  const { inner, outer, centreHalf } = dash;
  // y runs evenly along the screen's base, so the centre's edge cuts it at this parameter.
  const cut = (1 + centreHalf / front.baseCorner[1]) / 2;
  const base = [mirrorY(front.baseCorner), front.baseBend, front.baseCorner] as const;
  const side = curvePiece(base, cut, 1);
  const middle = curvePiece(base, 1 - cut, cut);

  const up = [0, 0, 1] as const;
  skin.pair(
    'dash-top',
    quad(side[0], side[2], outer.rollTop, inner.rollTop, { south: side[1] }),
    up,
  );
  skin.across(
    'dash-top',
    across(
      { right: side[0], middle: [middle[1][0], middle[1][2]] },
      { right: mid(side[0], inner.rollTop) },
      { right: inner.rollTop },
    ),
    up,
    'center',
  );
  const rearUp = [1, 0, 1] as const;
  skin.pair(
    'dash-roll',
    quad(inner.faceTop, outer.faceTop, outer.rollTop, inner.rollTop, {
      east: outer.rollBend,
      west: inner.rollBend,
    }),
    rearUp,
  );
  skin.across(
    'dash-roll',
    across({ right: inner.faceTop }, { right: inner.rollBend }, { right: inner.rollTop }),
    rearUp,
    'center',
  );
  const rearward = [1, 0, 0] as const;
  skin.pair(
    'dash-face',
    quad(inner.faceFoot, outer.faceFoot, outer.faceTop, inner.faceTop),
    rearward,
  );
  skin.across('dash-face', acrossFlat(inner.faceFoot, inner.faceTop), rearward, 'center');
  skin.pair(
    'dash-lower',
    quad(inner.lowerEdge, outer.lowerEdge, outer.faceFoot, inner.faceFoot),
    [1, 0, -0.5],
  );
  skin.across('dash-foot', acrossFlat(centre.consoleFront, inner.faceFoot), [1, 0, 0.5]);

  const down = [0, 0, -1] as const;
  skin.pair(
    'under-dash',
    quad(foot.roofInner, foot.kickWaist, outer.lowerEdge, inner.lowerEdge),
    down,
  );
  skin.pair(
    'footwell-roof',
    quad(foot.toeTopInner, foot.toeTopOuter, foot.kickWaist, foot.roofInner),
    down,
  );
  const outboard = [0, 1, 0] as const;
  skin.pair(
    'centre-side-front',
    quad(centre.tunnelFront, centre.tunnelUnderDash, inner.lowerEdge, foot.toeTopInner),
    outboard,
  );
  skin.pair(
    'centre-side',
    quad(centre.tunnelUnderDash, centre.consoleFront, inner.faceFoot, inner.lowerEdge),
    outboard,
  );
}

const mid = (a: readonly number[], b: readonly number[]) =>
  [0, 1, 2].map((i) => ((a[i] as number) + (b[i] as number)) / 2) as [number, number, number];
