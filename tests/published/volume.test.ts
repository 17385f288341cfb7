/** Volumes against school geometry: box, prism, cylinder, sphere (Euclid; Archimedes). */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  buildCabin,
  type CabinModel,
  meshVolume,
  type Panel,
  pocketOf,
  type Vec3,
} from '../../src/geometry';
import { isClosed, meshOfShape } from '../../src/geometry/fit/solid';
import { board, cabinOf, planOf } from '../geometry/fit/boards';

const sphere = (radius: number): number => (4 / 3) * Math.PI * radius ** 3;
const panelOf = (cabin: CabinModel, id: string): Panel => {
  const panel = cabin.panels.find((p) => p.id === id);
  if (!panel) throw new Error(`no panel ${id}`);
  return panel;
};
const flat = panelOf(cabinOf(planOf({ panels: [board(400, 300)] }, [])), 'board');

const net = (panel: Panel, input: Parameters<typeof pocketOf>[1]) => {
  const answer = pocketOf(panel, input);
  if (!answer.ok) throw new Error(answer.message);
  expect(isClosed(answer.pocket.mesh)).toBe(true);
  return answer.pocket;
};

describe('volume of a closed mesh', () => {
  test('a box anywhere, turned any way, is length by width by height', () => {
    const mesh = meshOfShape({
      shape: 'box',
      center: [12_000, -700, 350],
      size: [300, 200, 80],
      turnDeg: [20, 50, -70],
    });
    expect(Math.abs(meshVolume(mesh) - 4_800_000)).toBeLessThan(1e-2);
  });

  test('a sphere is 4/3 π r³, within what its facets leave out', () => {
    const mesh = meshOfShape({ shape: 'capsule', from: [5, 5, 5], to: [5, 5, 5], radius: 100 });
    expect(Math.abs(meshVolume(mesh) / sphere(100) - 1)).toBeLessThan(0.003);
  });

  test('a capsule is a sphere and a cylinder', () => {
    const mesh = meshOfShape({ shape: 'capsule', from: [0, 0, 0], to: [0, 0, 400], radius: 100 });
    const exact = sphere(100) + Math.PI * 100 ** 2 * 400;
    expect(Math.abs(meshVolume(mesh) / exact - 1)).toBeLessThan(0.003);
  });

  test('a ring is 2π²·R·r² (Pappus)', () => {
    const mesh = meshOfShape({
      shape: 'ring',
      center: [0, 0, 0],
      axis: [0, 1, 1],
      diameter: 340,
      thickness: 32,
    });
    const exact = 2 * Math.PI ** 2 * 170 * 16 ** 2;
    expect(Math.abs(Math.abs(meshVolume(mesh)) / exact - 1)).toBeLessThan(0.01);
  });
});

describe('a pocket drawn on a panel', () => {
  const whole = [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ] as const;

  test('over a whole flat board is width by height by depth', () => {
    // 400 × 300 × 100 mm = 12 litres.
    expect(net(flat, { outline: whole, depth: 100 }).netLitres).toBeCloseTo(12, 9);
  });

  test('loses its walls on all six sides', () => {
    const pocket = net(flat, { outline: whole, depth: 100, wall: 15 });
    // 370 × 270 × 70 mm = 6.993 litres.
    expect(pocket.netLitres).toBeCloseTo(6.993, 9);
    expect(pocket.wallLitres).toBeCloseTo(12 - 6.993, 9);
  });

  test('loses the speaker’s body inside its front wall', () => {
    const body = { flange: 165, cutout: 142, depth: 64 };
    const pocket = net(flat, { outline: whole, depth: 100, wall: 15, speakers: [{ body }] });
    // π/4 · 142² · (64 − 15) mm³ = 0.77600 litres.
    expect(pocket.speakerLitres).toBeCloseTo(0.776, 4);
    expect(pocket.netLitres).toBeCloseTo(6.993 - 0.776, 4);
  });

  test('of three corners is a prism: half base times height times depth', () => {
    const outline = [
      [0, 0],
      [1, 0],
      [0, 1],
    ] as const;
    expect(net(flat, { outline, depth: 100 }).netLitres).toBeCloseTo(6, 9);
    // Clockwise or not.
    expect(net(flat, { outline: [...outline].reverse(), depth: 100 }).netLitres).toBeCloseTo(6, 9);
  });

  test('of an L, with a corner that looks inward, is the sum of its two parts', () => {
    const outline = [
      [0, 0],
      [1, 0],
      [1, 0.5],
      [0.5, 0.5],
      [0.5, 1],
      [0, 1],
    ] as const;
    // 400 × 150 + 200 × 150 mm², 100 mm deep = 9 litres.
    expect(net(flat, { outline, depth: 100 }).netLitres).toBeCloseTo(9, 9);
    // With walls of 10: 380 × 130 + 180 × 150 mm², 80 mm deep = 6.112 litres.
    expect(net(flat, { outline, depth: 100, wall: 10 }).netLitres).toBeCloseTo(6.112, 9);
  });

  test('under a curved panel keeps the area of its outline seen along the normal', () => {
    const arch = (y: number, z: number): Vec3 => [y === 0 ? 40 : -40, y, z];
    const curved: Panel = {
      ...flat,
      patch: {
        control: [-200, 0, 200].flatMap((y) => [-150, 0, 150].map((z) => arch(y, z))),
        facing: 1,
      },
    };
    expect(net(curved, { outline: whole, depth: 100 }).netLitres).toBeCloseTo(12, 6);
  });

  test('never grows with thicker walls or a larger speaker, and always grows with depth', () => {
    const size = fc.double({ min: 0, max: 25, noNaN: true });
    fc.assert(
      fc.property(size, size, (wall, more) => {
        const ask = (thick: number, depth: number, cutout: number) =>
          net(flat, {
            outline: whole,
            depth,
            wall: thick,
            speakers: [{ body: { flange: 150, cutout, depth: 50 } }],
          }).netLitres;
        expect(ask(wall + more, 150, 100)).toBeLessThanOrEqual(ask(wall, 150, 100));
        expect(ask(wall, 150, 100 + more)).toBeLessThanOrEqual(ask(wall, 150, 100));
        expect(ask(wall, 151 + more, 100)).toBeGreaterThan(ask(wall, 150, 100));
      }),
      { numRuns: 20 },
    );
  });

  test('on the left kick panel is as large as the same one on the right', () => {
    const answer = buildCabin({ cabin: { template: 'compact-hatch', wheelSide: 'left' } });
    if (!answer.ok) throw new Error(answer.error.message);
    const outline = [
      [0.1, 0.1],
      [0.9, 0.15],
      [0.8, 0.9],
      [0.2, 0.8],
    ] as const;
    const ask = (side: string) =>
      net(panelOf(answer.cabin, `kick-${side}`), { outline, depth: 70, wall: 6 }).netLitres;
    expect(Math.abs(ask('left') - ask('right'))).toBeLessThan(1e-9);
    expect(ask('left')).toBeGreaterThan(0.3);
  });

  test('is refused where nothing is left of it', () => {
    const refusal = (input: Parameters<typeof pocketOf>[1]) => {
      const answer = pocketOf(flat, input);
      return answer.ok ? null : answer.message;
    };
    expect(refusal({ outline: whole, depth: 30, wall: 15 })).toBe(
      'walls of 15 mm leave no room inside',
    );
    expect(refusal({ outline: whole, depth: 400, wall: 160 })).toBe(
      'walls of 160 mm leave no room inside',
    );
    const bow = [
      [0, 0],
      [1, 1],
      [1, 0],
      [0, 1],
    ] as const;
    expect(refusal({ outline: bow, depth: 100 })).toMatch(/none of its edges may cross/);
    expect(refusal({ outline: whole, depth: Number.NaN })).toMatch(/depth must be more than 0/);
    const plug = { body: { flange: 900, cutout: 800, depth: 300 } };
    expect(refusal({ outline: whole, depth: 100, speakers: [plug] })).toMatch(/fill all/);
  });
});
