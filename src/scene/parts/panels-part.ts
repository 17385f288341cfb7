/** The cabin's panels: surfaces, glass and the ink along their borders. */
import { Group, Mesh } from 'three';
import type { Panel, Vec3 } from '../../geometry';
import { inkGeometry } from '../meshes/ink';
import { panelBorders, panelGeometry } from '../meshes/panel-mesh';
import { nearestPass, type Pass } from '../pick/nearest-pass';
import type { Ray } from '../pick/ray';
import { type SurfaceCaster, type SurfaceHit, surfaceCaster } from '../pick/surface-caster';
import type { Shaded } from '../shading/openness';
import { createBin } from './bin';
import { type Kit, LAYER } from './kit';

export interface PanelsPart {
  group: Group;
  /** Redraws where the panels changed; true when it did. */
  show(panels: readonly Panel[]): boolean;
  /** The panels as drawn: the same array until they are drawn anew. */
  drawn(): readonly Panel[];
  /** Where a line first meets one panel, from either side. */
  meet(id: string, ray: Ray, far: number): SurfaceHit | null;
  /** Where a line passes one panel most narrowly. */
  pass(id: string, from: Vec3, to: Vec3): Pass | null;
  /** The panel under a line of sight, on the side that faces the cabin. */
  under: SurfaceCaster;
  ownerOf(triangle: number): Panel | null;
  /** Geometry of all opaque panels: what is shaded and what takes light away. */
  solid(): Shaded;
  dispose(): void;
}

export function createPanelsPart(kit: Kit): PanelsPart {
  const bin = createBin();
  const group = new Group();
  const surface = new Mesh(undefined, kit.surface);
  const glass = new Mesh(undefined, kit.glass);
  const ink = new Mesh(undefined, kit.ink);
  glass.renderOrder = LAYER.glass;
  ink.renderOrder = LAYER.ink;
  for (const mesh of [surface, glass, ink]) mesh.frustumCulled = false;
  group.add(surface, glass, ink);

  let shown: readonly Panel[] = [];
  let drawn: readonly Panel[] = [];
  let all: ReturnType<typeof panelGeometry> | null = null;
  let caster: SurfaceCaster | null = null;
  const single = new Map<string, SurfaceCaster>();

  function whole(): SurfaceCaster {
    if (!all || !caster) {
      all = panelGeometry(shown);
      caster = surfaceCaster(bin.keep(all.geometry), true);
    }
    return caster;
  }

  return {
    group,
    show(panels) {
      if (samePanels(panels, shown)) {
        shown = panels;
        return false;
      }
      shown = drawn = panels;
      bin.empty();
      all = null;
      caster = null;
      single.clear();
      const isGlass = (panel: Panel) => panel.material === 'glass';
      surface.geometry = bin.keep(panelGeometry(panels.filter((p) => !isGlass(p))).geometry);
      glass.geometry = bin.keep(panelGeometry(panels.filter(isGlass)).geometry);
      ink.geometry = bin.keep(inkGeometry(panelBorders(panels)));
      return true;
    },
    drawn: () => drawn,
    pass(id, from, to) {
      const panel = shown.find((candidate) => candidate.id === id);
      return panel ? nearestPass(from, to, panel) : null;
    },
    under: {
      first: (ray, far) => whole().first(ray, far),
      firstBack: (ray) => whole().firstBack(ray),
    },
    meet(id, ray, far) {
      let one = single.get(id);
      const panel = shown.find((candidate) => candidate.id === id);
      if (!one && panel) {
        one = surfaceCaster(bin.keep(panelGeometry([panel]).geometry), false);
        single.set(id, one);
      }
      return one?.first(ray, far) ?? null;
    },
    ownerOf: (triangle) => shown[all?.owner[triangle] ?? -1] ?? null,
    solid: () => ({ geometry: surface.geometry, at: [0, 0, 0] }),
    dispose: () => bin.empty(),
  };
}

/** Equal by value: the engine answers with new objects for an unchanged cabin as well. */
function samePanels(a: readonly Panel[], b: readonly Panel[]): boolean {
  if (a === b) return true;
  if (a.length !== b.length) return false;
  return a.every((panel, i) => {
    const other = b[i] as Panel;
    return (
      panel === other ||
      (panel.id === other.id &&
        panel.material === other.material &&
        panel.patch.facing === other.patch.facing &&
        panel.patch.control.every((p, k) => {
          const q = other.patch.control[k];
          return q && p[0] === q[0] && p[1] === q[1] && p[2] === q[2];
        }))
    );
  });
}
