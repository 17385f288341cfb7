/** The ray caster against asking every triangle and every solid in turn. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  evaluatePlan,
  type Obstacle,
  type Panel,
  type PanelInput,
  tessellatePanel,
  type Vec3,
} from '../../../src/geometry';
import { buildCaster } from '../../../src/geometry/paths/cast';
import {
  segmentBox,
  segmentCapsule,
  segmentRing,
  segmentTriangle,
} from '../../../src/geometry/paths/segment-hits';
import * as any from '../arbitraries';

/** Panels as the engine makes them of given corners. */
function panelsOf(inputs: readonly PanelInput[]): readonly Panel[] {
  const answer = evaluatePlan({
    air: { temperatureC: 20, relativeHumidityPercent: 50, pressureKPa: 101.325 },
    cabin: { template: 'none', wheelSide: 'left', panels: inputs },
    seats: [],
    options: [],
    alignment: { sampleRateHz: 48000 },
  });
  if (!answer.ok) throw new Error(answer.error.message);
  return answer.cabin.panels;
}

/** Ids a segment crosses, found by the slowest and plainest way. */
function bruteForce(
  panels: readonly Panel[],
  obstacles: readonly Obstacle[],
  a: Vec3,
  b: Vec3,
): string[] {
  const hits: { id: string; at: number }[] = [];
  const take = (id: string, at: number | null) => {
    if (at !== null) hits.push({ id, at });
  };
  for (const panel of panels) {
    const { vertices, triangles } = tessellatePanel(panel);
    for (const [i, j, k] of triangles)
      take(
        panel.id,
        segmentTriangle(a, b, vertices[i] as Vec3, vertices[j] as Vec3, vertices[k] as Vec3),
      );
  }
  for (const { id, shape } of obstacles) {
    if (shape.shape === 'box') take(id, segmentBox(a, b, shape));
    else if (shape.shape === 'capsule') take(id, segmentCapsule(a, b, shape));
    else if (shape.shape === 'ring') take(id, segmentRing(a, b, shape));
    else
      for (const [i, j, k] of shape.triangles)
        take(
          id,
          segmentTriangle(
            a,
            b,
            shape.vertices[i] as Vec3,
            shape.vertices[j] as Vec3,
            shape.vertices[k] as Vec3,
          ),
        );
  }
  hits.sort((x, y) => x.at - y.at);
  return [...new Set(hits.map(({ id }) => id))];
}

const panelInputs = fc
  .noBias(fc.array(fc.tuple(any.point, any.point, any.point, any.point), { maxLength: 12 }))
  .map((all) => all.map((corners, i): PanelInput => ({ id: `panel-${i}`, corners })));

const mesh = fc
  .array(fc.tuple(any.point, any.point, any.point), { minLength: 1, maxLength: 6 })
  .map((all) => ({
    shape: 'mesh' as const,
    vertices: all.flat(),
    triangles: all.map((_, t) => [3 * t, 3 * t + 1, 3 * t + 2] as const),
  }));

const obstacles = fc
  .noBias(fc.array(fc.oneof(any.box, any.capsule, any.ring, mesh), { maxLength: 8 }))
  .map((all) =>
    all.map((shape, i): Obstacle => ({ id: `solid-${i}`, name: `solid ${i}`, shape, given: true })),
  );

/**
 * Ten lines. Nothing here likes the ends of its range: a line that just touches an edge is met or
 * not by rounding alone, and the two ways of asking round differently.
 */
const lines = fc.noBias(fc.array(fc.tuple(any.point, any.point), { minLength: 10, maxLength: 10 }));

describe('the caster', () => {
  test('finds the same things in the same order as asking all of them', () => {
    fc.assert(
      fc.property(panelInputs, obstacles, lines, (inputs, solids, tried) => {
        const panels = panelsOf(inputs);
        const caster = buildCaster(panels, solids);
        for (const [a, b] of tried)
          expect(caster.crossings(a, b, null, null)).toEqual(bruteForce(panels, solids, a, b));
      }),
      { numRuns: 150, seed: 20260 },
    );
  });

  test('calls a line free exactly when nothing crosses it', () => {
    fc.assert(
      fc.property(panelInputs, obstacles, lines, (inputs, solids, tried) => {
        const caster = buildCaster(panelsOf(inputs), solids);
        for (const [a, b] of tried)
          expect(caster.isFree(a, b)).toBe(caster.crossings(a, b, null, null).length === 0);
      }),
      { numRuns: 150, seed: 20261 },
    );
  });

  test('finds the same things whether panels and solids were asked about before or not', () => {
    fc.assert(
      fc.property(panelInputs, obstacles, any.point, any.point, (inputs, solids, a, b) => {
        const panels = panelsOf(inputs);
        const first = buildCaster(panels, solids).crossings(a, b, null, null);
        expect(buildCaster(panels, solids).crossings(a, b, null, null)).toEqual(first);
        expect(
          buildCaster([...panels], structuredClone(solids)).crossings(a, b, null, null),
        ).toEqual(first);
      }),
      { numRuns: 80, seed: 20262 },
    );
  });
});

describe('by hand', () => {
  const screen: PanelInput = {
    id: 'screen',
    corners: [
      [0, -500, -500],
      [0, 500, -500],
      [0, 500, 500],
      [0, -500, 500],
    ],
  };
  const board = (id: string, x: number): Obstacle => ({
    id,
    name: id,
    shape: { shape: 'box', center: [x, 0, 0], size: [10, 200, 200] },
    given: true,
  });

  test('what is in the way is named nearest first', () => {
    const caster = buildCaster(panelsOf([screen]), [board('far', 300), board('near', -300)]);
    expect(caster.crossings([-900, 0, 0], [900, 0, 0], null, null)).toEqual([
      'near',
      'screen',
      'far',
    ]);
    expect(caster.crossings([900, 0, 0], [-900, 0, 0], null, null)).toEqual([
      'far',
      'screen',
      'near',
    ]);
  });

  test('a mounted speaker’s own panel is not in its way, seen from its front', () => {
    const caster = buildCaster(panelsOf([screen]), []);
    const spot = { panel: 'screen', standoff: 0, normal: [1, 0, 0] as const };
    expect(caster.crossings([0, 0, 0], [900, 100, 100], null, spot)).toEqual([]);
  });

  test('calls a mounted speaker’s line free exactly when nothing crosses it, whoever listens', () => {
    fc.assert(
      fc.property(panelInputs, obstacles, lines, (inputs, solids, tried) => {
        const heads = solids.map((solid, i) =>
          i % 2 ? solid : { ...solid, occupant: { seat: 'front-left', part: 'head' as const } },
        );
        const caster = buildCaster(panelsOf(inputs), heads);
        const spot = { panel: 'screen', standoff: 3, normal: [1, 0, 0] as const };
        for (const [a, b] of tried)
          for (const listener of ['front-left', null])
            expect(caster.isFree(a, b, listener, spot)).toBe(
              caster.crossings(a, b, listener, spot).length === 0,
            );
      }),
      { numRuns: 100, seed: 20263 },
    );
  });

  test('but it is for a listener behind the panel', () => {
    const caster = buildCaster(panelsOf([screen]), []);
    const spot = { panel: 'screen', standoff: 0, normal: [1, 0, 0] as const };
    expect(caster.crossings([0, 0, 0], [-900, 100, 100], null, spot)).toEqual(['screen']);
    const pod = { ...spot, standoff: 40 };
    expect(caster.crossings([40, 0, 0], [-900, 100, 100], null, pod)).toEqual(['screen']);
  });

  test('the listener’s own head and torso are never in the way, a neighbour’s are', () => {
    const head = (seat: string): Obstacle => ({
      ...board('head', 0),
      occupant: { seat, part: 'head' },
    });
    const caster = buildCaster([], [head('front-left')]);
    expect(caster.crossings([-900, 0, 0], [900, 0, 0], 'front-left', null)).toEqual([]);
    expect(caster.crossings([-900, 0, 0], [900, 0, 0], 'front-right', null)).toEqual(['head']);
    expect(caster.crossings([-900, 0, 0], [900, 0, 0], null, null)).toEqual(['head']);
  });

  test('the listener’s own knees may be', () => {
    const knees: Obstacle = {
      ...board('knees', 0),
      occupant: { seat: 'front-left', part: 'legs' },
    };
    expect(buildCaster([], [knees]).crossings([-9, 0, 0], [9, 0, 0], 'front-left', null)).toEqual([
      'knees',
    ]);
  });

  test('with nothing about, or no line at all, nothing is in the way', () => {
    const caster = buildCaster([], []);
    expect(caster.crossings([0, 0, 0], [1, 0, 0], null, null)).toEqual([]);
    expect(buildCaster([], [board('a', 0)]).crossings([0, 0, 0], [0, 0, 0], null, null)).toEqual(
      [],
    );
    expect(caster.triangleCount).toBe(0);
  });

  test('a mesh without triangles is in nobody’s way', () => {
    const empty: Obstacle = {
      id: 'e',
      name: 'e',
      given: true,
      shape: { shape: 'mesh', vertices: [], triangles: [] },
    };
    expect(buildCaster([], [empty]).isFree([0, 0, 0], [1000, 0, 0])).toBe(true);
  });
});
