/** Which panel or body a line of sight meets first; a tree per set of triangles, built when asked. */
import { type BufferGeometry, DoubleSide, FrontSide, Ray as ThreeRay } from 'three';
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
  /** First hit within `far`; panels only on the side that faces the cabin. */
  first(ray: Ray, far?: number): SurfaceHit | null;
}

const threeRay = new ThreeRay();

/**
 * @param facing true: only triangles wound towards the eye (what the cutaway shows)
 */
export function surfaceCaster(geometry: BufferGeometry, facing: boolean): SurfaceCaster {
  let tree: MeshBVH | null | undefined;
  return {
    first(ray, far = Number.POSITIVE_INFINITY) {
      if (tree === undefined) {
        const count = geometry.index?.count ?? geometry.getAttribute('position').count;
        // `indirect` leaves the geometry's own order alone: it is drawn as well.
        tree = count === 0 ? null : new MeshBVH(geometry, { indirect: true });
      }
      if (!tree) return null;
      threeRay.origin.set(...ray.origin);
      threeRay.direction.set(...ray.direction);
      const hit = tree.raycastFirst(threeRay, facing ? FrontSide : DoubleSide, 0, far);
      if (!hit || hit.faceIndex === undefined || hit.faceIndex === null) return null;
      return {
        point: [hit.point.x, hit.point.y, hit.point.z],
        distance: hit.distance,
        triangle: hit.faceIndex,
      };
    },
  };
}
