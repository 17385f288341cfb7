import type { Dimensions } from '../dimensions';
import { mirrorObstacle } from '../mirror';
import type { Obstacle } from '../model';
import { frontHalfWidth } from './front-width';
import { block, rod } from './solid';

/** The frame's front before the R point: just behind the face of the seat base. Typical. */
const FRONT = 300;
const REAR = 90;
/** Its top below the R point: under the cushion, wherever that slides. Typical. */
const BELOW = 155;

/** Frame and rails under the left front seat, bolted to the floor: they stay while the seat slides. */
function leftFrame(d: Dimensions): Obstacle {
  const top = Math.max(40, d.seatHeight - BELOW);
  const halfWidth = frontHalfWidth(d) * 0.8;
  const frame = block(
    [d.seatReach + (REAR - FRONT) / 2, -d.seatOffset, (top + 8) / 2],
    [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ],
    [(FRONT + REAR) / 2, halfWidth, (top - 8) / 2],
    16,
    12,
    6,
  );
  // From the foremost to the rearmost place of the cushion's feet.
  const [from, to] = [d.seatReach - d.seatTravel - 190, d.seatReach + 170];
  const rail = (dy: number) =>
    rod([from, -d.seatOffset + dy, 14], [to, -d.seatOffset + dy, 14], 13);
  return {
    id: 'seat-frame-left',
    name: 'left seat frame',
    shape: frame,
    drawn: [
      { material: 'dark-trim', mesh: frame },
      { material: 'metal', mesh: rail(-halfWidth * 0.9) },
      { material: 'metal', mesh: rail(halfWidth * 0.9) },
    ],
    given: false,
  };
}

export function seatFrames(d: Dimensions): Obstacle[] {
  const left = leftFrame(d);
  return [left, mirrorObstacle(left)];
}
