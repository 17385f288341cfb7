import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { degrees, dot, type Vec3 } from '../../../src/geometry';
import { aimAt, readyAim } from '../../../src/geometry/map/aim-rule';
import * as any from '../arbitraries';

const NORMAL: Vec3 = [0, 0, 1];
const ready = (rule: Parameters<typeof readyAim>[0]) => {
  const made = readyAim(rule, new Map(), []);
  if ('unknownSeat' in made) throw new Error(made.unknownSeat);
  return made;
};

describe('aiming by a rule', () => {
  test('within the wedge a speaker is aimed as the rule says', () => {
    const aim = ready({ kind: 'point', point: [0, 10, 100], withinDeg: 20 });
    expect(aimAt(aim, 'left', [0, 0, 0], NORMAL)).toEqual({ kind: 'point', point: [0, 10, 100] });
  });

  test('beyond it, by the wedge and no more, towards the target', () => {
    const aim = ready({ kind: 'point', point: [100, 0, 0], withinDeg: 20 });
    const found = aimAt(aim, 'left', [0, 0, 0], NORMAL);
    expect(found.kind).toBe('direction');
    const [x, y, z] = (found as { direction: Vec3 }).direction;
    // sin 20°, cos 20°
    expect(Math.abs(x - 0.3420201433)).toBeLessThan(1e-9);
    expect(y).toBe(0);
    expect(Math.abs(z - 0.9396926208)).toBeLessThan(1e-9);
  });

  test('nothing is ever turned farther than the wedge', () => {
    fc.assert(
      fc.property(any.point, fc.double({ min: 0, max: 90, noNaN: true }), (point, withinDeg) => {
        const aim = ready({ kind: 'point', point, withinDeg });
        const found = aimAt(aim, 'left', [0, 0, 0], NORMAL);
        if (found.kind !== 'direction') return;
        const angle = degrees(Math.acos(Math.min(1, dot(found.direction, NORMAL))));
        expect(angle).toBeLessThan(withinDeg + 1e-5);
      }),
    );
  });

  test('a direction is the left speaker’s, and mirrored for the right one', () => {
    const aim = ready({ kind: 'direction', direction: [1, 2, 3] });
    expect(aim.left).toEqual({ kind: 'direction', direction: [1, 2, 3] });
    expect(aim.right).toEqual({ kind: 'direction', direction: [1, -2, 3] });
  });
});
