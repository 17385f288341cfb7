import { PANEL_SAGITTA } from '../tolerance';
import { clamp, distance, mix, type Vec3 } from '../vector';
import type { Panel, Patch } from './model';
import { tessellate } from './patch';

/** How far the middle control points lie from straight, over one direction of the patch. */
function bow(patch: Patch, at: (k: number, m: number) => number): number {
  let most = 0;
  for (let k = 0; k < 3; k++) {
    const a = patch.control[at(k, 0)] as Vec3;
    const b = patch.control[at(k, 1)] as Vec3;
    const c = patch.control[at(k, 2)] as Vec3;
    most = Math.max(most, distance(b, mix(a, c, 0.5)));
  }
  return most;
}

/** Mixed second difference of the corners: zero for a parallelogram, large for a twisted patch. */
function twist(patch: Patch): number {
  const [a, b, c, d] = [0, 2, 6, 8].map((i) => patch.control[i] as Vec3) as [
    Vec3,
    Vec3,
    Vec3,
    Vec3,
  ];
  return distance(mix(a, d, 0.5), mix(b, c, 0.5));
}

/**
 * Triangles of a panel, within about {@link PANEL_SAGITTA} of its surface. A curved direction is
 * always cut into the same number of strips, so neighbours sharing a curved edge share its points
 * and no sliver opens between them.
 */
const CURVED_STRIPS = 12;

const cache = new WeakMap<Panel, ReturnType<typeof tessellate>>();

export function tessellatePanel(panel: Panel): ReturnType<typeof tessellate> {
  let mesh = cache.get(panel);
  if (!mesh) {
    const { patch } = panel;
    // A bilinear cell strays from its triangles by its twist over the square of the strips.
    const flat = clamp(Math.ceil(Math.sqrt(twist(patch) / PANEL_SAGITTA)), 1, CURVED_STRIPS);
    const nu = bow(patch, (k, m) => 3 * k + m) > 1e-6 ? CURVED_STRIPS : flat;
    const nv = bow(patch, (k, m) => 3 * m + k) > 1e-6 ? CURVED_STRIPS : flat;
    mesh = tessellate(patch, nu, nv);
    cache.set(panel, mesh);
  }
  return mesh;
}
