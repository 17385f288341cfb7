import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { buildCabin, distance, dot, type Shape, sub, type Vec3 } from '../../../../src/geometry';
import { solidBodies } from '../../../../src/geometry/paths/way-round/bodies';
import type { Body } from '../../../../src/geometry/paths/way-round/body';
import { facingEdges } from '../../../../src/geometry/paths/way-round/facing';
import { frameOf } from '../../../../src/geometry/paths/way-round/frame';
import { cornerOf } from '../../../../src/geometry/paths/way-round/string';
import { carPlan } from '../../search/stages';

const isSet = (bits: Int32Array | null, e: number): boolean =>
  bits !== null && (((bits[e >> 5] as number) >> (e & 31)) & 1) === 1;

interface Place {
  x: number;
  h: number;
  /** −1: an end of the line. */
  edge: number;
}

/** What a half plane on the line from `from` to `to`, so far turned about it, meets of a body. */
function sectionOf(body: Body, from: Vec3, to: Vec3, turn: number): Place[] {
  const frame = frameOf(from, to);
  if (!frame) return [];
  const { along, u, v } = frame;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const seen = (corner: number) => {
    const d = sub(cornerOf(body, corner), from);
    const [y, z] = [dot(d, u), dot(d, v)];
    return { x: dot(d, along), h: y * c + z * s, off: z * c - y * s };
  };
  const places: Place[] = [
    { x: 0, h: 0, edge: -1 },
    { x: frame.reach, h: 0, edge: -1 },
  ];
  for (let edge = 0; 2 * edge < body.edges.length; edge++) {
    const a = seen(body.edges[2 * edge] as number);
    const b = seen(body.edges[2 * edge + 1] as number);
    if (a.off < 0 === b.off < 0) continue;
    const t = a.off / (a.off - b.off);
    const h = a.h + (b.h - a.h) * t;
    if (h > 0) places.push({ x: a.x + (b.x - a.x) * t, h, edge });
  }
  return places;
}

/** Corners of the convex hull, those a hair inside it left out (Andrew 1979). */
function hullOf(places: readonly Place[]): Place[] {
  const sorted = places.slice().sort((p, q) => p.x - q.x || p.h - q.h);
  const half = (list: readonly Place[]) => {
    const out: Place[] = [];
    for (const p of list) {
      while (out.length > 1) {
        const [a, b] = out.slice(-2) as [Place, Place];
        const size = Math.hypot(p.x - a.x, p.h - a.h);
        const off = ((b.x - a.x) * (p.h - a.h) - (b.h - a.h) * (p.x - a.x)) / (size || 1);
        if (off > 1e-6) break;
        out.pop();
      }
      out.push(p);
    }
    return out;
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

const car = buildCabin(carPlan());
if (!car.ok) throw new Error(car.error.message);
const shapes: Shape[] = [
  { shape: 'capsule', from: [0, 0, 0], to: [40, 260, 130], radius: 70 },
  { shape: 'capsule', from: [0, 0, 0], to: [300, 20, -50], radius: 25 },
  ...car.cabin.obstacles
    .map(({ shape }) => shape)
    .filter(({ shape }) => shape === 'mesh')
    .slice(0, 8),
];
const bodies = shapes
  .flatMap((shape, k) => solidBodies(`solid ${k}`, shape))
  .filter(({ closed, edges }) => closed && edges.length > 100);

const real = (low: number, high: number) =>
  fc.noBias(fc.integer({ min: 0, max: 1e6 })).map((k) => low + ((high - low) * k) / 1e6);

describe('an edge both of whose faces look at an end of a line', () => {
  test('is no corner of what a string over the solid is hung on', () => {
    let met = 0;
    fc.assert(
      fc.property(
        fc.nat(bodies.length - 1),
        fc.array(real(-1, 1), { minLength: 6, maxLength: 6 }),
        real(0, 2 * Math.PI),
        (k, part, turn) => {
          const body = bodies[k] as Body;
          const [low, high] = [body.bounds.slice(0, 3), body.bounds.slice(3, 6)];
          const place = (from: number): Vec3 =>
            [0, 1, 2].map((i) => {
              const [a, b] = [low[i] as number, high[i] as number];
              return (a + b) / 2 + (part[from + i] as number) * ((b - a) / 2 + 500);
            }) as unknown as Vec3;
          const [from, to] = [place(0), place(3)];
          const facing = [facingEdges(body, from), facingEdges(body, to)];
          const isFacing = ({ edge }: Place) =>
            edge >= 0 && facing.some((bits) => isSet(bits, edge));
          const section = sectionOf(body, from, to, turn);
          met += section.filter((p) => isFacing(p) && p.x >= 0 && p.x <= distance(from, to)).length;
          const reach = distance(from, to);
          // Beyond the ends a solid may dip below the line, where sheets hold nothing of it.
          const between = ({ x }: Place) => x >= 0 && x <= reach;
          const corners = hullOf(section).filter(between);
          expect(corners.filter(isFacing)).toEqual([]);
        },
      ),
      { numRuns: 3000, seed: 4 },
    );
    expect(met).toBeGreaterThan(2000);
  });

  test('is told by the planes of its two faces, for all of the cell round the place', () => {
    const body = bodies[0] as Body;
    const place: Vec3 = [420, -310, 205];
    const bits = facingEdges(body, place);
    const faces = body.faces();
    if (!bits || !faces) throw new Error('a capsule is asked');
    // Cells are 50 mm wide: these are the corners of the place's own.
    const corners = [400, 450].flatMap((x) =>
      [-350, -300].flatMap((y) => [200, 250].map((z): Vec3 => [x, y, z])),
    );
    const count = { set: 0, not: 0 };
    for (let e = 0; 2 * e < body.edges.length; e++) {
      const looks = [0, 1].every((side) => {
        const f = 4 * (faces.beside[2 * e + side] as number);
        const n = faces.planes.slice(f, f + 3) as unknown as Vec3;
        return corners.every((corner) => dot(n, corner) > (faces.planes[f + 3] as number));
      });
      expect(isSet(bits, e)).toBe(looks);
      count[looks ? 'set' : 'not'] += 1;
    }
    expect(count.set).toBeGreaterThan(100);
    expect(count.not).toBeGreaterThan(100);
  });

  test('is never one of a sheet, nor asked of a solid with few', () => {
    const [box] = solidBodies('box', { shape: 'box', center: [0, 0, 0], size: [100, 100, 100] });
    expect(facingEdges(box as Body, [500, 0, 0])).toBeNull();
    expect(facingEdges({ ...(bodies[0] as Body), closed: false }, [500, 0, 0])).toBeNull();
  });

  test('is the same a second time, and wherever in its cell the place lies', () => {
    const body = bodies[0] as Body;
    expect(facingEdges(body, [401, -349, 201])).toBe(facingEdges(body, [449, -301, 249]));
    expect(distance([401, -349, 201], [449, -301, 249])).toBeGreaterThan(80);
  });
});
