import { BufferAttribute, BufferGeometry, DoubleSide, Ray } from 'three';
import { MeshBVH, SAH } from 'three-mesh-bvh';
import { type CabinModel, distance, tessellatePanel, type Vec3 } from '../../src/geometry';

/**
 * The bare work under an evaluation: one `raycastFirst` of the library for each segment, against
 * one tree over all the triangles of the cabin. Nothing else.
 */
export function bareCasts(cabin: CabinModel, segments: readonly (readonly [Vec3, Vec3])[]) {
  const vertices: number[] = [];
  const index: number[] = [];
  const meshes = [
    ...cabin.panels.map(tessellatePanel),
    ...cabin.obstacles.flatMap(({ shape }) => (shape.shape === 'mesh' ? [shape] : [])),
  ];
  for (const mesh of meshes) {
    const base = vertices.length / 3;
    for (const v of mesh.vertices) vertices.push(...v);
    for (const [a, b, c] of mesh.triangles) index.push(base + a, base + b, base + c);
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(new Float64Array(vertices), 3));
  geometry.setIndex(index);
  const bvh = new MeshBVH(geometry, { strategy: SAH });
  const rays = segments.map(([a, b]) => {
    const ray = new Ray();
    ray.origin.set(...a);
    ray.direction.set(b[0] - a[0], b[1] - a[1], b[2] - a[2]).normalize();
    return { ray, reach: distance(a, b) };
  });
  return {
    triangles: index.length / 3,
    run(): number {
      let hits = 0;
      for (const { ray, reach } of rays) if (bvh.raycastFirst(ray, DoubleSide, 0, reach)) hits++;
      return hits;
    },
  };
}
