import { describe, expect, it } from 'vitest';
import { distance, pointOnPatch } from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import { arrowWays, nudged } from '../../src/scene/drag/nudge';
import { boardPlan, cabinOf, panelOf } from './cabin';

describe('small moves by key', () => {
  const shelf = panelOf(cabinOf(boardPlan()), 'shelf');
  const mount = { panel: 'shelf', u: 0.5, v: 0.5 };

  it('moves by the millimetres asked for, on a flat panel exactly', () => {
    const next = nudged(shelf, mount, 'v', 5);
    expect(next.v - mount.v).toBeCloseTo(5 / 1200, 9);
    expect(next.u).toBe(0.5);
  });

  it('moves by about as much on every mountable panel of a car, or stops at its edge', () => {
    for (const panel of cabinOf(demoPlan()).panels.filter((one) => one.mountable)) {
      for (const axis of ['u', 'v'] as const) {
        const here = { panel: panel.id, u: 0.5, v: 0.5 };
        const next = nudged(panel, here, axis, 5);
        const gone = distance(
          pointOnPatch(panel.patch, here.u, here.v),
          pointOnPatch(panel.patch, next.u, next.v),
        );
        expect(Math.abs(gone - 5), `${panel.id} along ${axis}`).toBeLessThan(0.5);
      }
    }
  });

  it('stops at the edge', () => {
    expect(nudged(shelf, { ...mount, u: 0.999 }, 'u', 25).u).toBe(1);
    expect(nudged(shelf, { ...mount, u: 0.001 }, 'u', -25).u).toBe(0);
  });

  it('takes the arrow the way it points on the sheet', () => {
    // A sheet on which u runs to the left and v downward.
    const ways = arrowWays(shelf, mount, ([x, y]) => ({ x: -x, y }));
    expect(ways.left).toEqual({ axis: 'u', sign: 1 });
    expect(ways.right).toEqual({ axis: 'u', sign: -1 });
    expect(ways.down).toEqual({ axis: 'v', sign: 1 });
    expect(ways.up).toEqual({ axis: 'v', sign: -1 });
    // The same panel turned a quarter round: the keys change axes.
    const turned = arrowWays(shelf, mount, ([x, y]) => ({ x: y, y: -x }));
    expect(turned.right).toEqual({ axis: 'v', sign: 1 });
    expect(turned.up).toEqual({ axis: 'u', sign: 1 });
  });

  it('never gives two keys the same axis by accident', () => {
    for (let i = 0; i < 24; i++) {
      const t = (2 * Math.PI * i) / 24;
      const ways = arrowWays(shelf, mount, ([x, y]) => ({
        x: x * Math.cos(t) - y * Math.sin(t),
        y: x * Math.sin(t) + y * Math.cos(t),
      }));
      expect(ways.left.axis).not.toBe(ways.up.axis);
      expect(ways.left.sign).toBe(-ways.right.sign);
      expect(ways.up.sign).toBe(-ways.down.sign);
    }
  });
});
