/** A mark for every head: a ring at ear height, the nose, and the two ears. */
import { Group } from 'three';
import { radians, type Seat, type Vec3 } from '../../geometry';
import { polyline, type Stroke } from '../meshes/ink';
import { type Kit, LAYER } from './kit';
import { strokeSheet } from './stroke-sheet';

const AROUND = 28;

export function createHeadsPart(kit: Kit) {
  const group = new Group();
  const sheet = strokeSheet([[kit.marks, LAYER.marks]]);
  group.add(...sheet.meshes);
  let key = '';
  return {
    group,
    show(seats: readonly Seat[], current: string, lookedThrough: string | null) {
      const next = seats
        .map((s) => `${s.id}${s.head}${s.facingDeg}${s.earSpacing}`)
        .concat(current, lookedThrough ?? '')
        .join();
      if (next === key) return;
      key = next;
      sheet.draw(
        seats
          .filter((seat) => seat.id !== lookedThrough)
          .flatMap((seat) => headMark(seat, seat.id === current)),
      );
    },
    dispose: () => sheet.dispose(),
  };
}

function headMark(seat: Seat, current: boolean): Stroke[] {
  const pen = {
    tone: current ? 'ink' : 'quiet-ink',
    width: current ? 1.7 : 1,
    strength: current ? 0.95 : 0.55,
  } as const;
  const [cos, sin] = [Math.cos(radians(seat.facingDeg)), Math.sin(radians(seat.facingDeg))];
  const at = (ahead: number, right: number): Vec3 => [
    seat.head[0] - cos * ahead + sin * right,
    seat.head[1] + sin * ahead + cos * right,
    seat.head[2],
  ];
  const half = seat.earSpacing / 2;
  const ring: Vec3[] = Array.from({ length: AROUND }, (_, i) => {
    const t = (2 * Math.PI * i) / AROUND;
    return at(95 * Math.cos(t), half * Math.sin(t));
  });
  const ear = (side: 1 | -1): Stroke => ({
    start: at(-18, side * (half + 5)),
    end: at(18, side * (half + 5)),
    ...pen,
    width: pen.width * 2.2,
  });
  return [
    ...polyline(ring, true, pen),
    { start: at(93, -14), end: at(118, 0), ...pen },
    { start: at(93, 14), end: at(118, 0), ...pen },
    ear(1),
    ear(-1),
  ];
}
