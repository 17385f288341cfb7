/** What the front pillars hide from the eyes at the wheel, over everything. */
import { Group } from 'three';
import type { PillarView, Vec3 } from '../../geometry';
import { pillarStrokes } from '../pillar/pillar-strokes';
import { type Kit, LAYER } from './kit';
import { strokeSheet } from './stroke-sheet';

export interface ShownPillar {
  view: PillarView;
  at: Vec3;
}

export interface PillarPart {
  group: Group;
  /** `null`: nothing is shown. `ownEyes`: the car is seen from the seat. */
  show(views: readonly PillarView[] | null, ownEyes: boolean): void;
  shown(): readonly ShownPillar[];
  dispose(): void;
}

export function createPillarPart(kit: Kit): PillarPart {
  const group = new Group();
  const sheet = strokeSheet([[kit.marks, LAYER.marks]]);
  group.add(...sheet.meshes);
  let shown: ShownPillar[] = [];
  let drawn: { views: readonly PillarView[] | null; ownEyes: boolean } | null = null;
  return {
    group,
    show(views, ownEyes) {
      if (drawn?.views === views && drawn.ownEyes === ownEyes) return;
      drawn = { views, ownEyes };
      const each = (views ?? []).flatMap((view) => {
        const made = pillarStrokes(view, ownEyes);
        return made ? [{ view, ...made }] : [];
      });
      shown = each.map(({ view, at }) => ({ view, at }));
      group.visible = each.length > 0;
      sheet.draw(each.flatMap(({ strokes }) => strokes));
    },
    shown: () => shown,
    dispose: () => sheet.dispose(),
  };
}
