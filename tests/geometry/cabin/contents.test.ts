import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DIMENSIONS, type Dimensions } from '../../../src/geometry/cabin/dimensions';
import { buildFurniture } from '../../../src/geometry/cabin/furniture';
import { buildKeepClear } from '../../../src/geometry/cabin/keep-clear';
import { buildReferences } from '../../../src/geometry/cabin/references';
import { placeSeats } from '../../../src/geometry/cabin/seats';
import { buildShell } from '../../../src/geometry/cabin/shell/build-shell';
import { TEMPLATES } from '../../../src/geometry/cabin/templates';
import { buildTrim } from '../../../src/geometry/cabin/trim';
import { isFiniteShape, isWatertight } from './solids';

describe('fault 12: dimensions anywhere in their ranges', () => {
  test('one dimension at an end of its range, or several moved, still furnish a sound cabin', () => {
    let furnished = 0;
    const change = fc.record({
      template: fc.constantFrom(...TEMPLATES),
      wheelSide: fc.constantFrom('left' as const, 'right' as const),
      moved: fc.array(
        fc.tuple(fc.constantFrom(...DIMENSIONS), fc.constantFrom(0, 0.25, 0.5, 0.75, 1)),
        { minLength: 1, maxLength: 3 },
      ),
    });
    fc.assert(
      fc.property(change, ({ template, wheelSide, moved }) => {
        const changed: Record<string, number> = { ...template.dimensions };
        for (const [info, share] of moved)
          changed[info.id] = info.min + share * (info.max - info.min);
        const d = changed as Dimensions;
        const { rows, body } = template;
        const shell = buildShell(d, { rows, wheelSide, thirdSideGlass: body.thirdSideGlass });
        const seated = placeSeats(d, template, wheelSide, []);
        // Dimensions that disagree are the shell's to refuse; without panels the rest must stand.
        const panels = shell.ok ? shell.panels : [];
        if (shell.ok) furnished++;
        if (!seated.ok) throw new Error(seated.error.message);
        const manual = { ...template, manual: true };
        const shapes = [
          ...buildFurniture(d, panels, seated.seats, manual, wheelSide).flatMap((o) => [
            o.shape,
            ...(o.drawn ?? []).map((x) => x.mesh),
          ]),
          ...buildKeepClear(d, panels, seated.seats, manual, wheelSide).map((z) => z.shape),
          ...buildTrim(d, panels, manual, wheelSide).map((x) => x.mesh),
        ];
        for (const shape of shapes) {
          expect(isFiniteShape(shape)).toBe(true);
          if (shape.shape === 'mesh') expect(isWatertight(shape)).toBe(true);
        }
        for (const { point } of buildReferences(d, panels, wheelSide)) {
          expect(point.every(Number.isFinite)).toBe(true);
        }
      }),
      { numRuns: 16 },
    );
    expect(furnished).toBeGreaterThan(2);
  }, 30_000);
});
