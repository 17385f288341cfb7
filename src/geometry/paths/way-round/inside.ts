/** Whether a point lies within a solid: nothing gets out of there. */
import type { Shape } from '../../input';
import { add, direction, dot, sub, type Vec3 } from '../../vector';
import { shapeBounds } from '../cast';
import { boxAxes } from '../segment-hits';
import { visitCrossed } from '../triangle-tree';
import type { Body } from './body';

/** A point this deep in a solid's skin still counts as outside, mm. */
const SKIN = 1e-3;

/** @param bodies the shape's bodies, of which each closed one is asked */
export function isInside(shape: Shape, bodies: readonly Body[], p: Vec3): boolean {
  const [low, high] = shapeBounds(shape);
  if (p[0] < low[0] || p[1] < low[1] || p[2] < low[2]) return false;
  if (p[0] > high[0] || p[1] > high[1] || p[2] > high[2]) return false;
  switch (shape.shape) {
    case 'box': {
      const d = sub(p, shape.center);
      return boxAxes(shape).every(
        (axis, k) => Math.abs(dot(d, axis)) < (shape.size[k] as number) / 2 - SKIN,
      );
    }
    case 'capsule': {
      const core = sub(shape.to, shape.from);
      const d = sub(p, shape.from);
      const l2 = dot(core, core);
      const t = l2 > 0 ? Math.min(1, Math.max(0, dot(d, core) / l2)) : 0;
      const off = sub(d, [core[0] * t, core[1] * t, core[2] * t]);
      return dot(off, off) < Math.max(0, shape.radius - SKIN) ** 2;
    }
    case 'ring': {
      const axis = direction(shape.axis);
      if (!axis) return false;
      const d = sub(p, shape.center);
      const up = dot(d, axis);
      const out = Math.sqrt(Math.max(0, dot(d, d) - up * up)) - shape.diameter / 2;
      return up * up + out * out < Math.max(0, shape.thickness / 2 - SKIN) ** 2;
    }
    case 'mesh':
      return bodies.some((body) => isInsideMesh(body, p));
  }
}

/** Any direction will do; this one lies along no usual edge. */
const ODD: Vec3 = [0.5377, 0.6313, 0.5589];

/** Counts faces on a ray: more leaving than entering means it began within. */
function isInsideMesh(body: Body, p: Vec3): boolean {
  const { bounds } = body;
  if (!body.closed) return false;
  for (let k = 0; k < 3; k++)
    if ((p[k] as number) < (bounds[k] as number) || (p[k] as number) > (bounds[k + 3] as number))
      return false;
  const tree = body.tree();
  if (!tree) return false;
  const reach = 2 * (bounds[6] as number);
  const end = add(p, [ODD[0] * reach, ODD[1] * reach, ODD[2] * reach]);
  let leaving = 0;
  visitCrossed(tree, p, end, SKIN / reach, 1, (_, __, emerging) => {
    leaving += emerging ? 1 : -1;
    return false;
  });
  return leaving > 0;
}
