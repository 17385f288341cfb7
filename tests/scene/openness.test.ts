import { describe, expect, it } from 'vitest';
import { panelGeometry } from '../../src/scene/meshes/panel-mesh';
import { paintOpenness } from '../../src/scene/shading/openness';
import { boardPlan, cabinOf } from './cabin';

describe('soft shade', () => {
  const { panels } = cabinOf(boardPlan());
  const { geometry } = panelGeometry(panels.filter(({ id }) => id !== 'glass'));
  const placed = { geometry, at: [0, 0, 0] as const };
  const steps = [...paintOpenness([placed], [placed])].length;
  const position = geometry.getAttribute('position');
  const open = geometry.getAttribute('openness');
  const at = (x: number, y: number, z: number) => {
    for (let i = 0; i < position.count; i++) {
      const near = Math.hypot(position.getX(i) - x, position.getY(i) - y, position.getZ(i) - z);
      if (near < 40) return open.getX(i);
    }
    throw new Error(`no vertex near ${x}, ${y}, ${z}`);
  };

  it('is darker in the corner than out in the open', () => {
    expect(at(200, -600, 700)).toBeLessThan(0.75);
    expect(at(200, 600, 700)).toBeGreaterThan(0.95);
    expect(at(200, -600, 700)).toBeLessThan(at(200, -300, 700));
  });

  it('stays between closed and open everywhere', () => {
    for (let i = 0; i < open.count; i++) {
      expect(open.getX(i)).toBeGreaterThanOrEqual(0);
      expect(open.getX(i)).toBeLessThanOrEqual(1);
    }
  });

  it('comes in slices, so that no frame waits for it', () => {
    expect(steps).toBeGreaterThan(3);
  });
});
