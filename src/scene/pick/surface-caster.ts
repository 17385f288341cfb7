/** Which panel or body a line of sight meets first; a tree per set of triangles, built when asked. */
import {
  BackSide,
  type BufferGeometry,
  DoubleSide,
  FrontSide,
  type Side,
  Ray as ThreeRay,
} from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import type { Vec3 } from '../../geometry';
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

const threeRay = new ThreeRay();

/**
 * @param facing true: only triangles wound towards the eye (what the cutaway shows)
 */
export function surfaceCaster(geometry: BufferGeometry, facing: boolean): SurfaceCaster {
  let tree: MeshBVH | null | undefined;
  const cast = (ray: Ray, side: Side, far: number): SurfaceHit | null => {
    if (tree === undefined) {
      const count = geometry.index?.count ?? geometry.getAttribute('position').count;
      // `indirect` leaves the geometry's own order alone: it is drawn as well.
      tree = count === 0 ? null : new MeshBVH(geometry, { indirect: true });
    }
    if (!tree) return null;
    threeRay.origin.set(...ray.origin);
    threeRay.direction.set(...ray.direction);
    const hit = tree.raycastFirst(threeRay, side, 0, far);
    if (!hit || hit.faceIndex === undefined || hit.faceIndex === null) return null;
    return {
      point: [hit.point.x, hit.point.y, hit.point.z],
      distance: hit.distance,
      triangle: hit.faceIndex,
    };
  };
  return {
    first: (ray, far = Number.POSITIVE_INFINITY) => cast(ray, facing ? FrontSide : DoubleSide, far),
    firstBack: (ray) => cast(ray, BackSide, Number.POSITIVE_INFINITY),
  };
}
