import { along, cross, direction } from '../../vector';
import type { PatchFinder } from '../furniture/patches';
import { block, limb, merge } from '../furniture/solid';
import { mirrorDrawn } from '../mirror';
import type { Drawn, Patch } from '../model';
import { patchNormal, patchPartials, pointOnPatch } from '../patch';

/** Inner door handle in its bowl. */
function handle(card: Patch, u: number, v: number): Drawn[] {
  const at = pointOnPatch(card, u, v);
  const n = patchNormal(card, u, v);
  const rearward = direction(patchPartials(card, u, v).du);
  if (!rearward) return [];
  const up = cross(n, rearward);
  const lever = along(along(at, n, 14), rearward, 8);
  return [
    {
      material: 'dark-trim',
      mesh: block(along(at, n, -1), [rearward, up, n], [54, 21, 5], 4, 16, 3),
    },
    {
      material: 'metal',
      mesh: merge(
        limb([along(lever, rearward, -48), lever, along(lever, rearward, 34)], [8, 9, 7], 10),
      ),
    },
  ];
}

/** Handles on all doors. */
export function doorTrim(find: PatchFinder): Drawn[] {
  const out: Drawn[] = [];
  for (const [id, u, v] of [
    ['door-upper-left', 0.24, 0.66],
    ['rear-door-left', 0.2, 0.8],
  ] as const) {
    const card = find(id);
    if (card) out.push(...handle(card, u, v));
  }
  return [...out, ...out.map(mirrorDrawn)];
}
