import type { MeshShape, Side } from '../../input';
import { add, along, radians, type Vec3 } from '../../vector';
import type { Dimensions } from '../dimensions';
import { block, merge, rod } from '../furniture/solid';
import { pedalLayout } from '../keep-clear/pedal-layout';
import type { Drawn } from '../model';
import { HEEL_TO_BALL, shoeAngleDeg } from '../posture';

/** One pad under the ball of the foot, with its arm up behind the dash. */
function pedal(y: number, sole: number, size: readonly [number, number], along0: number) {
  const a = radians(sole);
  const forward: Vec3 = [-Math.cos(a), 0, Math.sin(a)];
  const away: Vec3 = [-Math.sin(a), 0, -Math.cos(a)];
  const heel: Vec3 = [0, y, 0];
  const pad = along(along(heel, forward, along0), away, 12);
  const [wide, high] = size;
  const arm = rod(along(pad, away, 8), add(along(pad, away, 40), [-40, 0, 210]), 7, 8);
  return {
    pad: block(pad, [[0, 1, 0], forward, away], [wide / 2, high / 2, 8], 6, 12, 5),
    arm,
  };
}

/** The pedals as drawn; they are in nobody's way, their foot room is a keep-clear zone. */
export function pedals(d: Dimensions, wheelSide: Side, manual: boolean): Drawn[] {
  const layout = pedalLayout(d, wheelSide);
  const sole = shoeAngleDeg(d.seatHeight);
  const parts = [
    pedal(layout.accelerator, sole, [52, 150], HEEL_TO_BALL - 55),
    pedal(layout.brake, sole, [manual ? 66 : 92, 58], HEEL_TO_BALL - 10),
    ...(manual ? [pedal(layout.clutch, sole, [66, 58], HEEL_TO_BALL - 10)] : []),
  ];
  const all = (pick: (p: (typeof parts)[number]) => MeshShape) => merge(...parts.map(pick));
  return [
    { material: 'rubber', mesh: all((p) => p.pad) },
    { material: 'metal', mesh: all((p) => p.arm) },
  ];
}
