/** The derived panels as the left-hand-drive car has them, whichever side the wheel is on. */
import type { Side } from '../../input';
import type { Vec3 } from '../../vector';
import { mirrorCentrePatch, mirrorSidedPatch, mirrorWords } from '../mirror';
import type { Panel, Patch } from '../model';
import { pointOnPatch } from '../patch';

/** The patch of a panel by its left-hand-drive id; `null` where the cabin has none. */
export type PatchFinder = (id: string) => Patch | null;

/**
 * Panels given by the plan are left out: nothing is known of how their u and v run, so nothing is
 * hung on them.
 */
export function leftHandDrivePatches(panels: readonly Panel[], wheelSide: Side): PatchFinder {
  const byId = new Map(panels.filter((p) => !p.given).map((p) => [p.id, p.patch]));
  return (id) => {
    if (wheelSide === 'left') return byId.get(id) ?? null;
    const twin = mirrorWords(id);
    const patch = byId.get(twin);
    if (!patch) return null;
    return twin === id ? mirrorCentrePatch(patch) : mirrorSidedPatch(patch);
  };
}

/**
 * Along one parameter line of a patch, the parameter (0 to 1) where coordinate `axis` has the
 * value; the nearer end where it never has it. The coordinate must run one way along the line.
 */
export function solveOnLine(at: (t: number) => Vec3, axis: 0 | 1 | 2, value: number): number {
  const [a, b] = [at(0)[axis], at(1)[axis]];
  const rising = b >= a;
  if (rising ? value <= a : value >= a) return 0;
  if (rising ? value >= b : value <= b) return 1;
  let [low, high] = [0, 1];
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2;
    if (at(middle)[axis] < value === rising) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Where the line v = constant of a panel across the car has the given Y. */
export function atY(patch: Patch, y: number, v: number): Vec3 {
  const at = (u: number) => pointOnPatch(patch, u, v);
  return at(solveOnLine(at, 1, y));
}
