import { describe, expect, test } from 'vitest';
import { mirrorReference, mirrorWords } from '../../../src/geometry/cabin/mirror';
import type { ReferencePoint } from '../../../src/geometry/cabin/model';
import { buildReferences } from '../../../src/geometry/cabin/references';
import { getTemplate, TEMPLATES, type TemplateData } from '../../../src/geometry/cabin/templates';
import type { Side } from '../../../src/geometry/input';
import { distance } from '../../../src/geometry/vector';
import { car } from './cars';

const hatch = getTemplate('compact-hatch') as TemplateData;
const pointsOf = (template: TemplateData, side: Side = 'left'): ReferencePoint[] => {
  const c = car(template, side);
  return buildReferences(c.dimensions, c.panels, side);
};
const at = (points: readonly ReferencePoint[], id: string) => {
  const found = points.find((p) => p.id === id);
  if (!found) throw new Error(`no reference ${id}`);
  return found.point;
};

describe('points to tape from', () => {
  test('every car has the same two dozen, each with a name of its own', () => {
    const ids = pointsOf(hatch).map((p) => p.id);
    expect(ids.length).toBeGreaterThan(20);
    for (const template of TEMPLATES) {
      const points = pointsOf(template);
      expect(points.map((p) => p.id)).toEqual(ids);
      expect(new Set(points.map((p) => p.name)).size).toBe(points.length);
    }
  });

  test('the middle of the screen’s base is where its two dimensions put it', () => {
    const { cowlX, cowlHeight } = hatch.dimensions;
    expect(
      distance(at(pointsOf(hatch), 'screen-base-centre'), [cowlX, 0, cowlHeight]),
    ).toBeLessThan(1e-9);
  });

  test('the accelerator heel point is at X = 0, Z = 0 on the wheel side', () => {
    for (const side of ['left', 'right'] as const) {
      const [x, y, z] = at(pointsOf(hatch, side), 'heel');
      expect([x, z]).toEqual([0, 0]);
      expect(Math.sign(y)).toBe(side === 'left' ? -1 : 1);
    }
  });

  test('left and right points are mirror images of each other', () => {
    for (const template of TEMPLATES) {
      const points = pointsOf(template);
      for (const p of points) {
        if (!/-(left|right)$/.test(p.id)) continue;
        expect(at(points, mirrorWords(p.id))).toEqual(mirrorReference(p).point);
      }
    }
  });

  test('a right-hand-drive car has them mirrored, but for the heel', () => {
    const right = pointsOf(hatch, 'right');
    for (const p of pointsOf(hatch)) {
      if (p.id === 'heel') continue;
      const twin = mirrorReference(p);
      expect(at(right, twin.id)).toEqual(twin.point);
    }
  });
});
