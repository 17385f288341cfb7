/** What a finger or the mouse would take hold of at a place on the drawing. */
import { distance, type Vec3 } from '../../geometry';
import { sessionStore } from '../../store';
import type { Drawing } from '../drawing';
import { rayThrough, spotOf } from './ray';

export type Grab =
  | { kind: 'tip'; id: string; point: Vec3 }
  | { kind: 'speaker'; id: string; point: Vec3 }
  | { kind: 'head'; id: string; point: Vec3 }
  | { kind: 'seat'; id: string; point: Vec3 }
  | { kind: 'obstacle'; id: string; point: Vec3 };

/** A mouse hits a small mark, a finger a larger one: CSS pixels. */
const REACH = { mouse: 12, touch: 24 } as const;

/**
 * Nearest first among marks drawn over everything (arrow tip of the selected speaker, speakers,
 * heads), then bodies. A seat's own body is taken hold of only once the seat is selected, so
 * that turning the car does not slide seats.
 */
export function grabAt(
  drawing: Drawing,
  camera: Parameters<typeof spotOf>[0],
  x: number,
  y: number,
  touch: boolean,
): Grab | null {
  const reach = touch ? REACH.touch : REACH.mouse;
  const { selection, view } = sessionStore.getState();
  const miss = (point: Vec3) => {
    const spot = spotOf(camera, drawing.size, point);
    return spot.ahead ? Math.hypot(spot.x - x, spot.y - y) : Number.POSITIVE_INFINITY;
  };
  const apart = (a: Vec3, b: Vec3) => {
    const [at, bt] = [spotOf(camera, drawing.size, a), spotOf(camera, drawing.size, b)];
    return Math.hypot(at.x - bt.x, at.y - bt.y);
  };
  const shown = drawing.speakers.shown();
  if (selection?.kind === 'speaker') {
    const own = shown.find(({ speaker }) => speaker.id === selection.id);
    // Seen end on, the arrow lies on the speaker itself: then it is the speaker that is meant.
    const tip = own?.tip;
    if (own && tip && miss(tip) <= reach && apart(tip, own.placed.position) > reach)
      return { kind: 'tip', id: selection.id, point: tip };
  }
  let best: { grab: Grab; rank: number } | null = null;
  const eye = rayThrough(camera, drawing.size, x, y).origin;
  const farthest = Math.max(1, ...shown.map(({ placed }) => distance(eye, placed.position)));
  for (const { speaker, placed, body } of shown) {
    const point = placed.position;
    const size = Math.max(reach, sizeOnSheet(camera, drawing.size, point, body.flange / 2));
    const off = miss(point) / size;
    if (off > 1) continue;
    // Left and right lie on each other from the side: the selected one goes first, then the nearer.
    const mine = selection?.kind === 'speaker' && selection.id === speaker.id;
    const rank = mine ? -1 : off + distance(eye, point) / farthest;
    if (!best || rank < best.rank)
      best = { grab: { kind: 'speaker', id: speaker.id, point }, rank };
  }
  if (best) return best.grab;
  const self = view === 'seat' ? drawing.seat()?.id : null;
  for (const seat of drawing.cabin()?.seats ?? []) {
    if (seat.id === self) continue;
    const size = Math.max(reach, sizeOnSheet(camera, drawing.size, seat.head, 95));
    if (miss(seat.head) <= size) return { kind: 'head', id: seat.id, point: seat.head };
  }
  const ray = rayThrough(camera, drawing.size, x, y);
  const hit = drawing.obstacles.under(ray, () => true);
  if (!hit) return null;
  const { obstacle } = hit;
  const seat = obstacle.seat ?? obstacle.occupant?.seat;
  if (obstacle.given) return { kind: 'obstacle', id: obstacle.id, point: hit.point };
  if (seat && selection?.kind === 'seat' && selection.id === seat) {
    return { kind: 'seat', id: seat, point: hit.point };
  }
  return null;
}

/** The seat whose head lies under the pointer, or null. */
export function headAt(
  drawing: Drawing,
  camera: Parameters<typeof spotOf>[0],
  x: number,
  y: number,
): string | null {
  for (const seat of drawing.cabin()?.seats ?? []) {
    const spot = spotOf(camera, drawing.size, seat.head);
    if (!spot.ahead) continue;
    const size = Math.max(16, sizeOnSheet(camera, drawing.size, seat.head, 110));
    if (Math.hypot(spot.x - x, spot.y - y) <= size) return seat.id;
  }
  return null;
}

/** Radius in CSS pixels of a ball in the car. */
export function sizeOnSheet(
  camera: Parameters<typeof spotOf>[0],
  size: { width: number; height: number },
  middle: Vec3,
  radius: number,
): number {
  const m = camera.projectionMatrix.elements;
  const v = camera.matrixWorldInverse.elements;
  // Depth of the point before the eye, from the third row of the view (three's y, z, x order).
  const [x, y, z] = [middle[1], middle[2], middle[0]];
  const depth = -(
    (v[2] as number) * x +
    (v[6] as number) * y +
    (v[10] as number) * z +
    (v[14] as number)
  );
  if (depth <= 1) return 0;
  return ((radius * (m[5] as number)) / depth) * (size.height / 2);
}
