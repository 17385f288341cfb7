/** Which panels are in the way, chosen, passed too near or throw sound back: for one option. */
import { Group, Mesh } from 'three';
import type { Panel } from '../../geometry';
import type { Stroke } from '../meshes/ink';
import { panelBorders, panelGeometry } from '../meshes/panel-mesh';
import { createBin } from './bin';
import { type Kit, LAYER } from './kit';
import { strokeSheet } from './stroke-sheet';

export interface PanelMarking {
  blocking: ReadonlySet<string>;
  selected: string | null;
  grazed: ReadonlySet<string>;
  reflecting: ReadonlySet<string>;
}

export interface PanelMarks {
  group: Group;
  /**
   * Hatches those in the way and the one selected; outlines those passed too near and those that
   * throw sound back. Looks no closer while `panels` is the same array.
   */
  mark(panels: readonly Panel[], how: PanelMarking): void;
  dispose(): void;
}

export function createPanelMarks(kit: Kit): PanelMarks {
  const group = new Group();
  const bin = createBin();
  const blocking = new Mesh(undefined, kit.blockedHatch);
  const chosen = new Mesh(undefined, kit.accentHatch);
  for (const mesh of [blocking, chosen]) {
    mesh.renderOrder = LAYER.zone;
    mesh.frustumCulled = false;
  }
  const outlines = strokeSheet([[kit.path, LAYER.path]]);
  group.add(blocking, chosen, ...outlines.meshes);
  let among: readonly Panel[] = [];
  let marked = '';

  function hatch(mesh: Mesh, ids: ReadonlySet<string>): void {
    const panels = among.filter((panel) => ids.has(panel.id));
    mesh.visible = panels.length > 0;
    if (mesh.visible) mesh.geometry = bin.keep(panelGeometry(panels).geometry);
  }

  function outline(ids: ReadonlySet<string>, pen: Pick<Stroke, 'tone' | 'width' | 'strength'>) {
    const panels = among.filter((panel) => ids.has(panel.id));
    return panelBorders(panels).map((stroke): Stroke => ({ ...stroke, ...pen }));
  }

  return {
    group,
    mark(panels, how) {
      const { selected } = how;
      const sets = [how.blocking, how.grazed, how.reflecting].map((ids) => [...ids].join());
      const key = `${sets.join('|')}|${selected ?? ''}`;
      if (key === marked && panels === among) return;
      marked = key;
      among = panels;
      bin.empty();
      hatch(blocking, how.blocking);
      hatch(chosen, new Set(selected ? [selected] : []));
      outlines.draw([
        ...outline(how.reflecting, { tone: 'quiet-ink', width: 1.7, strength: 0.85 }),
        ...outline(how.grazed, { tone: 'blocked', width: 1.8, strength: 0.7 }),
      ]);
    },
    dispose() {
      bin.empty();
      outlines.dispose();
    },
  };
}
