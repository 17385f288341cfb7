/** Floor, toe boards with footrests, tunnel, console and the seats' bases. */
import type { Side } from '../../input';
import type { Vec3 } from '../../vector';
import type { Layout } from './build-shell';
import { footrestLine } from './foot';
import type { Skin } from './skin';
import { acrossFlat, quad } from './weave';

/** Seat base: its face ahead of the hip joint, half its width, its upper and lower edge. Typical. */
const SEAT_BASE = { ahead: 330, half: 215, below: 150, above: 45, slope: 25 };

export function weaveFloor(skin: Skin, layout: Layout, wheelSide: Side): void {
  const { d, foot, centre, rear } = layout;
  const up = [0, 0, 1] as const;
  const rearward = [1, 0, 0.5] as const;
  for (const side of ['left', 'right'] as const) {
    // The left foot rests left of the pedals: at the kick panel in left-hand drive, at the tunnel
    // in right-hand drive. The passenger's strip lies at the kick panel in both.
    const beside = wheelSide === 'right' && side === 'right' ? 'tunnel' : 'kick';
    const [low, high] = footrestLine(d, foot, beside);
    const atTunnel = quad(foot.toeInner, low, high, foot.toeTopInner);
    const atKick = quad(low, foot.toeOuter, foot.toeTopOuter, high);
    skin.one('toe-board', side, beside === 'kick' ? atTunnel : atKick, rearward);
    skin.one('footrest', side, beside === 'kick' ? atKick : atTunnel, rearward);
  }
  const { tunnelEndX } = rear;
  const half = foot.toeInner[1];
  const inner = (x: number): Vec3 => [x, half, 0];
  const kickX = foot.kickFoot[0];
  skin.pair('footwell-floor', quad(foot.toeInner, foot.toeOuter, foot.kickFoot, inner(kickX)), up);
  const floorEnd = rear.floorEdge(tunnelEndX);
  skin.pair('floor', quad(inner(kickX), foot.kickFoot, floorEnd, inner(tunnelEndX)), up);
  skin.across('floor-rear', acrossFlat(floorEnd, rear.wallFoot), up);

  const outboard = [0, 1, 0] as const;
  const tunnelEnd = centre.tunnelTop(tunnelEndX);
  skin.pair(
    'tunnel',
    quad(foot.toeInner, inner(tunnelEndX), tunnelEnd, centre.tunnelFront),
    outboard,
  );
  skin.across('tunnel-top', acrossFlat(centre.tunnelAtEnd, tunnelEnd), up);
  skin.across('tunnel-end', acrossFlat(inner(tunnelEndX), tunnelEnd), [1, 0, 0]);
  skin.pair(
    'console-side',
    quad(centre.tunnelUnderDash, centre.tunnelAtEnd, centre.consoleEnd, centre.consoleFront),
    outboard,
  );
  skin.across('console-top', acrossFlat(centre.consoleFront, centre.consoleEnd), up);
  skin.across('console-end', acrossFlat(centre.tunnelAtEnd, centre.consoleEnd), [1, 0, 0]);

  const [x, z] = [d.seatReach - SEAT_BASE.ahead, d.seatHeight - SEAT_BASE.below];
  const [a, b] = [d.seatOffset - SEAT_BASE.half, d.seatOffset + SEAT_BASE.half];
  const top = Math.max(z, SEAT_BASE.above + 30);
  skin.pair(
    'seat-base',
    quad(
      [x + SEAT_BASE.slope, a, SEAT_BASE.above],
      [x + SEAT_BASE.slope, b, SEAT_BASE.above],
      [x, b, top],
      [x, a, top],
    ),
    [-1, 0, 0],
  );
}
