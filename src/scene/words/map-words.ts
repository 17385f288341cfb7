/** Numbers along the lines of a painted map, and the mark of the spot pointed at. */
import { distance, dot, sub, type Vec3 } from '../../geometry';
import { levelText } from '../../plan/painted';
import { sessionStore } from '../../store';
import { toCar } from '../axes';
import type { LabelWant } from '../labels';
import type { ShownMap } from '../parts/map-part';
import { placeOf, type WordsFrame } from './want';

/** Nothing within `far` of the eye along a line of sight, mm. */
export type InSight = (eye: Vec3, point: Vec3) => boolean;

/** Numbers nearer than this on the sheet crowd, CSS pixels. */
const APART = 46;
/** And more than this are not read. */
const MOST = 26;

export function mapWants(frame: WordsFrame, shown: ShownMap | null, inSight: InSight): LabelWant[] {
  if (!shown) return [];
  const { lengthUnit } = sessionStore.getState();
  const { quantity } = shown.painted;
  const eye = toCar(frame.camera.position);
  const seen = ({ point, normal }: { point: Vec3; normal: Vec3 }) =>
    dot(normal, sub(eye, point)) > 0.12 * distance(eye, point) && inSight(eye, point);
  const wants: LabelWant[] = [];
  const taken: { x: number; y: number }[] = [];
  shown.levels.forEach((one, n) => {
    const at = placeOf(frame, one.point);
    if (at.hidden || taken.length >= MOST) return;
    if (taken.some(({ x, y }) => Math.abs(x - at.x) < APART && Math.abs(y - at.y) < APART / 2))
      return;
    if (!seen(one)) return;
    taken.push(at);
    wants.push({
      id: `level:${n}`,
      kind: 'level',
      text: levelText(quantity, one.level, lengthUnit),
      ...at,
      gap: 0,
      weight: 20,
    });
  });
  if (shown.at)
    wants.push({
      id: 'spot',
      kind: 'spot',
      text: '',
      ...placeOf(frame, shown.at.point),
      gap: 0,
      weight: 205,
      data: { spot: String(shown.painted.at) },
    });
  return wants;
}
