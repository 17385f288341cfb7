/**
 * The panels of a cabin made ready for reflections. What a place sees of each panel is worked out
 * once and kept, since every speaker meets every seat.
 */
import type { Panel } from '../../cabin/model';
import type { Vec3 } from '../../vector';
import { buildHull, lookInPlace, mayReflect, VIEW } from './bounds';
import { prepareSurface, type Surface } from './surface';

/** A place, and what it sees of every curved panel that was asked about. */
export interface View {
  place: Vec3;
  seen: Float64Array;
  /** 1 for each panel that has been looked at. */
  looked: Uint8Array;
}

export interface Reflector {
  surfaces: readonly Surface[];
  /** Six numbers a panel: low x, y, z, high x, y, z of its control points, which hold all of it. */
  bounds: Float64Array;
  view(place: Vec3): View;
  /** Whether a reflection on curved panel number `panel` between the two places can be. */
  mayReflect(panel: number, a: View, b: View): boolean;
  /** Whether the panel, hollow as it is, could mirror one place to the other at several points. */
  mayFocus(panel: number, a: View, b: View): boolean;
}

const made = new WeakMap<readonly Panel[], Reflector>();

/** Kept by the identity of `panels`, which the cabin keeps while a seat or a speaker moves. */
export function reflectorOf(panels: readonly Panel[]): Reflector {
  let reflector = made.get(panels);
  if (!reflector) {
    reflector = buildReflector(panels);
    made.set(panels, reflector);
  }
  return reflector;
}

function buildReflector(panels: readonly Panel[]): Reflector {
  const surfaces = panels.map(prepareSurface);
  const hulls = surfaces.map(({ panel, plane }) => (plane ? null : buildHull(panel.patch)));
  const views = new WeakMap<Vec3, View>();
  const bounds = new Float64Array(6 * panels.length);
  panels.forEach(({ patch }, i) => {
    for (let k = 0; k < 3; k++) {
      const along = patch.control.map((point) => point[k] as number);
      bounds[6 * i + k] = Math.min(...along);
      bounds[6 * i + 3 + k] = Math.max(...along);
    }
  });
  const look = (panel: number, { place, seen, looked }: View): void => {
    const hull = hulls[panel];
    if (!hull || looked[panel] === 1) return;
    lookInPlace(hull, place, seen, VIEW * panel);
    looked[panel] = 1;
  };
  return {
    surfaces,
    bounds,
    view(place) {
      const known = views.get(place);
      if (known) return known;
      const view: View = {
        place,
        seen: new Float64Array(VIEW * panels.length),
        looked: new Uint8Array(panels.length),
      };
      views.set(place, view);
      return view;
    },
    mayReflect(panel, a, b) {
      look(panel, a);
      look(panel, b);
      return mayReflect(a.seen, b.seen, VIEW * panel);
    },
    mayFocus(panel, a, b) {
      const far = VIEW * panel + 5;
      look(panel, a);
      look(panel, b);
      const spread = 1 / (a.seen[far] as number) + 1 / (b.seen[far] as number);
      // A mirror of radius ρ gathers sound to a point where 1/a + 1/b = 2 / (ρ cos θ) (Coddington's
      // equation, e.g. Born & Wolf, Principles of Optics). Nearer than that a reflection is the
      // shortest way by the panel and there is no other. Here the farthest corners stand for a and
      // b and cos θ is left out: a rule of thumb, not a proof.
      return spread < 2 * (surfaces[panel] as Surface).hollowness;
    },
  };
}
