import type { DataTexture, Mesh, ShaderMaterial, Vector2 } from 'three';
import { describe, expect, test } from 'vitest';
import {
  DOES_NOT_FIT,
  evaluatePlan,
  FITS,
  gridSize,
  KEEP_CLEAR,
  type Panel,
  panelGrid,
  pointOnPatch,
  type SpotMap,
} from '../../src/geometry';
import { CHANNELS, fillInPlace, layOut, stands } from '../../src/scene/map/atlas';
import { isoPlaces } from '../../src/scene/map/iso-places';
import { placeOfSpot, spotNear } from '../../src/scene/map/spot-place';
import { geometriesAlive } from '../../src/scene/parts/bin';
import { createKit } from '../../src/scene/parts/kit';
import { createMapPart } from '../../src/scene/parts/map-part';
import { createLook } from '../../src/scene/shading/look';
import type { PaintedMap } from '../../src/store';
import { boardPlan } from './cabin';

function panelsOfBoard(): readonly Panel[] {
  const answer = evaluatePlan(boardPlan());
  if (!answer.ok) throw new Error(answer.error.message);
  return answer.cabin.panels;
}

const panels = panelsOfBoard();

/** Left path − right path as a plane over each panel: −100 at column 0, 10 more a column. */
function madeMap(step = 50): SpotMap {
  let first = 0;
  const grids = panels
    .filter(({ id }) => id !== 'glass')
    .map((panel) => {
      const grid = { ...panelGrid(panel, step), first };
      first += gridSize(grid);
      return grid;
    });
  const difference = new Float64Array(first);
  for (const grid of grids)
    for (let cell = 0; cell < gridSize(grid); cell++)
      difference[grid.first + cell] = -100 + 10 * (cell % grid.columns);
  return {
    panels: grids,
    done: new Uint8Array(first).fill(1),
    fit: new Uint8Array(first).fill(FITS),
    values: { difference },
  };
}

const painted = (map: SpotMap, change: Partial<PaintedMap> = {}): PaintedMap => ({
  map,
  quantity: 'difference',
  range: [0, 100],
  levels: [25, 50, 75],
  at: null,
  held: false,
  ...change,
});

/** The four numbers of one spot in the atlas. */
function texel(
  texels: ArrayLike<number>,
  map: SpotMap,
  panel: string,
  column: number,
  row: number,
) {
  const layout = layOut(map.panels);
  const plot = layout.plots.find((one) => one.panel === panel);
  if (!plot) throw new Error(`no plot for ${panel}`);
  const at = CHANNELS * ((plot.top + row) * layout.width + plot.left + column);
  return Array.from({ length: CHANNELS }, (_, c) => texels[at + c]);
}

function filled(map: SpotMap, change: Partial<PaintedMap> = {}): Float32Array {
  const layout = layOut(map.panels);
  const texels = new Float32Array(CHANNELS * layout.width * layout.height);
  fillInPlace(texels, layout, painted(map, change));
  return texels;
}

describe('the numbers behind the paint', () => {
  test('every spot of every panel has a texel of its own', () => {
    const map = madeMap(30);
    const { plots, width, height } = layOut(map.panels);
    const taken = new Set<number>();
    let spots = 0;
    for (const { left, top, columns, rows } of plots)
      for (let row = 0; row < rows; row++)
        for (let column = 0; column < columns; column++) {
          spots += 1;
          expect(left + column).toBeLessThan(width);
          expect(top + row).toBeLessThan(height);
          taken.add((top + row) * width + left + column);
        }
    expect(spots).toBe(map.done.length);
    expect(taken.size).toBe(spots);
  });

  test('a difference is painted by its size, and fits plainly', () => {
    const texels = filled(madeMap());
    expect(texel(texels, madeMap(), 'shelf', 0, 3)).toEqual([100, 1, 0, 0]);
    expect(texel(texels, madeMap(), 'shelf', 7, 0)).toEqual([30, 1, 0, 0]);
  });

  test('a misfit is hatched one way, a keep-clear place both ways, and keeps its number', () => {
    const map = madeMap();
    const shelf = map.panels.find(({ panel }) => panel === 'shelf');
    if (!shelf) throw new Error('no shelf');
    map.fit[shelf.first] = DOES_NOT_FIT;
    map.fit[shelf.first + 1] = KEEP_CLEAR;
    const texels = filled(map);
    expect(texel(texels, map, 'shelf', 0, 0)).toEqual([100, 1, 1, 0]);
    expect(texel(texels, map, 'shelf', 1, 0)).toEqual([90, 1, 1, 1]);
  });

  test('what is not known, or not yet, stays plain', () => {
    const map = madeMap();
    map.done.fill(0);
    expect(filled(map).every((x) => x === 0)).toBe(true);
    map.done.fill(1);
    map.values.difference?.fill(Number.NaN);
    const texels = filled(map);
    expect(texel(texels, map, 'shelf', 0, 0)).toEqual([0, 0, 0, 0]);
  });

  test('while a map is refined the coarser spot stands for those to come', () => {
    const map = madeMap(20);
    map.done.fill(0);
    const grid = map.panels[0];
    if (!grid) throw new Error('no panel');
    map.done[grid.first] = 1;
    expect(stands(grid, map.done, 7, 7)).toBe(grid.first);
    expect(stands(grid, map.done, 8, 0)).toBe(-1);
    map.done[grid.first + 4] = 1;
    expect(stands(grid, map.done, 7, 3)).toBe(grid.first + 4);
    expect(stands(grid, map.done, 3, 3)).toBe(grid.first);
  });
});

describe('lines of equal value', () => {
  test('carry their numbers where the value is the line’s', () => {
    const places = isoPlaces(painted(madeMap()));
    expect(places.length).toBeGreaterThan(3);
    for (const { panel, u, level } of places) {
      const grid = madeMap().panels.find((one) => one.panel === panel);
      if (!grid) throw new Error('no grid');
      const value = Math.abs(-100 + 10 * (u * grid.columns - 0.5));
      expect(Math.abs(value - level)).toBeLessThan(1e-6);
    }
  });
});

describe('pointing', () => {
  test('a place on a panel is the number of the spot there, and back', () => {
    const map = madeMap();
    const shelf = panels.find(({ id }) => id === 'shelf');
    const glass = panels.find(({ id }) => id === 'glass');
    if (!shelf || !glass) throw new Error('no panels');
    for (const k of [0, 5, map.done.length - 1]) {
      const place = placeOfSpot(map, panels, k);
      const panel = panels.find(
        ({ id }) => id === map.panels.find((g) => k >= g.first && k < g.first + gridSize(g))?.panel,
      );
      expect(place && panel && spotNear(map, panel, place.point)).toBe(k);
    }
    expect(spotNear(map, glass, pointOnPatch(glass.patch, 0.5, 0.5))).toBeNull();
  });
});

describe('the painted part', () => {
  const kit = createKit(createLook());
  const uniformsOf = (mesh: Mesh) =>
    (mesh.material as ShaderMaterial).uniforms as {
      uAtlas: { value: DataTexture | null };
      uRange: { value: Vector2 };
      uLevelCount: { value: number };
    };

  test('paints mountable panels alone and shows its range and lines', () => {
    const part = createMapPart(kit);
    const map = madeMap();
    part.show(painted(map), panels);
    const mesh = part.group.children[0] as Mesh;
    const plots = mesh.geometry.getAttribute('plot');
    const grids = new Set(
      Array.from({ length: plots.count }, (_, i) => `${plots.getZ(i)} × ${plots.getW(i)}`),
    );
    expect(grids).toEqual(new Set(map.panels.map(({ columns, rows }) => `${columns} × ${rows}`)));
    const xs = Array.from({ length: plots.count }, (_, i) =>
      mesh.geometry.getAttribute('position').getX(i),
    );
    // The glass is the wall at X = 0 with corners on both sides: none but shelf and wall are there.
    expect(xs.length).toBeGreaterThan(8);
    expect(uniformsOf(mesh).uRange.value.toArray()).toEqual([0, 100]);
    expect(uniformsOf(mesh).uLevelCount.value).toBe(3);
    expect(part.group.visible).toBe(true);
    part.dispose();
  });

  test('marks the spot pointed at without painting anew', () => {
    const part = createMapPart(kit);
    const map = madeMap();
    const first = painted(map);
    part.show(first, panels);
    const mesh = part.group.children[0] as Mesh;
    const version = uniformsOf(mesh).uAtlas.value?.version;
    expect(part.shown()?.at).toBeNull();
    part.show({ ...first, at: 5 }, panels);
    expect(part.shown()?.at?.point).toEqual(placeOfSpot(map, panels, 5)?.point);
    expect(uniformsOf(mesh).uAtlas.value?.version).toBe(version);
    part.dispose();
  });

  test('fifty maps leave nothing behind, and none is left when the paint is taken off', () => {
    const before = geometriesAlive();
    const part = createMapPart(kit);
    let freed = 0;
    for (let n = 0; n < 50; n++) {
      part.show(painted(madeMap(n % 2 === 0 ? 50 : 40)), panels);
      expect(geometriesAlive()).toBe(before + 1);
      const atlas = uniformsOf(part.group.children[0] as Mesh).uAtlas.value;
      if (n < 49)
        atlas?.addEventListener('dispose', () => {
          freed += 1;
        });
    }
    expect(freed).toBe(49);
    part.show(null, panels);
    expect(geometriesAlive()).toBe(before);
    expect(uniformsOf(part.group.children[0] as Mesh).uAtlas.value).toBeNull();
    expect(part.shown()).toBeNull();
    expect(part.group.visible).toBe(false);
    part.dispose();
  });
});
