import { describe, expect, it } from 'vitest';
import { detailBox } from '../../src/workbench/dimensions/drawing/detail';
import type { Box, Point } from '../../src/workbench/dimensions/drawing/project';

const cabin: Box = { left: -600, right: 3200, top: -1150, bottom: 0 };
const ASPECT = 420 / 270;

const holds = (box: Box, [x, y]: Point): boolean =>
  x > box.left && x < box.right && y > box.top && y < box.bottom;

describe('the part of the car drawn for a dimension', () => {
  it('has the paper’s proportions and what is measured inside it, wherever that is', () => {
    for (const x of [-600, 0, 1300, 3200]) {
      for (const y of [-1150, -600, 0]) {
        for (const length of [0, 30, 400, 900]) {
          const from: Point = [Math.min(x, 3200 - length), y];
          const to: Point = [Math.min(x, 3200 - length) + length, y];
          const box = detailBox(cabin, from, to, ASPECT);
          expect((box.right - box.left) / (box.bottom - box.top)).toBeCloseTo(ASPECT, 6);
          expect(holds(box, from) && holds(box, to), `${x} ${y} ${length}`).toBe(true);
        }
      }
    }
  });

  it('is near for a pillar and the whole cabin for its length', () => {
    const pillar = detailBox(cabin, [100, -900], [190, -850], ASPECT);
    const whole = detailBox(cabin, [-500, 0], [3000, 0], ASPECT);
    expect(pillar.right - pillar.left).toBeLessThan(1600);
    expect(whole.left).toBeLessThan(cabin.left);
    expect(whole.right).toBeGreaterThan(cabin.right);
  });

  it('keeps a tall measure whole as well', () => {
    const box = detailBox(cabin, [900, 0], [900, -1100], ASPECT);
    expect(holds(box, [900, 0]) && holds(box, [900, -1100])).toBe(true);
  });
});
