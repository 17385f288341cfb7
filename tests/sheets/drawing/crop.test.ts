import { expect, test } from 'vitest';
import { demoPlan } from '../../../src/plan/demo';
import { cropOf } from '../../../src/sheets/drawing/crop';
import { drawCar } from '../../../src/sheets/drawing/draw-car';
import { factsOfPlan } from '../mark-out/papers';

test.each(['left', 'right'] as const)(
  'a subwoofer on the parcel shelf, behind the last head, is on the drawings, wheel on the %s',
  (wheelSide) => {
    const demo = demoPlan();
    const [option] = demo.options;
    if (!option) throw new Error('the demo has no option');
    const mount = { panel: 'parcel-shelf', u: 0.5, v: 0.6, standoff: 0 };
    const speakers = [...option.speakers, { id: 'sub', role: 'subwoofer' as const, mount }];
    const facts = factsOfPlan({
      ...demo,
      cabin: { ...demo.cabin, wheelSide },
      options: [{ ...option, speakers }],
    });
    const sub = facts.result.placed.find(({ speaker }) => speaker === 'sub');
    if (!sub) throw new Error('the subwoofer stands nowhere');
    for (const view of ['above', 'side', 'behind'] as const) {
      const drawing = drawCar(facts.cabin, view, 'front');
      const { left, right, top, bottom } = cropOf(facts.cabin, drawing, facts.result.placed);
      const [x, y] = drawing.camera.project(sub.position);
      expect(x, view).toBeGreaterThan(left);
      expect(x, view).toBeLessThan(right);
      expect(y, view).toBeGreaterThan(top);
      expect(y, view).toBeLessThan(bottom);
      // Without it the drawing ends before it: nothing tells there, and the rest is larger.
      const without = cropOf(facts.cabin, drawing, []);
      expect(view === 'behind' ? without.bottom < y : without.right < x, view).toBe(true);
    }
  },
);
