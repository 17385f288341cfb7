import { dot, sub } from '../../vector';
import type { Frame, Sheet } from './section';
import type { Bend } from './string';

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
  return (x) => {
    const last = xs.length - 1;
    if (x <= (xs[0] as number)) return angles[0] as number;
    if (x >= (xs[last] as number)) return angles[last] as number;
    let k = 1;
    while ((xs[k] as number) < x) k += 1;
    const [x0, x1] = [xs[k - 1] as number, xs[k] as number];
    const [a0, a1] = [angles[k - 1] as number, angles[k] as number];
    return a0 + ((a1 - a0) * (x - x0)) / (x1 - x0);
  };
}
