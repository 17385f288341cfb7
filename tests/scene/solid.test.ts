import { describe, expect, it } from 'vitest';
import type { MeshShape, Vec3 } from '../../src/geometry';
import { shapeMesh } from '../../src/scene/meshes/shape-mesh';
import { slideBetween } from '../../src/scene/meshes/slide-between';
import { type Part, solidGeometry } from '../../src/scene/meshes/solid';

const limb = (knee: Vec3): Part => ({
  tone: 'cloth',
  mesh: shapeMesh({ shape: 'capsule', from: [0, 0, 0], to: knee, radius: 60 }),
});
const moved = ({ tone, mesh }: Part, [x, y, z]: Vec3): Part => ({
  tone,
  mesh: { ...mesh, vertices: mesh.vertices.map((p): Vec3 => [p[0] + x, p[1] + y, p[2] + z]) },
});

describe('a body that only slid', () => {
  const parts = [limb([300, 0, 100]), limb([0, 200, 0])];

  it('is known by how far', () => {
    const by = slideBetween(
      parts,
      parts.map((part) => moved(part, [-20, 3, 0.5])),
    );
    by?.forEach((x, k) => {
      expect(Math.abs(x - ([-20, 3, 0.5][k] as number))).toBeLessThan(1e-9);
    });
    expect(slideBetween(parts, parts)).toEqual([0, 0, 0]);
  });

  it('is not taken for one that turned, was bent, painted or taken apart', () => {
    expect(slideBetween(parts, [limb([300, 0, 101]), limb([0, 200, 0])])).toBeNull();
    const one = parts.map((part, i) => moved(part, [i, 0, 0]));
    expect(slideBetween(parts, one)).toBeNull();
    expect(slideBetween(parts, parts.slice(1))).toBeNull();
    expect(
      slideBetween(
        parts,
        parts.map((part): Part => ({ ...part, tone: 'skin' })),
      ),
    ).toBeNull();
    const turned = parts.map(({ tone, mesh }): Part => {
      const triangles = mesh.triangles.map(([a, b, c]) => [a, c, b] as const);
      return { tone, mesh: { ...mesh, triangles } };
    });
    expect(slideBetween(parts, turned)).toBeNull();
  });
});

describe('a limb bent in place', () => {
  it('is the same picture as one made anew', () => {
    const solid = solidGeometry([limb([300, 0, 100])], false);
    const { geometry } = solid;
    const next = [limb([260, 40, 150])];
    expect(solid.reshape(next)).toBe(true);
    const fresh = solidGeometry(next, false).geometry;
    for (const name of ['position', 'normal', 'smoothNormal', 'tone']) {
      const [a, b] = [geometry.getAttribute(name).array, fresh.getAttribute(name).array];
      expect(a.length).toBe(b.length);
      for (let i = 0; i < a.length; i++)
        expect(Math.abs((a[i] as number) - (b[i] as number))).toBe(0);
    }
    expect(solid.geometry).toBe(geometry);
  });

  it('is refused where it has other triangles, and nothing is touched', () => {
    const solid = solidGeometry([limb([300, 0, 100])], false);
    const before = [...solid.geometry.getAttribute('position').array];
    const box: MeshShape = shapeMesh({ shape: 'box', center: [0, 0, 0], size: [1, 1, 1] });
    expect(solid.reshape([{ tone: 'cloth', mesh: box }])).toBe(false);
    expect([...solid.geometry.getAttribute('position').array]).toEqual(before);
  });
});
