import { describe, expect, test } from 'vitest';
import { buildKeepClear, pedalLayout } from '../../../src/geometry/cabin/keep-clear';
import { mirrorZone } from '../../../src/geometry/cabin/mirror';
import type { KeepClearZone } from '../../../src/geometry/cabin/model';
import { pointOnPatch } from '../../../src/geometry/cabin/patch';
import { getTemplate, TEMPLATES, type TemplateData } from '../../../src/geometry/cabin/templates';
import type { Side } from '../../../src/geometry/input';
import { degrees, mix, sub, type Vec3 } from '../../../src/geometry/vector';
import { car } from './cars';
import { isFiniteShape, isWatertight, volume, winding } from './solids';

const hatch = getTemplate('compact-hatch') as TemplateData;

function zonesOf(template: TemplateData, side: Side = 'left', manual = false): KeepClearZone[] {
  const c = car(template, side);
  return buildKeepClear(c.dimensions, c.panels, c.seats, { ...template, manual }, side);
}
const byId = (zones: readonly KeepClearZone[], id: string): KeepClearZone => {
  const found = zones.find((z) => z.id === id);
  if (!found) throw new Error(`no zone ${id}`);
  return found;
};
const onPedals = (z: KeepClearZone) => z.reason === 'pedals';

function contains(zone: KeepClearZone, p: Vec3): boolean {
  const { shape } = zone;
  if (shape.shape === 'mesh') return winding(shape, p) !== 0;
  if (shape.shape !== 'box' || shape.turnDeg) throw new Error(`no test for ${zone.id}`);
  const d = sub(p, shape.center);
  return [0, 1, 2].every((i) => Math.abs(d[i] as number) <= (shape.size[i] as number) / 2);
}

describe('which zones a cabin has', () => {
  test('airbags, pedals, column, glove box, ducts, glass travel and sight lines in every style', () => {
    for (const template of TEMPLATES) {
      const reasons = new Set(zonesOf(template).map((z) => z.reason));
      expect([...reasons].sort()).toEqual(
        ['airbag', 'column', 'duct', 'glass travel', 'glove box', 'pedals', 'sight line'].sort(),
      );
    }
  });

  test('airbags in wheel, dash, knees, curtains and seat sides', () => {
    const ids = zonesOf(hatch).map((z) => z.id);
    expect(ids).toEqual(
      expect.arrayContaining([
        'airbag-wheel',
        'airbag-dash',
        'airbag-knee-left',
        'airbag-knee-right',
        'airbag-curtain-side-glass-left',
        'airbag-curtain-roof-edge-right',
        'airbag-seat-side-left',
        'airbag-seat-side-right',
      ]),
    );
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('a foot on the clutch only where there is a clutch', () => {
    expect(zonesOf(hatch, 'left', false).some((z) => z.id === 'clutch-foot')).toBe(false);
    expect(zonesOf(hatch, 'left', true).some((z) => z.id === 'clutch-foot')).toBe(true);
  });

  test('every zone is a closed finite body', () => {
    for (const template of TEMPLATES) {
      for (const zone of zonesOf(template, 'left', true)) {
        expect(isFiniteShape(zone.shape), zone.id).toBe(true);
        if (zone.shape.shape !== 'mesh') continue;
        expect(isWatertight(zone.shape), `${template.id} ${zone.id}`).toBe(true);
        expect(volume(zone.shape), `${template.id} ${zone.id}`).toBeGreaterThan(0);
      }
    }
  });
});

describe('where zones are', () => {
  test('the glove box is before the passenger, on either drive side', () => {
    for (const side of ['left', 'right'] as const) {
      const { shape } = byId(zonesOf(hatch, side), 'glove-box');
      if (shape.shape !== 'mesh') throw new Error('expected a mesh');
      const y = shape.vertices.reduce((s, v) => s + v[1], 0) / shape.vertices.length;
      expect(Math.sign(y)).toBe(side === 'left' ? 1 : -1);
    }
  });

  test('the door glass wound down lies below the belt line and outside the door card', () => {
    const c = car(hatch, 'left');
    const card = c.panels.find((p) => p.id === 'door-upper-left');
    const { shape } = byId(zonesOf(hatch), 'glass-travel-left');
    if (shape.shape !== 'mesh' || !card) throw new Error('expected a mesh and a card');
    const belt = pointOnPatch(card.patch, 0.5, 1);
    for (const v of shape.vertices) {
      expect(v[2]).toBeLessThan(belt[2] + 10);
      expect(Math.abs(v[1])).toBeGreaterThan(560);
      expect(Math.abs(v[1])).toBeLessThan(hatch.body.width / 2);
    }
  });

  test('the middle of the passenger’s lower dash lies in the glove box’s swing', () => {
    const c = car(hatch, 'left');
    const lower = c.panels.find((p) => p.id === 'dash-lower-right');
    if (!lower) throw new Error('no lower dash');
    const p = pointOnPatch(lower.patch, 0.5, 0.5);
    expect(contains(byId(zonesOf(hatch), 'glove-box'), [p[0] + 15, p[1], p[2]])).toBe(true);
  });

  test('the view past a pillar is kept 6 degrees beside its edge and not before the pillar', () => {
    const c = car(hatch, 'left');
    const eye = c.seats[0]?.eye as Vec3;
    const zone = byId(zonesOf(hatch), 'sight-line-screen-left');
    const pillar = c.panels.find((p) => p.id === 'pillar-left');
    if (!pillar) throw new Error('no pillar');
    const { shape } = zone;
    if (shape.shape !== 'mesh') throw new Error('expected a mesh');
    const bearings = shape.vertices.map((v) => degrees(Math.atan2(v[1] - eye[1], eye[0] - v[0])));
    const [low, high] = [Math.min(...bearings), Math.max(...bearings)];
    expect(high - low).toBeCloseTo(6, 6);
    // Halfway to the middle of the pillar at eye level the line of sight is the pillar's own.
    let atEye = pointOnPatch(pillar.patch, 0.5, 0);
    for (let v = 0; v <= 1; v += 0.01) {
      const p = pointOnPatch(pillar.patch, 0.5, v);
      if (Math.abs(p[2] - eye[2]) < Math.abs(atEye[2] - eye[2])) atEye = p;
    }
    expect(contains(zone, mix(eye, atEye, 0.7))).toBe(false);
    const bearing = degrees(Math.atan2(atEye[1] - eye[1], eye[0] - atEye[0]));
    expect(bearing).toBeLessThan(low);
  });
});

describe('pedals', () => {
  test('stand clutch, brake, accelerator from left to right on either drive side', () => {
    for (const template of TEMPLATES) {
      for (const side of ['left', 'right'] as const) {
        const p = pedalLayout(template.dimensions, side);
        const row = [p.walls[0], p.footrest, p.clutch, p.brake, p.accelerator, p.walls[1]];
        expect([...row].sort((a, b) => a - b)).toEqual(row);
      }
    }
  });

  test('the left foot rests beside the kick panel in one car and beside the tunnel in the other', () => {
    const [left, right] = [
      pedalLayout(hatch.dimensions, 'left'),
      pedalLayout(hatch.dimensions, 'right'),
    ];
    const d = hatch.dimensions;
    expect(left.footrest - d.footrestWidth / 2).toBe(-(d.tunnelWidth / 2 + d.footwellWidth));
    expect(right.footrest - d.footrestWidth / 2).toBe(d.tunnelWidth / 2);
  });

  test('their zones are shifted, not mirrored: all else mirrors exactly', () => {
    for (const template of TEMPLATES) {
      const [left, right] = [zonesOf(template, 'left', true), zonesOf(template, 'right', true)];
      expect(right.length).toBe(left.length);
      for (const zone of left) {
        if (onPedals(zone)) continue;
        const twin = mirrorZone(zone);
        expect(byId(right, twin.id)).toEqual(twin);
      }
      const shapes = [left, right].map((zones) => byId(zones, 'pedals').shape);
      const [a, b] = shapes;
      if (a?.shape !== 'box' || b?.shape !== 'box') throw new Error('expected boxes');
      expect(b.size[0]).toBe(a.size[0]);
      expect(b.center[1]).not.toBe(-a.center[1]);
    }
  });
});
