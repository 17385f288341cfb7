/** A speaker along the panels, from panel to panel, never off them. */
import {
  distance,
  type Mount,
  nearestOnPatch,
  type Panel,
  pointOnPatch,
  type Vec3,
} from '../../geometry';
import { mountSpeaker, placeSpeakerAt } from '../../plan/edits';
import { meetPlane, nearestOnRay, type Ray } from '../pick/ray';
import type { Drag } from './drag';

/**
 * Where a line of sight first meets a panel's cabin side, and where it first meets a panel's back:
 * the near shell a cutaway looks through. Mountable or not; either may be missing.
 */
export type CastPanels = (ray: Ray) => readonly { panel: Panel; point: Vec3 }[];

/** How much nearer another panel must be before a speaker off all panels changes over, mm. */
const HOLD = 25;

export interface SpeakerDragStart {
  optionId: string;
  speakerId: string;
  /** In words, for the undo list. */
  name: string;
  mount: Mount;
  panels: readonly Panel[];
  cast: CastPanels;
}

/** Drags a mounted speaker: it goes where the pointer points, or as near as panels allow. */
export function speakerAlongPanels(start: SpeakerDragStart): Drag {
  const mountable = start.panels.filter((panel) => panel.mountable);
  const home = start.panels.find((panel) => panel.id === start.mount.panel);
  let held = home ? pointOnPatch(home.patch, start.mount.u, start.mount.v) : null;
  let on = start.mount.panel;

  return {
    label: `move ${start.name}`,
    move({ ray }) {
      const from = held;
      let spot: PanelSpot | null = null;
      let least = Number.POSITIVE_INFINITY;
      for (const { panel, point } of start.cast(ray)) {
        const found = panel.mountable ? spotOn(panel, point) : nearestSpot(mountable, point, on);
        if (!found) continue;
        // A speaker on the near, see-through side stays there while the pointer passes over the
        // far side, and the other way round: it goes the way that is shortest for it.
        const leap = from ? distance(from, pointOnPatch(found.panel.patch, found.u, found.v)) : 0;
        if (leap + found.distance < least) {
          least = leap + found.distance;
          spot = found;
        }
      }
      if (!spot && from) spot = nearestSpot(mountable, nearestOnRay(ray, from), on);
      if (!spot) return null;
      held = pointOnPatch(spot.panel.patch, spot.u, spot.v);
      on = spot.panel.id;
      return mountSpeaker(start.optionId, start.speakerId, {
        ...start.mount,
        panel: spot.panel.id,
        u: spot.u,
        v: spot.v,
      });
    },
  };
}

interface PanelSpot {
  panel: Panel;
  u: number;
  v: number;
  distance: number;
}

const spotOn = (panel: Panel, point: Vec3): PanelSpot => ({
  panel,
  ...nearestOnPatch(panel.patch, point),
});

/** The spot nearest to a point over all panels, staying on `current` unless another is clearly nearer. */
export function nearestSpot(
  panels: readonly Panel[],
  point: Vec3,
  current: string,
): PanelSpot | null {
  let best: PanelSpot | null = null;
  let bestReach = Number.POSITIVE_INFINITY;
  for (const panel of panels) {
    const favour = panel.id === current ? HOLD : 0;
    if (best && boundsDistance(panel, point) - favour > bestReach) continue;
    const spot = spotOn(panel, point);
    if (spot.distance - favour < bestReach) {
      best = spot;
      bestReach = spot.distance - favour;
    }
  }
  return best;
}

/** A patch lies inside the box of its control points, so this is never too far. */
function boundsDistance(panel: Panel, point: Vec3): number {
  let sum = 0;
  for (const k of [0, 1, 2] as const) {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (const p of panel.patch.control) {
      low = Math.min(low, p[k]);
      high = Math.max(high, p[k]);
    }
    const off = Math.max(low - point[k], 0, point[k] - high);
    sum += off * off;
  }
  return Math.sqrt(sum);
}

/** A speaker at a free point moves in the plane that faces the eye. */
export function speakerInSpace(start: {
  optionId: string;
  speakerId: string;
  name: string;
  position: Vec3;
  facing: Vec3;
}): Drag {
  return {
    label: `move ${start.name}`,
    move({ ray }) {
      const point = meetPlane(ray, start.position, start.facing);
      if (!point || distance(point, start.position) > 20_000) return null;
      return placeSpeakerAt(start.optionId, start.speakerId, tidy(point));
    },
  };
}

/** A hand places to a tenth of a millimetre at best. */
const tidy = (p: Vec3): Vec3 => [
  Math.round(p[0] * 10) / 10,
  Math.round(p[1] * 10) / 10,
  Math.round(p[2] * 10) / 10,
];
