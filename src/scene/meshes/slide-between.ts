import { sub, type Vec3 } from '../../geometry';
import { type Part, sameMake } from './solid';

/** What a sum and a difference may leave of an equal slide, mm; a hundredth of a hair. */
const SAME = 1e-4;

/**
 * How far `parts` are `basis` slid as a whole, turned and bent nowhere; `null` where they are not.
 */
export function slideBetween(basis: readonly Part[], parts: readonly Part[]): Vec3 | null {
  let by: Vec3 | null = null;
  if (basis.length !== parts.length) return null;
  for (const [p, part] of parts.entries()) {
    const from = basis[p] as Part;
    if (from.tone !== part.tone) return null;
    const [a, b] = [from.mesh.vertices, part.mesh.vertices];
    if (a.length !== b.length) return null;
    if (a !== b || by) {
      for (let i = 0; i < a.length; i++) {
        const [u, v] = [a[i] as Vec3, b[i] as Vec3];
        by ??= sub(v, u);
        const off =
          Math.abs(v[0] - u[0] - by[0]) +
          Math.abs(v[1] - u[1] - by[1]) +
          Math.abs(v[2] - u[2] - by[2]);
        if (!(off < SAME)) return null;
      }
    } else if (a.length > 0) by = [0, 0, 0];
    if (!sameMake(from.mesh, part.mesh)) return null;
  }
  return by;
}
