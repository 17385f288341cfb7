/** Which panel or body a line of sight meets first; a tree per set of triangles, built when asked. */
import type { BufferGeometry } from 'three';
import { along, type Faces, firstCrossed, type TriangleTree, type Vec3 } from '../../geometry';
import { geometryTree } from '../meshes/geometry-tree';
import type { Ray } from './ray';

export interface SurfaceHit {
  point: Vec3;
  distance: number;
  /** Number of the triangle in the geometry. */
  triangle: number;
}

export interface SurfaceCaster {
  /** First hit within `far`, on the side asked for when the caster was made. */
  first(ray: Ray, far?: number): SurfaceHit | null;
  /** First hit on the back of a triangle: the near shell of a cutaway. */
  firstBack(ray: Ray): SurfaceHit | null;
}

/** Farther than this nothing of a car is seen, mm. */
const FAR = 1e5;

/**
 * @param facing true: only triangles wound towards the eye (what the cutaway shows)
 */
export function surfaceCaster(geometry: BufferGeometry, facing: boolean): SurfaceCaster {
  let tree: TriangleTree | null | undefined;
  const cast = ({ origin, direction }: Ray, faces: Faces, far: number): SurfaceHit | null => {
    if (tree === undefined) tree = geometryTree(geometry);
    if (!tree) return null;
    const hit = firstCrossed(tree, origin, along(origin, direction, far), faces);
    if (!hit) return null;
    const distance = hit.at * far;
    return { point: along(origin, direction, distance), distance, triangle: hit.triangle };
  };
  return {
    first: (ray, far = FAR) => cast(ray, facing ? 'front' : 'both', far),
    firstBack: (ray) => cast(ray, 'back', FAR),
  };
}
