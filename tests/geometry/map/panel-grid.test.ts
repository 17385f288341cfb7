import { describe, expect, test } from 'vitest';
import {
  buildCabin,
  distance,
  gridSize,
  gridSpot,
  panelGrid,
  pointOnPatch,
} from '../../../src/geometry';
import { twinSpot } from '../../../src/geometry/map/panel-grid';
import { carPlan } from '../search/stages';

const built = buildCabin(carPlan());
if (!built.ok) throw new Error(built.error.message);
const { panels } = built.cabin;

describe('the grid of a panel', () => {
  test('has neighbours hardly farther apart than the step, everywhere on every panel', () => {
    for (const panel of panels) {
      const grid = panelGrid(panel, 30);
      const at = (k: number) => {
        const { u, v } = gridSpot(grid, k);
        return pointOnPatch(panel.patch, u, v);
      };
      const { columns } = grid;
      let sum = 0;
      let steps = 0;
      for (let k = 0; k < gridSize(grid); k++) {
        if ((k + 1) % columns === 0) continue;
        sum += distance(at(k), at(k + 1));
        steps += 1;
      }
      if (steps > 0) expect(sum / steps).toBeLessThan(30.5);
    }
  });

  test('is the same on either side, and turned round on a panel across the car', () => {
    for (const panel of panels) {
      const twin = panels.find(
        ({ id }) => id === panel.id.replace('left', 'right') && id !== panel.id,
      );
      if (!twin) continue;
      const [a, b] = [panelGrid(panel, 37), panelGrid(twin, 37)];
      expect([b.columns, b.rows]).toEqual([a.columns, a.rows]);
    }
    const grid = { panel: 'dash-top-center', columns: 5, rows: 3 };
    expect([0, 1, 2, 3, 4, 5, 14].map((k) => twinSpot(grid, k))).toEqual([4, 3, 2, 1, 0, 9, 10]);
  });

  test('refuses a step of nothing', () => {
    const [panel] = panels;
    if (!panel) throw new Error('no panel');
    expect(() => panelGrid(panel, 0)).toThrow('expected a step above 0 mm, got 0');
  });
});
