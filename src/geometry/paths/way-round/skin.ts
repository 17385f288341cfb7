/** Whether the cabin's closed skin stands between a speaker and a listener: then no way leads there. */
import type { Panel } from '../../cabin/model';
import { END_CLEARANCE, OWN_PANEL_CLEARANCE, SAME_POINT } from '../../tolerance';
import { distance, dot, sub, type Vec3 } from '../../vector';
import { panelTree, type SpotStart } from '../cast';
import { visitCrossed } from '../triangle-tree';
import { windingRound } from './winding';

export interface Skin {
  /**
   * The panel beyond which a speaker stands outside the cabin its listener sits in, the one nearest
   * the speaker; `null` where both are inside, where the listener is not, and where there is no skin
   * or the plan gave panels of its own in its place, which need not meet.
   */
  between(from: Vec3, to: Vec3, spot: SpotStart | null): Panel | null;
}

/** Listeners' points remembered: the heads and ears of five seats are 15. */
const KEPT = 32;

interface Crossing {
  at: number;
  panel: Panel;
  /** +1 out of a panel's back, so into the cabin; −1 out of the cabin. */
  turn: 1 | -1;
}

export function buildSkin(panels: readonly Panel[]): Skin {
  const isClosed = panels.every(({ ofSkin, given }) => !(ofSkin && given));
  const known = isClosed && panels.some(({ ofSkin }) => ofSkin) ? panelTree(panels) : null;
  if (!known) return { between: () => null };
  const { tree, ownerOf } = known;
  let inside: { point: Vec3; is: boolean }[] = [];

  /** Only asked where a line crosses the skin an odd way, which is seldom: it takes every triangle. */
  function isInside(point: Vec3): boolean {
    const found = inside.find((one) => distance(one.point, point) === 0);
    if (found) return found.is;
    const turns = windingRound(tree, point, (k) => panels[ownerOf[k] as number]?.ofSkin ?? false);
    // Once or not at all, but for the hair's breadth that triangles of neighbours may part.
    const is = Math.abs(turns) > 0.5;
    inside = [{ point, is }, ...inside.slice(0, KEPT - 1)];
    return is;
  }

  return {
    between(from, to, spot) {
      const reach = distance(from, to);
      if (reach <= 2 * END_CLEARANCE) return null;
      // Flush with its panel and heard from behind it: which side it stands on, rounding decides.
      const isFlush = spot !== null && spot.standoff < OWN_PANEL_CLEARANCE;
      if (isFlush && dot(sub(to, from), spot.normal) < 0) return null;
      const crossings: Crossing[] = [];
      const end = END_CLEARANCE / reach;
      visitCrossed(tree, from, to, end, 1 - end, (triangle, part, emerging) => {
        const panel = panels[ownerOf[triangle] as number];
        const at = part * reach;
        if (!panel?.ofSkin || (spot && emerging && at < OWN_PANEL_CLEARANCE)) return false;
        const turn = emerging ? 1 : -1;
        // Through the edge of two triangles a line crosses the skin once.
        const isOneMore = (one: Crossing) =>
          one.turn !== turn || Math.abs(one.at - at) >= SAME_POINT;
        if (crossings.every(isOneMore)) crossings.push({ at, panel, turn });
        return false;
      });
      const turns = crossings.reduce((sum, { turn }) => sum + turn, 0);
      // Below 0 where its own panel's way back in lay too near to count: it stands inside all the same.
      if (turns <= 0 || !isInside(to)) return null;
      const into = crossings.filter(({ turn }) => turn > 0);
      into.sort((one, other) => one.at - other.at);
      return into[0]?.panel ?? null;
    },
  };
}
