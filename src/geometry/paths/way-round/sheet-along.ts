import { dot, sub } from '../../vector';
import type { Frame } from './frame';
import type { Bend } from './string';

/** Where a sheet hangs, in radians about the line, at a distance along it. */
export interface Sheet {
  angleAt(x: number): number;
  /**
   * On which side of the sheet a place lies: above 0 where it comes later about the line. The number
   * itself says nothing.
   */
  sideOf(x: number, y: number, z: number): number;
}

/** Nearer the sheet than this a place's side is worked out exactly, mm. */
const CLOSE = 1e-6;

/** The sheet that hangs where a string runs: turning evenly from bend to bend. */
export function sheetAlong(frame: Frame, bends: readonly Bend[]): Sheet | null {
  const xs: number[] = [];
  const angles: number[] = [];
  for (const { point } of bends) {
    const d = sub(point, frame.from);
    const [y, z] = [dot(d, frame.u), dot(d, frame.v)];
    if (y * y + z * z < 1e-6) continue;
    const x = dot(d, frame.along);
    let t = Math.atan2(z, y);
    const last = angles[angles.length - 1];
    if (last !== undefined) {
      // A string that runs back on itself hangs on no such sheet.
      if (x <= (xs[xs.length - 1] as number)) return null;
      t += 2 * Math.PI * Math.round((last - t) / (2 * Math.PI));
    }
    xs.push(x);
    angles.push(t);
  }
  if (xs.length === 0) return null;
  const last = xs.length - 1;
  const cosines = angles.map(Math.cos);
  const sines = angles.map(Math.sin);
  const angleAt = (x: number): number => {
    if (x <= (xs[0] as number)) return angles[0] as number;
    if (x >= (xs[last] as number)) return angles[last] as number;
    let k = 1;
    while ((xs[k] as number) < x) k += 1;
    const x0 = xs[k - 1] as number;
    const x1 = xs[k] as number;
    const a0 = angles[k - 1] as number;
    const a1 = angles[k] as number;
    return a0 + ((a1 - a0) * (x - x0)) / (x1 - x0);
  };
  return {
    angleAt,
    sideOf(x, y, z) {
      if (x <= (xs[0] as number)) return z * (cosines[0] as number) - y * (sines[0] as number);
      if (x >= (xs[last] as number))
        return z * (cosines[last] as number) - y * (sines[last] as number);
      let k = 1;
      while ((xs[k] as number) < x) k += 1;
      // On one side of the sheet before and of that after it, it is so between: they are less than
      // half a turn apart. Cosines and sines took most of the time.
      const before = z * (cosines[k - 1] as number) - y * (sines[k - 1] as number);
      const after = z * (cosines[k] as number) - y * (sines[k] as number);
      if (before > CLOSE && after > CLOSE) return before;
      if (before < -CLOSE && after < -CLOSE) return before;
      const t = angleAt(x);
      return z * Math.cos(t) - y * Math.sin(t);
    },
  };
}
