/** The car round the cabin: its silhouette in fine ink. */
import { Group, Mesh } from 'three';
import type { BodyLine } from '../../geometry';
import { inkGeometry, polyline } from '../meshes/ink';
import { createBin } from './bin';
import { type Kit, LAYER } from './kit';

export function createBodyPart(kit: Kit) {
  const group = new Group();
  const bin = createBin();
  const ink = new Mesh(undefined, kit.bodyInk);
  ink.renderOrder = LAYER.ink;
  ink.frustumCulled = false;
  group.add(ink);
  let shown: readonly BodyLine[] | null = null;
  return {
    group,
    show(lines: readonly BodyLine[]) {
      if (lines === shown) return;
      shown = lines;
      bin.empty();
      const pen = { tone: 'ink', width: 1.1, strength: 0.75 } as const;
      ink.geometry = bin.keep(
        inkGeometry(lines.flatMap((line) => polyline(line.points, line.closed, pen))),
      );
    },
    dispose: () => bin.empty(),
  };
}
