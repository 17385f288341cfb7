import { describe, expect, it } from 'vitest';
import { distance, mix, type Shape, type Vec3 } from '../../src/geometry';
import { shapeMesh } from '../../src/scene/meshes/shape-mesh';
import { meetShape } from '../../src/scene/pick/meet-shape';
import { nearestPass } from '../../src/scene/pick/nearest-pass';
import { boardPlan, cabinOf, panelOf } from './cabin';

const FROM: Vec3 = [0, 0, 0];
const TO: Vec3 = [1000, 0, 0];
const near = (a: Vec3 | undefined, b: Vec3, mm: number) =>
  expect(distance(a ?? [1e9, 0, 0], b), `${a} against ${b}`).toBeLessThan(mm);

const BODIES: readonly (readonly [string, Shape, onLine: Vec3, onBody: Vec3])[] = [
  [
    'a limb across the way',
    { shape: 'capsule', from: [400, -200, 100], to: [400, 200, 100], radius: 60 },
    [400, 0, 0],
    [400, 0, 40],
  ],
  [
    'a box beside it',
    { shape: 'box', center: [500, 150, 0], size: [10, 200, 10] },
    [500, 0, 0],
    [500, 50, 0],
  ],
  [
    'a wheel rim it passes over',
    { shape: 'ring', center: [500, 0, -230], axis: [1, 0, 0], diameter: 400, thickness: 30 },
    [500, 0, 0],
    [500, 0, -15],
  ],
];

describe('where a near miss is nearest', () => {
  it.each(BODIES)('is found on %s', (_, shape, onLine, onBody) => {
    const pass = nearestPass(FROM, TO, shape);
    near(pass?.onLine, onLine, 8);
    near(pass?.onBody, onBody, 8);
  });

  it('is at the edge of a panel the line passes beside', () => {
    const shelf = panelOf(cabinOf(boardPlan()), 'shelf');
    const pass = nearestPass([200, -900, 730], [200, 900, 730], shelf);
    expect(pass?.onLine[2]).toBe(730);
    // Over the middle of the shelf, where the zone is widest.
    expect(Math.abs(pass?.onBody[1] ?? 1e9)).toBeLessThan(130);
    expect(Math.abs((pass?.onBody[2] ?? 0) - 700)).toBeLessThan(0.01);
  });

  it.each(BODIES)('is nowhere narrower, measured along the whole line: %s', (_, shape) => {
    const pass = nearestPass(FROM, TO, shape);
    if (!pass) throw new Error('no pass');
    const narrow = (p: Vec3, q: Vec3) =>
      distance(p, q) ** 2 * (1 / distance(FROM, p) + 1 / distance(p, TO));
    const found = narrow(pass.onLine, pass.onBody);
    for (const q of shapeMesh(shape).vertices)
      for (let k = 1; k < 40; k++)
        expect(found).toBeLessThan(narrow(mix(FROM, TO, k / 40), q) * 1.02 + 1e-6);
  });

  it('is nowhere on a line without length', () => {
    expect(nearestPass(FROM, FROM, BODIES[0]?.[1] as Shape)).toBeNull();
  });
});

describe('where a line first meets a body', () => {
  const box: Shape = { shape: 'box', center: [500, 0, 0], size: [100, 100, 100] };
  const ray = { origin: FROM, direction: [1, 0, 0] } as const;

  it('is its near face, from either side', () => {
    near(meetShape(box, ray, 1000) ?? undefined, [450, 0, 0], 1e-6);
    const back = { origin: TO, direction: [-1, 0, 0] } as const;
    near(meetShape(box, back, 1000) ?? undefined, [550, 0, 0], 1e-6);
  });

  it('is nowhere beyond its end, before its start or beside the body', () => {
    expect(meetShape(box, ray, 449)).toBeNull();
    expect(meetShape(box, { origin: [600, 0, 0], direction: [1, 0, 0] }, 1000)).toBeNull();
    expect(meetShape(box, { origin: [0, 51, 0], direction: [1, 0, 0] }, 1000)).toBeNull();
  });
});
