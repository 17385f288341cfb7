import { speakerFrame } from '../stage/off-axis';
import { degrees, dot, scale, type Vec3 } from '../vector';

export type Way = 'front' | 'rear' | 'left' | 'right' | 'up' | 'down';

/** A panel at a spot as someone sees it who looks square at it from the cabin. */
export interface PanelFrame {
  /** Unit vectors along the panel, car axes. */
  right: Vec3;
  up: Vec3;
  /** Where `up` leads in the car: up on upright panels, to the front or the rear on level ones. */
  upIs: Way;
}

/** @param normal unit, of the panel, into the cabin */
export function panelFrame(normal: Vec3): PanelFrame {
  const { right, up } = speakerFrame(scale(normal, -1));
  return { right, up, upIs: wayOf(up) };
}

const WAYS = [
  ['front', 'rear'],
  ['left', 'right'],
  ['down', 'up'],
] as const;

/** Where a direction leads most of all. */
export function wayOf(way: Vec3): Way {
  const [x, y, z] = way.map(Math.abs) as [number, number, number];
  const axis = x >= y && x >= z ? 0 : y >= z ? 1 : 2;
  return WAYS[axis][way[axis] > 0 ? 1 : 0];
}

/** Clockwise from the frame's up, as seen, 0 to 360 degrees. */
export function turnOf({ right, up }: PanelFrame, way: Vec3): number {
  const deg = degrees(Math.atan2(dot(way, right), dot(way, up)));
  return deg < 0 ? deg + 360 : deg;
}

/** The nearest hour of a clock face laid on the panel, 1 to 12; 12 is up. */
export function hourOf(frame: PanelFrame, way: Vec3): number {
  return Math.round(turnOf(frame, way) / 30) % 12 || 12;
}
