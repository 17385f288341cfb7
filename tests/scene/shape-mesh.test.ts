import { describe, expect, it } from 'vitest';
import { cross, dot, type MeshShape, type Shape, type Vec3 } from '../../src/geometry';
import { shapeMesh } from '../../src/scene/meshes/shape-mesh';
import { solidGeometry } from '../../src/scene/meshes/solid';
import { speakerParts } from '../../src/scene/meshes/speaker-mesh';

/** Volume inside a closed surface: positive only when its faces look outward (divergence theorem). */
function volume({ vertices, triangles }: MeshShape): number {
  let six = 0;
  for (const [a, b, c] of triangles) {
    const [p, q, r] = [vertices[a], vertices[b], vertices[c]] as [Vec3, Vec3, Vec3];
    six += dot(p, cross(q, r));
  }
  return six / 6;
}

const CASES: [string, Shape, number][] = [
  ['box', { shape: 'box', center: [10, 20, 30], size: [2, 3, 4], turnDeg: [20, 30, 40] }, 24],
  [
    'ring',
    { shape: 'ring', center: [0, 5, 0], axis: [1, 2, 3], diameter: 370, thickness: 32 },
    2 * Math.PI * 185 * Math.PI * 16 ** 2,
  ],
  [
    'capsule',
    { shape: 'capsule', from: [0, 0, 0], to: [0, 300, 400], radius: 60 },
    Math.PI * 60 ** 2 * 500 + (4 / 3) * Math.PI * 60 ** 3,
  ],
];

describe('shapes as triangles', () => {
  for (const [name, shape, expected] of CASES) {
    it(`closes the ${name}, faces outward, and holds its volume within the facets' loss`, () => {
      const got = volume(shapeMesh(shape));
      expect(got).toBeGreaterThan(expected * 0.93);
      expect(got).toBeLessThanOrEqual(expected * (1 + 1e-9));
    });
  }

  it('turns a box about X, then Y, then Z, right-handed', () => {
    const { vertices } = shapeMesh({
      shape: 'box',
      center: [0, 0, 0],
      size: [2, 4, 6],
      turnDeg: [90, 0, 90],
    });
    // About X: Y → Z, Z → −Y. Then about Z: X → Y, −Y → X. So lengths along X, Y, Z are 6, 2, 4.
    const span = (k: number) => Math.max(...vertices.map((v) => v[k] as number)) * 2;
    expect([0, 1, 2].map((k) => Math.round(span(k)))).toEqual([6, 2, 4]);
  });

  it('finds the twelve edges of a box and none on a round body', () => {
    const box = solidGeometry([{ tone: 'ink', mesh: shapeMesh(CASES[0]?.[1] as Shape) }]);
    expect(box.edges).toHaveLength(12);
    const capsule = solidGeometry([{ tone: 'ink', mesh: shapeMesh(CASES[2]?.[1] as Shape) }]);
    expect(capsule.edges).toHaveLength(0);
    box.geometry.dispose();
    capsule.geometry.dispose();
  });

  it('turns speakers whose parts together enclose a body', () => {
    for (const [body, diaphragm] of [
      [{ flange: 45, cutout: 40, depth: 18 }, 25],
      [{ flange: 165, cutout: 147, depth: 64 }, 130],
    ] as const) {
      const sum = speakerParts(body, diaphragm).reduce((s, part) => s + volume(part.mesh), 0);
      expect(sum).toBeGreaterThan(0);
      const cylinder = Math.PI * (body.flange / 2) ** 2 * (body.depth + 20);
      expect(sum).toBeLessThan(cylinder);
    }
  });
});
