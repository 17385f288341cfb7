/** The cabin's panels: surfaces, glass and the ink along their borders. */
import { type BufferGeometry, Group, Mesh } from 'three';
import type { Panel } from '../../geometry';
import { inkGeometry } from '../meshes/ink';
import { panelBorders, panelGeometry } from '../meshes/panel-mesh';
import type { Ray } from '../pick/ray';
import { type SurfaceCaster, type SurfaceHit, surfaceCaster } from '../pick/surface-caster';
import { createBin } from './bin';
import { type Kit, LAYER } from './kit';

export interface PanelsPart {
  group: Group;
  /** Redraws where the panels changed; true when it did. */
  show(panels: readonly Panel[]): boolean;
  /** Hatches panels: those in the way, and the one selected. */
  mark(blocking: ReadonlySet<string>, selected: string | null): void;
  /** Where a line first meets one panel, from either side. */
  meet(id: string, ray: Ray, far: number): SurfaceHit | null;
  /** The panel under a line of sight, on the side that faces the cabin. */
  under: SurfaceCaster;
  ownerOf(triangle: number): Panel | null;
  /** Geometry of all opaque panels: what is shaded and what takes light away. */
  solid(): BufferGeometry;
  dispose(): void;
}

export function createPanelsPart(kit: Kit): PanelsPart {
  const bin = createBin();
  const marks = createBin();
  const group = new Group();
  const surface = new Mesh(undefined, kit.surface);
  const glass = new Mesh(undefined, kit.glass);
  const ink = new Mesh(undefined, kit.ink);
  const blocking = new Mesh(undefined, kit.blockedHatch);
  const chosen = new Mesh(undefined, kit.accentHatch);
  glass.renderOrder = LAYER.glass;
  ink.renderOrder = LAYER.ink;
  blocking.renderOrder = chosen.renderOrder = LAYER.zone;
  for (const mesh of [surface, glass, ink, blocking, chosen]) mesh.frustumCulled = false;
  group.add(surface, glass, ink, blocking, chosen);

  let shown: readonly Panel[] = [];
  let all: ReturnType<typeof panelGeometry> | null = null;
  let caster: SurfaceCaster | null = null;
  let marked = '';
  const single = new Map<string, SurfaceCaster>();

  function hatch(mesh: Mesh, ids: ReadonlySet<string>): void {
    const panels = shown.filter((panel) => ids.has(panel.id));
    mesh.visible = panels.length > 0;
    if (mesh.visible) mesh.geometry = marks.keep(panelGeometry(panels).geometry);
  }

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
      shown = panels;
      bin.empty();
      marked = '';
      all = null;
      caster = null;
      single.clear();
      const isGlass = (panel: Panel) => panel.material === 'glass';
      surface.geometry = bin.keep(panelGeometry(panels.filter((p) => !isGlass(p))).geometry);
      glass.geometry = bin.keep(panelGeometry(panels.filter(isGlass)).geometry);
      ink.geometry = bin.keep(inkGeometry(panelBorders(panels)));
      return true;
    },
    mark(inTheWay, selected) {
      const key = `${[...inTheWay].join()}|${selected ?? ''}`;
      if (key === marked) return;
      marked = key;
      marks.empty();
      hatch(blocking, inTheWay);
      hatch(chosen, new Set(selected ? [selected] : []));
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
    solid: () => surface.geometry,
    dispose() {
      bin.empty();
      marks.empty();
    },
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
