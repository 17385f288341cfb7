import { describe, expect, it } from 'vitest';
import { cross, dot, sub, type Vec3 } from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import { panelBorders, panelGeometry } from '../../src/scene/meshes/panel-mesh';
import { toneNumber } from '../../src/scene/shading/tones';
import { cabinOf } from './cabin';

describe('panels as meshes', () => {
  const { panels } = cabinOf(demoPlan());
  const { geometry, owner } = panelGeometry(panels);
  const position = geometry.getAttribute('position');
  const normal = geometry.getAttribute('normal');
  const tone = geometry.getAttribute('tone');
  const at = (a: typeof position, i: number): Vec3 => [a.getX(i), a.getY(i), a.getZ(i)];

  it('winds every triangle towards the cabin, as its normals point', () => {
    const index = geometry.index;
    expect(index).not.toBeNull();
    let against = 0;
    for (let t = 0; t < owner.length; t++) {
      const [a, b, c] = [0, 1, 2].map((k) => index?.getX(3 * t + k) as number) as [
        number,
        number,
        number,
      ];
      const p = at(position, a);
      const n = cross(sub(at(position, b), p), sub(at(position, c), p));
      if (dot(n, at(normal, a)) <= 0) against++;
    }
    expect(owner.length).toBeGreaterThan(1000);
    expect(against).toBe(0);
  });

  it('gives each triangle back to its own panel, in that panel’s paint', () => {
    const index = geometry.index;
    const painted = new Set<string>();
    for (let t = 0; t < owner.length; t++) {
      const panel = panels[owner[t] as number];
      expect(tone.getX(index?.getX(3 * t) as number)).toBe(toneNumber(panel?.material ?? 'ink'));
      if (panel) painted.add(panel.id);
    }
    expect(painted.size).toBe(panels.length);
  });

  it('draws a border two panels share only once', () => {
    const strokes = panelBorders(panels);
    const ends = strokes.map(({ start, end }) =>
      [start, end]
        .map((p) => p.map(Math.round).join())
        .sort()
        .join('|'),
    );
    expect(new Set(ends).size).toBe(ends.length);
    expect(strokes.some((stroke) => stroke.faces?.length === 2)).toBe(true);
  });
});
