import { strFromU8, unzipSync } from 'fflate';
import { DOMParser } from 'linkedom';
import { BufferGeometry, type Mesh } from 'three';
import { ThreeMFLoader } from 'three/examples/jsm/loaders/3MFLoader.js';
import { STLLoader } from 'three/examples/jsm/loaders/STLLoader.js';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { stlOf } from '../../../src/exchange/ring/stl';
import { threeMfOf } from '../../../src/exchange/ring/three-mf';
import { meshVolume, type Vec3, wedgeRing } from '../../../src/geometry';

const answer = wedgeRing(
  {
    outer: 120,
    bore: 92,
    leastThickness: 5,
    rimRadius: 3.2,
    seat: { kind: 'sunk', recess: 106, depth: 4 },
  },
  {
    position: [0, 0, 40],
    axis: [Math.sin(0.4), 0, Math.cos(0.4)],
    normal: [0, 0, 1],
    standoff: 40,
  },
);
if (!answer.ok) throw new Error(answer.message);
const { mesh, volume } = answer.ring;

/** Six times the volume of all triangles with the origin. */
function volumeOfSoup(points: readonly Vec3[]): number {
  let six = 0;
  for (let n = 0; n < points.length; n += 3) {
    const [a, b, c] = points.slice(n, n + 3) as [Vec3, Vec3, Vec3];
    six +=
      a[0] * (b[1] * c[2] - b[2] * c[1]) +
      a[1] * (b[2] * c[0] - b[0] * c[2]) +
      a[2] * (b[0] * c[1] - b[1] * c[0]);
  }
  return six / 6;
}

/** Between the flat back and the flat front, radians: the back is where the lowest places lie. */
function backAngle(points: readonly Vec3[]): number {
  const lowest = (far: number) =>
    Math.min(...points.filter(([x]) => Math.abs(x - far) < 0.01).map(([, , z]) => z));
  return Math.atan((lowest(-60) - lowest(60)) / 120);
}

describe('a ring as STL', () => {
  const bytes = stlOf(mesh, 'left mid');

  test('is read back by a general loader with the same volume and bounds, in mm', () => {
    const read = new STLLoader().parse(bytes.buffer as ArrayBuffer);
    expect(read).toBeInstanceOf(BufferGeometry);
    const position = read.getAttribute('position');
    expect(position.count).toBe(3 * mesh.triangles.length);
    const points = Array.from(
      { length: position.count },
      (_, n): Vec3 => [position.getX(n), position.getY(n), position.getZ(n)],
    );
    expect(volumeOfSoup(points) / meshVolume(mesh)).toBeCloseTo(1, 5);
    expect(Math.abs(volumeOfSoup(points) / volume - 1)).toBeLessThan(2e-3);
    read.computeBoundingBox();
    expect(read.boundingBox?.max.x).toBeCloseTo(60, 4);
    expect(read.boundingBox?.max.z).toBeCloseTo(0, 6);
    expect(backAngle(points)).toBeCloseTo(0.4, 4);
  });

  test('its normals look out of the ring', () => {
    const view = new DataView(bytes.buffer);
    mesh.triangles.slice(0, 400).forEach((triangle, n) => {
      const normal = [0, 4, 8].map((k) =>
        view.getFloat32(84 + 50 * n + k, true),
      ) as unknown as Vec3;
      const [a, b, c] = triangle.map((k) => mesh.vertices[k] as Vec3) as [Vec3, Vec3, Vec3];
      const way = (p: Vec3) => normal[0] * p[0] + normal[1] * p[1] + normal[2] * p[2];
      expect(Math.hypot(...normal)).toBeCloseTo(1, 4);
      expect(way(b)).toBeCloseTo(way(a), 3);
      expect(way(c)).toBeCloseTo(way(a), 3);
    });
  });

  test('a title longer than the header is cut, and one that says "solid" is not taken for text', () => {
    const long = stlOf(mesh, 'solid '.repeat(50));
    expect(long.byteLength).toBe(bytes.byteLength);
    expect(new TextDecoder().decode(long.subarray(0, 5))).not.toBe('solid');
  });
});

describe('rings as 3MF', () => {
  const bytes = threeMfOf([
    { mesh, title: 'left <mid> & "more"' },
    { mesh, title: 'right mid' },
  ]);
  const files = unzipSync(bytes);
  const model = strFromU8(files['3D/3dmodel.model'] as Uint8Array);

  test('is a package of the three parts the format asks for', () => {
    expect(Object.keys(files).sort()).toEqual([
      '3D/3dmodel.model',
      '[Content_Types].xml',
      '_rels/.rels',
    ]);
    expect(strFromU8(files['_rels/.rels'] as Uint8Array)).toContain('/3D/3dmodel.model');
  });

  test('holds every vertex in mm and every triangle, with names that XML can carry', () => {
    expect(model).toContain('unit="millimeter"');
    expect(model).toContain('name="left &lt;mid&gt; &amp; &quot;more&quot;"');
    const [first] = model.split('</object>') as [string];
    const points = [...first.matchAll(/<vertex x="([^"]+)" y="([^"]+)" z="([^"]+)"\/>/g)].map(
      ([, x, y, z]): Vec3 => [Number(x), Number(y), Number(z)],
    );
    const soup = [...first.matchAll(/<triangle v1="(\d+)" v2="(\d+)" v3="(\d+)"\/>/g)].flatMap(
      (found) => found.slice(1, 4).map((k) => points[Number(k)] as Vec3),
    );
    expect(points).toHaveLength(mesh.vertices.length);
    expect(soup).toHaveLength(3 * mesh.triangles.length);
    expect(volumeOfSoup(soup) / meshVolume(mesh)).toBeCloseTo(1, 5);
    expect(model).not.toMatch(/NaN|Infinity|="-?\d+(\.\d+)?e/);
  });

  describe('read back by a general loader', () => {
    // It asks the page for a parser of XML, and Node has none.
    const page = globalThis as { DOMParser?: unknown };
    beforeAll(() => {
      page.DOMParser = DOMParser;
    });
    afterAll(() => {
      delete page.DOMParser;
    });

    test('has two parts with the ring’s own volume, angle and size, in mm', () => {
      const read = new ThreeMFLoader().parse(bytes.slice().buffer);
      const meshes: Mesh[] = [];
      read.traverse((one) => {
        if ((one as Mesh).isMesh) meshes.push(one as Mesh);
      });
      expect(meshes).toHaveLength(2);
      for (const part of meshes) {
        const geometry = part.geometry.index ? part.geometry.toNonIndexed() : part.geometry;
        const position = geometry.getAttribute('position');
        const points = Array.from(
          { length: position.count },
          (_, n): Vec3 => [position.getX(n), position.getY(n), position.getZ(n)],
        );
        expect(Math.abs(volumeOfSoup(points) / volume - 1)).toBeLessThan(2e-3);
        geometry.computeBoundingBox();
        const { min, max } = geometry.boundingBox as NonNullable<typeof geometry.boundingBox>;
        expect(max.x - min.x).toBeCloseTo(120, 3);
        expect(max.z - min.z).toBeCloseTo(40 / Math.cos(0.4) + 60 * Math.tan(0.4), 3);
        expect(backAngle(points)).toBeCloseTo(0.4, 3);
      }
    });
  });

  test('lays the parts side by side, none in another', () => {
    const moves = [...model.matchAll(/transform="1 0 0 0 1 0 0 0 1 ([^ ]+) 0 0"/g)].map(([, x]) =>
      Number(x),
    );
    expect(moves).toHaveLength(2);
    expect((moves[1] as number) - (moves[0] as number)).toBeCloseTo(130, 3);
  });

  test('the same rings give the same bytes', () => {
    expect(threeMfOf([{ mesh, title: 'a' }])).toEqual(threeMfOf([{ mesh, title: 'a' }]));
  });

  test('nothing is refused rather than written empty', () => {
    expect(() => threeMfOf([])).toThrow('expected a mesh');
  });
});
