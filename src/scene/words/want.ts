/** What every word on the drawing needs to know. */
import type { Camera } from 'three';
import type { CabinModel, SeatResult, SpeakerInput, Vec3 } from '../../geometry';
import type { Hovered } from '../attention';
import { spotOf } from '../pick/ray';

export interface Place {
  x: number;
  y: number;
  /** Off the sheet or behind the eye. */
  hidden: boolean;
}

export interface WordsFrame {
  camera: Camera;
  size: { width: number; height: number };
  cabin: CabinModel;
  seat: SeatResult | null;
  hovered: Hovered;
  among: readonly SpeakerInput[];
}

/** Where a point of the car lies on the sheet. */
export function placeOf({ camera, size }: WordsFrame, point: Vec3): Place {
  const spot = spotOf(camera, size, point);
  const off = spot.x < -20 || spot.y < -20 || spot.x > size.width + 20 || spot.y > size.height + 20;
  return { x: spot.x, y: spot.y, hidden: !spot.ahead || off };
}

/** The name of a body or panel; its id where the cabin has neither. */
export function nameOf({ cabin }: WordsFrame, id: string): string {
  const named = (all: readonly { id: string; name: string }[]) =>
    all.find((one) => one.id === id)?.name;
  return named(cabin.obstacles) ?? named(cabin.panels) ?? id;
}

/** How far a ball of `radius` round a point reaches on the sheet, CSS pixels, at most 60. */
export function radiusOnSheet(frame: WordsFrame, middle: Vec3, radius: number): number {
  const a = placeOf(frame, middle);
  let most = 0;
  for (const k of [0, 1, 2]) {
    const p = placeOf(frame, middle.map((x, i) => (i === k ? x + radius : x)) as unknown as Vec3);
    most = Math.max(most, Math.hypot(p.x - a.x, p.y - a.y));
  }
  return Math.min(60, most);
}
