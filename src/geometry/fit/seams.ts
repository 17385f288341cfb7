/** Where one trim panel goes on in the next as one surface: there a flange may lie across. */
import type { Panel } from '../cabin/model';
import { patchNormal, pointOnPatch } from '../cabin/patch';
import { distance, dot, type Vec3 } from '../vector';
import { EDGE_ENDS, edgeOf, flatToLine, type Ground } from './panel-ground';

/** Edges no farther apart than this are one seam, mm. Choice of ours, no source. */
const SEAM_GAP = 0.5;

/**
 * Normals no farther apart than this along it: the surface goes on. As much as a flange may stand
 * off its panel's normal without a ring. Choice of ours, no source.
 */
const SMOOTH_DEG = 3;
const SMOOTH = Math.cos((SMOOTH_DEG * Math.PI) / 180);

/** Places along an edge that are compared. */
const COMPARED = [0, 0.25, 0.5, 0.75, 1] as const;

interface PanelEdges {
  /** Edges that end the surface, as points. */
  free: readonly (readonly Vec3[])[];
  /** Edges where it goes on, and in which panel. */
  seams: readonly { to: Panel; line: readonly Vec3[] }[];
}

/** The edges of a panel among those it stands with. */
export type EdgesOf = (panel: Panel) => PanelEdges;

/** One surface for a flange: the same material, something may be mounted on both, no gap, no bend. */
function goesOn(a: Panel, k: number, b: Panel, j: number): boolean {
  const from = EDGE_ENDS[k] as (typeof EDGE_ENDS)[number];
  const to = EDGE_ENDS[j] as (typeof EDGE_ENDS)[number];
  const at = (panel: Panel, [u0, v0, u1, v1]: readonly number[], t: number) => {
    const u = (u0 as number) + ((u1 as number) - (u0 as number)) * t;
    const v = (v0 as number) + ((v1 as number) - (v0 as number)) * t;
    return { u, v, point: pointOnPatch(panel.patch, u, v) };
  };
  const start = at(a, from, 0).point;
  const turned = distance(start, at(b, to, 0).point) > distance(start, at(b, to, 1).point);
  return COMPARED.every((t) => {
    const [here, there] = [at(a, from, t), at(b, to, turned ? 1 - t : t)];
    return (
      distance(here.point, there.point) <= SEAM_GAP &&
      dot(patchNormal(a.patch, here.u, here.v), patchNormal(b.patch, there.u, there.v)) >= SMOOTH
    );
  });
}

function edgesAmong(panel: Panel, panels: readonly Panel[]): PanelEdges {
  const free: Vec3[][] = [];
  const seams: { to: Panel; line: Vec3[] }[] = [];
  const others = panels.filter(
    (other) => other.id !== panel.id && other.mountable && other.material === panel.material,
  );
  for (let k = 0; k < 4; k++) {
    const to = others.find((other) => [0, 1, 2, 3].some((j) => goesOn(panel, k, other, j)));
    const line = edgeOf(panel.patch, k);
    if (to) seams.push({ to, line });
    else free.push(line);
  }
  return { free, seams };
}

const known = new WeakMap<readonly Panel[], EdgesOf>();

/** Looks each panel's seams up once, by its id, for a set of panels, when first asked for. */
export function edgesIn(panels: readonly Panel[]): EdgesOf {
  let edgesOf = known.get(panels);
  if (!edgesOf) {
    const made = new Map<string, PanelEdges>();
    edgesOf = (panel) => {
      let edges = made.get(panel.id);
      if (!edges) {
        edges = edgesAmong(panel, panels);
        made.set(panel.id, edges);
      }
      return edges;
    };
    known.set(panels, edgesOf);
  }
  return edgesOf;
}

export interface Reach {
  /** From the spot to where the surface ends, mm, seen along the normal; told up to the radius. */
  edge: number;
  /** Panels next door that a disc of this radius lies on as well. */
  onto: readonly Panel[];
}

/** How a disc about the spot lies on its panel and on those the panel goes on in. */
export function reachOver(panel: Panel, ground: Ground, radius: number, edgesOf: EdgesOf): Reach {
  const onto = new Set([panel]);
  let edge = Infinity;
  // A set grows while it is walked through: panels found on the way are looked at in their turn.
  for (const one of onto) {
    const { free, seams } = edgesOf(one);
    for (const line of free) edge = Math.min(edge, flatToLine(line, ground));
    for (const { to, line } of seams) if (flatToLine(line, ground) < radius) onto.add(to);
  }
  return { edge, onto: [...onto].slice(1) };
}
