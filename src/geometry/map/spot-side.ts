import type { Panel } from '../cabin/model';
import { pointOnPatch } from '../cabin/patch';
import type { Side } from '../input';

/** Nearer the centreline than this a spot is on neither side, mm. */
const CENTRE = 1e-6;

/** The side a panel's id names, or `null`. */
export const panelSide = (id: string): Side | null =>
  /\bleft\b/.test(id) ? 'left' : /\bright\b/.test(id) ? 'right' : null;

/** The side of the car a spot belongs to; `null` on the centreline of a panel across it. */
export function spotSide({ id, patch }: Panel, u: number, v: number): Side | null {
  const named = panelSide(id);
  if (named) return named;
  const y = pointOnPatch(patch, u, v)[1];
  return y < -CENTRE ? 'left' : y > CENTRE ? 'right' : null;
}
