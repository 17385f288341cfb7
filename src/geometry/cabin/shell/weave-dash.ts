/** The dash and what hangs under it. */

import { add, mirrorY, mix, sub, type Vec3 } from '../../vector';
import type { Layout } from './build-shell';
import type { Skin } from './skin';
import { across, acrossFlat, curvePiece, quad } from './weave';

/**
 * The dash top runs on this far under the glass, mm. Its three parts and the screen meet along one
 * curve but are cut into triangles at different places of it; without the tuck, slits of up to a
 * tenth of a millimetre let lines slip through.
 */
const TUCK = 2;

export function weaveDash(skin: Skin, { front, dash, foot, centre }: Layout): void {
  const { inner, outer, centreHalf } = dash;
  // y runs evenly along the screen's base, so the centre's edge cuts it at this parameter.
  const cut = (1 + centreHalf / front.baseCorner[1]) / 2;
  const base = [mirrorY(front.baseCorner), front.baseBend, front.baseCorner] as const;
  // Forward along the belt line at the ends, so that they stay in line with it.
  const ends = sub(front.baseCorner, front.belt(front.baseCorner[0] + TUCK));
  const tuck = (p: Vec3, share: number): Vec3 => add(p, [-TUCK, share * ends[1], share * ends[2]]);
  const cutPiece = curvePiece(base, cut, 1);
  const side = [tuck(cutPiece[0], 0), tuck(cutPiece[1], 0.5), tuck(cutPiece[2], 1)] as const;
  const centreBend = tuck(curvePiece(base, 1 - cut, cut)[1], 0);

  const up = [0, 0, 1] as const;
  skin.pair(
    'dash-top',
    quad(side[0], side[2], outer.rollTop, inner.rollTop, { south: side[1] }),
    up,
  );
  skin.across(
    'dash-top',
    across(
      { right: side[0], middle: [centreBend[0], centreBend[2]] },
      { right: mix(side[0], inner.rollTop, 0.5) },
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
