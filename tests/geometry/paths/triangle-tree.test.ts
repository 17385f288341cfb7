/** The tree of triangles against every triangle in turn, and against a library's tree. */
import { BackSide, BufferAttribute, BufferGeometry, DoubleSide, FrontSide, Ray } from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import { describe, expect, test } from 'vitest';
import { buildCabin, distance, mix, tessellatePanel, type Vec3 } from '../../../src/geometry';
import { buildTriangleTree } from '../../../src/geometry/paths/build-triangle-tree';
import { firstCrossed } from '../../../src/geometry/paths/first-crossed';
import { segmentTriangle } from '../../../src/geometry/paths/segment-hits';
import { visitCrossed } from '../../../src/geometry/paths/triangle-tree';

type Corners = [number, number, number];

/** Seeded numbers from 0 to 1 (mulberry32, public domain). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

function soup(count: number, size: number, random: () => number) {
  const vertices: Vec3[] = [];
  const triangles: Corners[] = [];
  const around = (c: Vec3, r: number): Vec3 =>
    [0, 1, 2].map((k) => (c[k] as number) + (random() - 0.5) * r) as unknown as Vec3;
  for (let t = 0; t < count; t++) {
    const middle = around([0, 0, 0], 4000);
    vertices.push(around(middle, size), around(middle, size), around(middle, size));
    triangles.push([3 * t, 3 * t + 1, 3 * t + 2]);
  }
  return { vertices, triangles };
}

function crossed(
  tree: NonNullable<ReturnType<typeof buildTriangleTree>>,
  a: Vec3,
  b: Vec3,
  near = 0,
  far = 1,
): number[] {
  const found: number[] = [];
  visitCrossed(tree, a, b, near, far, (triangle) => {
    found.push(triangle);
    return false;
  });
  return found.sort((x, y) => x - y);
}

/** All the panels of a template cabin as one set of triangles, with its first seat's head. */
function cabinTriangles(template: string) {
  const answer = buildCabin({ cabin: { template, wheelSide: 'left' }, seats: [] });
  if (!answer.ok) throw new Error(answer.error.message);
  const vertices: Vec3[] = [];
  const triangles: Corners[] = [];
  for (const panel of answer.cabin.panels) {
    const mesh = tessellatePanel(panel);
    const base = vertices.length;
    vertices.push(...mesh.vertices);
    for (const [a, b, c] of mesh.triangles) triangles.push([base + a, base + b, base + c]);
  }
  return { vertices, triangles, head: answer.cabin.seats[0]?.head as Vec3 };
}

describe('the tree of triangles', () => {
  test.each([
    [1, 3000],
    [3, 3000],
    [40, 1500],
    [700, 600],
  ])('of %i triangles finds what asking each of them finds', (count, size) => {
    const random = seeded(count);
    const { vertices, triangles } = soup(count, size, random);
    const tree = buildTriangleTree(vertices, triangles);
    if (!tree) throw new Error('no tree');
    const end = (): Vec3 => [
      random() * 5000 - 2500,
      random() * 5000 - 2500,
      random() * 5000 - 2500,
    ];
    let met = 0;
    for (let i = 0; i < 300; i++) {
      const [a, b] = [end(), end()];
      const slowly = triangles.flatMap(([p, q, r], t) =>
        segmentTriangle(a, b, vertices[p] as Vec3, vertices[q] as Vec3, vertices[r] as Vec3) ===
        null
          ? []
          : [t],
      );
      expect(crossed(tree, a, b)).toEqual(slowly);
      met += slowly.length;
    }
    expect(met).toBeGreaterThan(0);
  });

  test('of a whole cabin meets first what a library’s tree meets first, from either side', () => {
    const { vertices, triangles } = cabinTriangles('estate');
    const tree = buildTriangleTree(vertices, triangles);
    if (!tree) throw new Error('no tree');
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(new Float64Array(vertices.flat()), 3));
    geometry.setIndex(triangles.flat());
    const library = new MeshBVH(geometry, { indirect: true });
    const random = seeded(611);
    const ray = new Ray();
    const met = { front: 0, back: 0, both: 0 };
    for (let i = 0; i < 300; i++) {
      const a: Vec3 = [random() * 4000 - 700, random() * 2000 - 1000, random() * 1600 - 200];
      const b: Vec3 = [random() * 4000 - 700, random() * 2000 - 1000, random() * 1600 - 200];
      const reach = distance(a, b);
      ray.origin.set(...a);
      ray.direction.set(b[0] - a[0], b[1] - a[1], b[2] - a[2]).divideScalar(reach);
      for (const [faces, side] of [
        ['front', FrontSide],
        ['back', BackSide],
        ['both', DoubleSide],
      ] as const) {
        const theirs = library.raycastFirst(ray, side, 0, reach);
        const ours = firstCrossed(tree, a, b, faces);
        expect(ours === null, `${faces} ${i}`).toBe(theirs === null);
        if (!ours || !theirs) continue;
        met[faces] += 1;
        // Two panels meet in one edge: either of their triangles is the first.
        expect(Math.abs(ours.at * reach - theirs.distance)).toBeLessThan(1e-6);
      }
    }
    for (const count of Object.values(met)) expect(count).toBeGreaterThan(50);
  });

  test('of a whole cabin finds what a library’s tree finds, and where', () => {
    const { vertices, triangles } = cabinTriangles('estate');
    const tree = buildTriangleTree(vertices, triangles);
    if (!tree) throw new Error('no tree');
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(new Float64Array(vertices.flat()), 3));
    geometry.setIndex(triangles.flat());
    const library = new MeshBVH(geometry, { indirect: true });
    const random = seeded(4177);
    const ray = new Ray();
    let met = 0;
    for (let i = 0; i < 500; i++) {
      const a: Vec3 = [random() * 4000 - 700, random() * 2000 - 1000, random() * 1600 - 200];
      const b: Vec3 = [random() * 4000 - 700, random() * 2000 - 1000, random() * 1600 - 200];
      const reach = distance(a, b);
      ray.origin.set(...a);
      ray.direction.set(b[0] - a[0], b[1] - a[1], b[2] - a[2]).divideScalar(reach);
      const theirs = library
        .raycast(ray, DoubleSide, 0, reach)
        .map((hit) => ({
          triangle: hit.faceIndex as number,
          at: hit.distance,
          emerging: (hit.face?.normal.dot(ray.direction) ?? 0) > 0,
        }))
        .sort((x, y) => x.triangle - y.triangle);
      const ours: typeof theirs = [];
      visitCrossed(tree, a, b, 0, 1, (triangle, at, emerging) => {
        ours.push({ triangle, at: at * reach, emerging });
        return false;
      });
      ours.sort((x, y) => x.triangle - y.triangle);
      expect(ours.map(({ triangle, emerging }) => [triangle, emerging])).toEqual(
        theirs.map(({ triangle, emerging }) => [triangle, emerging]),
      );
      for (const [k, hit] of ours.entries())
        expect(Math.abs(hit.at - (theirs[k]?.at ?? Infinity))).toBeLessThan(1e-6);
      met += ours.length;
    }
    expect(met).toBeGreaterThan(300);
  });

  test('lets no line slip out between neighbouring triangles', () => {
    const { vertices, triangles, head } = cabinTriangles('compact-hatch');
    const tree = buildTriangleTree(vertices, triangles);
    if (!tree) throw new Error('no tree');
    // Straight through corners and middles of edges, where neighbours share the line.
    for (const [a, b] of triangles.slice(0, 3000)) {
      const [p, q] = [vertices[a] as Vec3, vertices[b] as Vec3];
      for (const through of [p, mix(p, q, 0.5), mix(p, q, 1 / 3)]) {
        const beyond = mix(head, through, 1.0001);
        expect(visitCrossed(tree, head, beyond, 0, 1, () => true)).toBe(true);
      }
    }
  });

  test('keeps to the part of the segment it is asked about', () => {
    const square: Vec3[] = [
      [0, -1, -1],
      [0, 1, -1],
      [0, 1, 1],
      [0, -1, 1],
    ];
    const tree = buildTriangleTree(square, [
      [0, 1, 2],
      [0, 2, 3],
    ]);
    if (!tree) throw new Error('no tree');
    const [a, b]: [Vec3, Vec3] = [
      [-10, 0.5, 0],
      [30, 0.5, 0],
    ];
    expect(crossed(tree, a, b)).toEqual([0]);
    expect(crossed(tree, a, b, 0.26, 1)).toEqual([]);
    expect(crossed(tree, a, b, 0, 0.24)).toEqual([]);
  });

  test('tells the side a segment comes out of', () => {
    // Corners counter-clockwise seen from +X: the normal is +X.
    const tree = buildTriangleTree(
      [
        [0, -1, -1],
        [0, 1, -1],
        [0, 0, 1],
      ],
      [[0, 1, 2]],
    );
    if (!tree) throw new Error('no tree');
    const sides: boolean[] = [];
    const note = (_: number, __: number, emerging: boolean) => {
      sides.push(emerging);
      return false;
    };
    visitCrossed(tree, [-5, 0, 0], [5, 0, 0], 0, 1, note);
    visitCrossed(tree, [5, 0, 0], [-5, 0, 0], 0, 1, note);
    expect(sides).toEqual([true, false]);
  });

  test('meets triangles that lie in a plane of the axes, from lines along the axes', () => {
    const square: Vec3[] = [
      [0, 0, 0],
      [100, 0, 0],
      [100, 100, 0],
      [0, 100, 0],
    ];
    const tree = buildTriangleTree(square, [
      [0, 1, 2],
      [0, 2, 3],
    ]);
    if (!tree) throw new Error('no tree');
    for (const [x, y] of [
      [10, 20],
      [0, 50],
      [100, 100],
      [0, 0],
    ] as const)
      expect(crossed(tree, [x, y, 50], [x, y, -50]).length).toBeGreaterThan(0);
    expect(crossed(tree, [101, 50, 50], [101, 50, -50])).toEqual([]);
  });

  test('holds triangles that all lie in one place, and none at all', () => {
    const same = Array.from({ length: 500 }, (): Corners => [0, 1, 2]);
    const tree = buildTriangleTree(
      [
        [0, -1, -1],
        [0, 1, -1],
        [0, 0, 1],
      ],
      same,
    );
    if (!tree) throw new Error('no tree');
    expect(crossed(tree, [-5, 0, 0], [5, 0, 0])).toHaveLength(500);
    expect(buildTriangleTree([], [])).toBeNull();
  });
});
