/** The car round the cabin: its silhouette in fine ink, and the shade it casts on the sheet. */
import { Group, Mesh, PlaneGeometry } from 'three';
import type { BodyLine, Vec3 } from '../../geometry';
import { inkGeometry, polyline } from '../meshes/ink';
import { createBin } from './bin';
import { type Kit, LAYER } from './kit';

/** A line whose points all lie farther out than this belongs to that side of the car, mm. */
const SIDE = 250;

export function createBodyPart(kit: Kit) {
  const group = new Group();
  const bin = createBin();
  const own = createBin();
  const ink = new Mesh(undefined, kit.bodyInk);
  ink.renderOrder = LAYER.ink;
  ink.frustumCulled = false;
  const ground = new Mesh(own.keep(new PlaneGeometry(1, 1)), kit.ground);
  ground.renderOrder = LAYER.ground;
  group.add(ground, ink);
  let shown: readonly BodyLine[] | null = null;
  return {
    group,
    show(lines: readonly BodyLine[]) {
      if (lines === shown) return;
      shown = lines;
      bin.empty();
      const strokes = lines.flatMap((line) => {
        const faces = sideOf(line);
        const pen = { tone: 'ink', width: 1.15, strength: faces ? 0.8 : 0.55, faces } as const;
        return polyline(line.points, line.closed, pen);
      });
      ink.geometry = bin.keep(inkGeometry(strokes));
      const points = lines.flatMap((line) => [...line.points]);
      ground.visible = points.length > 0;
      if (!ground.visible) return;
      const [low, high] = [0, 1, 2].reduce<[number[], number[]]>(
        ([lo, hi], k) => {
          const values = points.map((p) => p[k] as number);
          return [
            [...lo, Math.min(...values)],
            [...hi, Math.max(...values)],
          ];
        },
        [[], []],
      ) as [[number, number, number], [number, number, number]];
      ground.position.set((low[0] + high[0]) / 2, (low[1] + high[1]) / 2, low[2]);
      ground.scale.set((high[0] - low[0]) * 1.12, (high[1] - low[1]) * 1.35, 1);
    },
    dispose() {
      bin.empty();
      own.empty();
    },
  };
}

/** Outward, for lines of one side: those of the far side turn faint. */
function sideOf(line: BodyLine): Vec3[] | undefined {
  if (line.points.every((p) => p[1] > SIDE)) return [[0, 1, 0]];
  if (line.points.every((p) => p[1] < -SIDE)) return [[0, -1, 0]];
  return undefined;
}
