import type { Seat } from '../cabin/model';
import { radians } from '../vector';
import type { Spot } from './cut';

export interface HeadShape {
  skull: Spot[];
  nose: Spot[];
  ears: { left: Spot; right: Spot };
}

/** A head is about a quarter longer than it is wide. By eye. */
const LONGER = 1.25;
const AROUND = 32;

/** A head seen from above as it faces, as wide as its ears are apart; mm. */
export function headShape({ head, facingDeg, earSpacing, ears }: Seat): HeadShape {
  const [cos, sin] = [Math.cos(radians(facingDeg)), Math.sin(radians(facingDeg))];
  // Facing turns to the right from straight ahead, which is up the page.
  const at = (ahead: number, right: number): Spot => [
    head[1] + ahead * sin + right * cos,
    head[0] - ahead * cos + right * sin,
  ];
  const half = Math.max(earSpacing / 2, 1);
  const long = half * LONGER;
  return {
    skull: Array.from({ length: AROUND }, (_, i) => {
      const t = (2 * Math.PI * i) / AROUND;
      return at(long * Math.cos(t), half * Math.sin(t));
    }),
    nose: [at(long * 0.97, -half * 0.2), at(long * 1.2, 0), at(long * 0.97, half * 0.2)],
    ears: { left: [ears.left[1], ears.left[0]], right: [ears.right[1], ears.right[0]] },
  };
}
