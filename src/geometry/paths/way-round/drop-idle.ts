/** A string pulled taut with the bends taken out at which it would rise off its body. */
import type { Vec3 } from '../../vector';
import { bendOnTrack, layTracks, points, pullTracks, STILL, TRACK, tracks } from './pull-taut';
import type { Bend } from './string';

/** A pull off the body below this is rounding. */
const RISE = 1e-9;

let kept = new Uint8Array(64);

/** Whether the latest {@link dropIdle} met two bends in one place. */
export let metTogether = false;

/**
 * Takes out the bends at which the string would rise off its body, and those two in one place, and
 * pulls the rest taut again. All of it where the tracks lie: bends are told once, in the end.
 * @param letGo takes out all bends that meet in one place: at a corner the string may belong over an
 * edge that is not among them. Where {@link metTogether} stays false it makes no difference
 */
export function dropIdle(from: Vec3, bends: readonly Bend[], to: Vec3, letGo = false): Bend[] {
  let n = bends.length;
  let left = bends;
  metTogether = false;
  layTracks(from, bends, to);
  if (kept.length < n) kept = new Uint8Array(2 * n);
  for (;;) {
    pullTracks(n, 0);
    let some = 0;
    for (let i = 0; i < n; i++) {
      kept[i] = isHeld(left, n, i, letGo) ? 1 : 0;
      some += kept[i] as number;
    }
    if (some === n) return left.map(bendOnTrack);
    left = left.filter((_, i) => kept[i] === 1);
    closeUp(n);
    n = some;
  }
}

/** Moves the tracks and points of the bends that are kept together. */
function closeUp(n: number): void {
  const [track, at] = [tracks, points];
  let k = 0;
  for (let i = 0; i < n; i++) {
    if (kept[i] === 0) continue;
    const t = TRACK * i;
    const reach = track[t + 6] as number;
    // As a part of the edge and back again: that is how a bend is told.
    if (reach > 0) track[t + 7] = ((track[t + 7] as number) / reach) * reach;
    track.copyWithin(TRACK * k, t, t + TRACK);
    at.copyWithin(3 * k + 3, 3 * i + 3, 3 * i + 6);
    k += 1;
  }
  at.copyWithin(3 * k + 3, 3 * n + 3, 3 * n + 6);
}

/** Whether the string is held at a bend, rather than rising off there. */
function isHeld(bends: readonly Bend[], n: number, i: number, letGo: boolean): boolean {
  const at = points;
  const p = 3 * i + 3;
  const x = at[p] as number;
  const y = at[p + 1] as number;
  const z = at[p + 2] as number;
  if (i > 0 && gap(p - 3, p) < STILL) return false;
  if (i + 1 < n && gap(p + 3, p) < STILL) {
    metTogether = true;
    if (letGo) return false;
  }
  // Where edges meet in a corner, bends lie in one place and what is between them has no
  // direction: the string pulls towards the next places off it.
  let q = p - 3;
  while (q > 0 && gap(q, p) < STILL) q -= 3;
  const bx = (at[q] as number) - x;
  const by = (at[q + 1] as number) - y;
  const bz = (at[q + 2] as number) - z;
  const b = Math.sqrt(bx * bx + by * by + bz * bz) || 1;
  const end = 3 * n + 3;
  q = p + 3;
  while (q < end && gap(q, p) < STILL) q += 3;
  const cx = (at[q] as number) - x;
  const cy = (at[q + 1] as number) - y;
  const cz = (at[q + 2] as number) - z;
  const c = Math.sqrt(cx * cx + cy * cy + cz * cz) || 1;
  const { body, edge } = bends[i] as Bend;
  const o = body.outward;
  const pull =
    (bx / b + cx / c) * (o[3 * edge] as number) +
    (by / b + cy / c) * (o[3 * edge + 1] as number) +
    (bz / b + cz / c) * (o[3 * edge + 2] as number);
  return pull <= RISE;
}

/** How far apart two points of the string are, told by where their numbers begin. */
function gap(p: number, q: number): number {
  const at = points;
  const x = (at[p] as number) - (at[q] as number);
  const y = (at[p + 1] as number) - (at[q + 1] as number);
  const z = (at[p + 2] as number) - (at[q + 2] as number);
  return Math.sqrt(x * x + y * y + z * z);
}
