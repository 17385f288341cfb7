import { describe, expect, test } from 'vitest';
import { buildFixedFurniture, buildFurniture } from '../../../src/geometry/cabin/furniture';
import { RIM_THICKNESS } from '../../../src/geometry/cabin/furniture/steering';
import { mirrorObstacle } from '../../../src/geometry/cabin/mirror';
import type { Obstacle } from '../../../src/geometry/cabin/model';
import { getTemplate, TEMPLATES, type TemplateData } from '../../../src/geometry/cabin/templates';
import { buildTrim } from '../../../src/geometry/cabin/trim';
import { distance, dot, length, type Vec3 } from '../../../src/geometry/vector';
import { car } from './cars';
import { clearance, isWatertight, volume } from './solids';

const hatch = getTemplate('compact-hatch') as TemplateData;
const byId = (obstacles: readonly Obstacle[], id: string): Obstacle => {
  const found = obstacles.find((o) => o.id === id);
  if (!found) throw new Error(`no obstacle ${id}`);
  return found;
};
const fixedOf = (template: TemplateData, side: 'left' | 'right' = 'left') => {
  const c = car(template, side);
  return buildFixedFurniture(c.dimensions, c.panels, side);
};

describe('the steering wheel', () => {
  const wheel = byId(fixedOf(hatch), 'steering-wheel').shape;
  if (wheel.shape !== 'ring') throw new Error('expected a ring');
  const d = hatch.dimensions;

  test('is a ring whose outside is the measured diameter', () => {
    expect(wheel.diameter + wheel.thickness).toBeCloseTo(d.wheelDiameter, 9);
    expect(wheel.thickness).toBe(RIM_THICKNESS);
  });

  test('stands where it was measured, before the seat, tilted from vertical', () => {
    expect(wheel.center).toEqual([d.wheelReach, -d.seatOffset, d.wheelHeight]);
    const tilt = (Math.atan2(wheel.axis[2], wheel.axis[0]) * 180) / Math.PI;
    expect(tilt).toBeCloseTo(d.wheelTilt, 9);
    expect(length(wheel.axis)).toBeCloseTo(1, 12);
  });

  test('is in the hands of the person at the wheel', () => {
    for (const template of TEMPLATES) {
      const c = car(template, 'left');
      const all = buildFurniture(c.dimensions, c.panels, c.seats, template, 'left');
      const rim = byId(all, 'steering-wheel').shape;
      for (const side of ['left', 'right']) {
        const arm = byId(all, `occupant-front-left-${side}-arm`).shape;
        if (arm.shape !== 'mesh') throw new Error('expected a mesh');
        const nearest = Math.min(...arm.vertices.map((v) => clearance(rim, v)));
        expect(nearest, `${template.id} ${side} hand`).toBeLessThan(25);
      }
    }
  });

  test('clears the thighs under it', () => {
    for (const template of TEMPLATES) {
      const c = car(template, 'left');
      const all = buildFurniture(c.dimensions, c.panels, c.seats, template, 'left');
      const rim = byId(all, 'steering-wheel').shape;
      for (const side of ['left', 'right']) {
        const thigh = byId(all, `occupant-front-left-${side}-thigh`).shape;
        if (thigh.shape !== 'capsule') throw new Error('expected a capsule');
        for (let t = 0; t <= 1; t += 0.1) {
          const p = [0, 1, 2].map(
            (i) => (thigh.from[i] as number) * (1 - t) + (thigh.to[i] as number) * t,
          ) as unknown as Vec3;
          expect(clearance(rim, p) - thigh.radius, `${template.id} ${side}`).toBeGreaterThan(0);
        }
      }
    }
  });
});

describe('what hangs on the panels', () => {
  test('every car has wheel, column, binnacle, selector, armrests and pockets', () => {
    for (const template of TEMPLATES) {
      const ids = fixedOf(template).map((o) => o.id);
      expect(ids).toEqual(
        expect.arrayContaining([
          'steering-wheel',
          'steering-wheel-hub',
          'steering-column',
          'binnacle',
          'selector',
          'door-armrest-left',
          'door-armrest-right',
          'door-pocket-left',
          'seat-frame-right',
        ]),
      );
      expect(new Set(ids).size).toBe(ids.length);
    }
  });

  test('the binnacle’s hood rises above the dash by its height', () => {
    const hood = byId(fixedOf(hatch), 'binnacle').shape;
    if (hood.shape !== 'mesh') throw new Error('expected a mesh');
    const top = Math.max(...hood.vertices.map((v) => v[2]));
    const { dashHeight, binnacleHeight } = hatch.dimensions;
    // The dash top is a little higher or lower before the seat than on the centreline.
    expect(Math.abs(top - dashHeight - binnacleHeight)).toBeLessThan(25);
  });

  test('without panels there is nothing to hang anything on, and no error', () => {
    const ids = buildFixedFurniture(hatch.dimensions, [], 'left').map((o) => o.id);
    expect(ids).toContain('steering-wheel');
    expect(ids).not.toContain('door-armrest-left');
  });

  test('a door card the plan gave by its corners carries no armrest', () => {
    const c = car(hatch, 'left');
    const panels = c.panels.map((p) => (p.id === 'door-upper-left' ? { ...p, given: true } : p));
    const ids = buildFixedFurniture(c.dimensions, panels, 'left').map((o) => o.id);
    expect(ids).not.toContain('door-armrest-left');
  });

  test('every body is closed and right side out, drawn ones too', () => {
    for (const template of TEMPLATES) {
      const c = car(template, 'left');
      const drawn = buildTrim(c.dimensions, c.panels, template, 'left');
      const shapes = [
        ...fixedOf(template).flatMap((o) => [o.shape, ...(o.drawn ?? []).map((x) => x.mesh)]),
        ...drawn.map((x) => x.mesh),
      ];
      for (const shape of shapes) {
        if (shape.shape !== 'mesh') continue;
        expect(isWatertight(shape)).toBe(true);
        expect(volume(shape)).toBeGreaterThan(0);
      }
    }
  });

  test('no body touches an ear', () => {
    for (const template of TEMPLATES) {
      const c = car(template, 'left');
      for (const o of fixedOf(template)) {
        for (const seat of c.seats) {
          for (const ear of Object.values(seat.ears)) {
            expect(clearance(o.shape, ear), `${template.id} ${o.id}`).toBeGreaterThan(100);
          }
        }
      }
    }
  });

  test('right-hand drive has exactly the mirrored bodies', () => {
    for (const template of TEMPLATES) {
      const right = fixedOf(template, 'right');
      const left = fixedOf(template);
      expect(right.length).toBe(left.length);
      for (const o of left) {
        const twin = mirrorObstacle(o);
        expect(byId(right, twin.id)).toEqual(twin);
      }
    }
  });
});

test('mirroring twice gives back the same body', () => {
  const c = car(hatch, 'left');
  for (const o of buildFurniture(c.dimensions, c.panels, c.seats, hatch, 'left')) {
    expect(mirrorObstacle(mirrorObstacle(o))).toEqual(o);
  }
});

test('mirroring a turned box mirrors its corners', () => {
  const box = {
    id: 'b',
    name: 'b',
    given: true,
    shape: {
      shape: 'box' as const,
      center: [10, 20, 30] as const,
      size: [100, 40, 20] as const,
      turnDeg: [20, -35, 50] as const,
    },
  };
  const twin = mirrorObstacle(box).shape;
  if (twin.shape !== 'box') throw new Error('expected a box');
  const corners = (b: typeof twin): Vec3[] => {
    const turn = (b.turnDeg ?? [0, 0, 0]).map((x) => (x * Math.PI) / 180);
    const [ax, ay, az] = turn as [number, number, number];
    const out: Vec3[] = [];
    for (const i of [-0.5, 0.5]) {
      for (const j of [-0.5, 0.5]) {
        for (const k of [-0.5, 0.5]) {
          let [x, y, z] = [i * b.size[0], j * b.size[1], k * b.size[2]];
          [y, z] = [y * Math.cos(ax) - z * Math.sin(ax), y * Math.sin(ax) + z * Math.cos(ax)];
          [x, z] = [x * Math.cos(ay) + z * Math.sin(ay), -x * Math.sin(ay) + z * Math.cos(ay)];
          [x, y] = [x * Math.cos(az) - y * Math.sin(az), x * Math.sin(az) + y * Math.cos(az)];
          out.push([x + b.center[0], y + b.center[1], z + b.center[2]]);
        }
      }
    }
    return out;
  };
  const mirrored = corners(box.shape as unknown as typeof twin).map(
    (p): Vec3 => [p[0], -p[1], p[2]],
  );
  for (const p of corners(twin)) {
    expect(Math.min(...mirrored.map((q) => distance(p, q)))).toBeLessThan(1e-9);
  }
  expect(dot([1, 0, 0], twin.center)).toBe(10);
});
