/** Places where a speaker could stand: rings on the panels, over everything before them. */
import { Group } from 'three';
import { add, cross, direction, scale, type Vec3 } from '../../geometry';
import type { SpotMark } from '../../store';
import { polyline, type Stroke } from '../meshes/ink';
import { type Kit, LAYER } from './kit';
import { strokeSheet } from './stroke-sheet';

const AROUND = 28;
/** mm: about a small tweeter's flange, so that rings 80 mm apart stay apart. */
export const RING = 24;
/** The chosen one has a second ring, so that it is not told by its colour alone. */
const OUTER_RING = 34;
/** The stalk that says which way the panel looks. */
const STALK = 46;

export interface SpotMarksPart {
  group: Group;
  show(marks: readonly SpotMark[]): void;
  shown(): readonly SpotMark[];
  dispose(): void;
}

export function createSpotMarksPart(kit: Kit): SpotMarksPart {
  const group = new Group();
  const sheet = strokeSheet([[kit.marks, LAYER.marks]]);
  group.add(...sheet.meshes);
  let shown: readonly SpotMark[] = [];
  return {
    group,
    show(marks) {
      if (marks === shown) return;
      shown = marks;
      // The chosen one last, and so on top.
      sheet.draw([...marks].sort((a, b) => Number(a.chosen) - Number(b.chosen)).flatMap(markOf));
    },
    shown: () => shown,
    dispose: () => sheet.dispose(),
  };
}

/** The strokes of one mark. */
export function markOf({ position, normal, chosen }: SpotMark): Stroke[] {
  const pen = chosen
    ? ({ tone: 'accent', width: 2.4, strength: 1 } as const)
    : ({ tone: 'ink', width: 1.4, strength: 0.9 } as const);
  const [a, b] = acrossOf(normal);
  const ring = (radius: number): Stroke[] =>
    polyline(
      Array.from({ length: AROUND }, (_, i): Vec3 => {
        const t = (2 * Math.PI * i) / AROUND;
        const [x, y] = [radius * Math.cos(t), radius * Math.sin(t)];
        return add(position, add(scale(a, x), scale(b, y)));
      }),
      true,
      pen,
    );
  const stalk: Stroke = { start: position, end: add(position, scale(normal, STALK)), ...pen };
  return [...ring(RING), ...(chosen ? ring(OUTER_RING) : []), stalk];
}

/** Two directions in the panel, at right angles. */
function acrossOf(normal: Vec3): readonly [Vec3, Vec3] {
  const other: Vec3 = Math.abs(normal[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
  const a = direction(cross(normal, other)) ?? [1, 0, 0];
  return [a, cross(normal, a)];
}
