import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { buildCabin, TEMPLATES } from '../../src/geometry';
import { TapeDrawing } from '../../src/workbench/dimensions/drawing/tape-drawing';
import { groupsOf } from '../../src/workbench/dimensions/groups';
import { showDimension } from '../../src/workbench/dimensions/show-dimension';
import { silhouetteOf } from '../../src/workbench/start/silhouettes';

describe('where to hold the tape', () => {
  for (const { id, name } of TEMPLATES) {
    it(`is drawn for every dimension of the body style “${name}”, on either drive side`, () => {
      for (const wheelSide of ['left', 'right'] as const) {
        const answer = buildCabin({ cabin: { template: id, wheelSide } });
        if (!answer.ok) throw new Error(answer.error.message);
        for (const info of groupsOf(id).flatMap((group) => group.dimensions)) {
          const value = showDimension(info, answer.cabin.dimensions[info.id] ?? 0, 'mm');
          const svg = renderToStaticMarkup(
            <TapeDrawing
              cabin={answer.cabin}
              dimension={info.id}
              name={info.label}
              value={value}
              unit={info.unit}
            />,
          );
          // The listener is measured standing, outside of the car.
          if (info.id === 'occupantHeight') {
            expect(svg).toBe('');
            continue;
          }
          expect(svg, info.id).toContain(`>${value}</text>`);
          expect(svg, info.id).not.toMatch(/NaN|Infinity/);
          const marks = svg.slice(svg.indexOf('class="tape"'));
          const [x = -1, y = -1] = (/<text[^>]* x="([-\d.]+)" y="([-\d.]+)"/.exec(marks) ?? [])
            .slice(1)
            .map(Number);
          expect(x > 0 && x < 420 && y > 0 && y < 270, `${info.id} at ${x}, ${y}`).toBe(true);
          for (const [, cx, cy] of marks.matchAll(/cx="([-\d.]+)" cy="([-\d.]+)"/g)) {
            const inside = Number(cx) >= 0 && Number(cx) <= 420 && Number(cy) >= 0;
            expect(inside && Number(cy) <= 270, `${info.id} end at ${cx}, ${cy}`).toBe(true);
          }
        }
      }
    });
  }
});

describe('the body styles from the side', () => {
  it('are drawn, each unlike every other', () => {
    const outlines = TEMPLATES.map(({ id }) => JSON.stringify(silhouetteOf(id)));
    for (const outline of outlines) expect(outline.length).toBeGreaterThan(1000);
    expect(new Set(outlines).size).toBe(TEMPLATES.length);
  });
});
