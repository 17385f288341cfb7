import type { Vec3 } from '../vector';
import { type TriangleTree, visitCrossed } from './triangle-tree';

export interface Crossed {
  /** The triangle's number as given. */
  triangle: number;
  /** Where along the segment, 0 to 1. */
  at: number;
}

/** Which faces count: those met from the side their corners run anticlockwise on, or their backs. */
export type Faces = 'front' | 'back' | 'both';

/** The triangle a segment meets first; `null`: none that counts. */
export function firstCrossed(
  tree: TriangleTree,
  from: Vec3,
  to: Vec3,
  faces: Faces = 'both',
): Crossed | null {
  let triangle = -1;
  let first = Infinity;
  visitCrossed(tree, from, to, 0, 1, (number, at, emerging) => {
    const counts = faces === 'both' || emerging === (faces === 'back');
    if (counts && at < first) {
      first = at;
      triangle = number;
    }
    return false;
  });
  return triangle < 0 ? null : { triangle, at: first };
}
