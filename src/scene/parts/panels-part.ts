/** The cabin's panels: surfaces, glass and the ink along their borders. */
import { Group, Mesh } from 'three';
import type { Panel, Vec3 } from '../../geometry';
import { inkGeometry, type Stroke } from '../meshes/ink';
import { panelBorders, panelGeometry } from '../meshes/panel-mesh';
import { nearestPass, type Pass } from '../pick/nearest-pass';
import type { Ray } from '../pick/ray';
import { type SurfaceCaster, type SurfaceHit, surfaceCaster } from '../pick/surface-caster';
import type { Shaded } from '../shading/openness';
import { createBin } from './bin';
import { type Kit, LAYER } from './kit';
import { strokeSheet } from './stroke-sheet';

export interface PanelsPart {
  group: Group;
  /** Redraws where the panels changed; true when it did. */
  show(panels: readonly Panel[]): boolean;
  /**
   * Hatches those in the way and the one selected; outlines those passed too near and those that
   * throw sound back.
   */
  mark(how: {
    blocking: ReadonlySet<string>;
    selected: string | null;
    grazed: ReadonlySet<string>;
    reflecting: ReadonlySet<string>;
  }): void;
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
  const outlines = strokeSheet([[kit.path, LAYER.path]]);
  group.add(...outlines.meshes);

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

  function outline(ids: ReadonlySet<string>, pen: Pick<Stroke, 'tone' | 'width' | 'strength'>) {
    const panels = shown.filter((panel) => ids.has(panel.id));
    return panelBorders(panels).map((stroke): Stroke => ({ ...stroke, ...pen }));
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
    mark(how) {
      const { selected } = how;
      const sets = [how.blocking, how.grazed, how.reflecting].map((ids) => [...ids].join());
      const key = `${sets.join('|')}|${selected ?? ''}`;
      if (key === marked) return;
      marked = key;
      marks.empty();
      hatch(blocking, how.blocking);
      hatch(chosen, new Set(selected ? [selected] : []));
      outlines.draw([
        ...outline(how.reflecting, { tone: 'quiet-ink', width: 1.7, strength: 0.85 }),
        ...outline(how.grazed, { tone: 'blocked', width: 1.8, strength: 0.7 }),
      ]);
    },
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
    dispose() {
      bin.empty();
      marks.empty();
      outlines.dispose();
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
