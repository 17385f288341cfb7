import { describe, expect, it } from 'vitest';
import {
  type PillarView,
  pillarViews,
  type SightLines,
  type SpeakerInput,
} from '../../../src/geometry';
import { cabinOf, placedIn, planOf } from './boards';

const cabin = cabinOf({ ...planOf({}, []), cabin: { template: 'estate', wheelSide: 'left' } });
const pod = (
  side: 'left' | 'right',
  body = { flange: 90, cutout: 80, depth: 30 },
): SpeakerInput => ({
  id: `pod-${side}`,
  role: 'midrange',
  side,
  mount: { panel: `pillar-${side}`, u: 0.4, v: 0.55, standoff: 30 },
  aim: { kind: 'normal' },
  body,
});

function views(speakers: SpeakerInput[]): PillarView[] {
  return pillarViews({ cabin, option: { id: 'a', speakers }, placed: placedIn(cabin, speakers) });
}

/** The angle between the two lines in plan, as a protractor on the drawing would read it. */
function read({ eyes, outer, inner }: SightLines, side: 'left' | 'right'): number {
  const other = side === 'left' ? 'right' : 'left';
  const way = (from: readonly number[], to: readonly number[]) =>
    Math.atan2((to[1] as number) - (from[1] as number), (from[0] as number) - (to[0] as number));
  const turn = way(eyes[other], inner) - way(eyes[side], outer);
  return (Math.max(0, side === 'left' ? turn : -turn) * 180) / Math.PI;
}

describe('what the drawing of a pillar’s view is made from', () => {
  const both = views([pod('left'), pod('right')]);

  it('reads the same angles on the lines as are told, with the pod and without', () => {
    for (const view of both) {
      if (!view.lines || !view.linesBefore) throw new Error(view.reason ?? 'no lines');
      expect(Math.abs(read(view.lines, view.side) - (view.afterDeg ?? -1))).toBeLessThan(1e-9);
      expect(Math.abs(read(view.linesBefore, view.side) - (view.beforeDeg ?? -1))).toBeLessThan(
        1e-9,
      );
      expect(view.addedDeg).toBeGreaterThan(0.5);
    }
  });

  it('has the lines touch the pillar or the pod', () => {
    for (const { lines, linesBefore, sections } of both) {
      const pillar = [...(sections?.outer ?? []), ...(sections?.inner ?? [])];
      const all = [...pillar, ...(sections?.pods.flatMap(({ points }) => points) ?? [])];
      const touches = (points: typeof all, q: readonly number[] | undefined) =>
        points.some(
          ([x, y]) => Math.abs(x - (q?.[0] ?? NaN)) + Math.abs(y - (q?.[1] ?? NaN)) < 1e-9,
        );
      for (const end of ['outer', 'inner'] as const) {
        expect(touches(pillar, linesBefore?.[end])).toBe(true);
        expect(touches(all, lines?.[end])).toBe(true);
      }
    }
  });

  it('says which pod is which, and has none for a speaker without a body', () => {
    expect(both.map(({ sections }) => sections?.pods.map(({ speaker }) => speaker))).toEqual([
      ['pod-left'],
      ['pod-right'],
    ]);
    const { body: _, ...bare } = pod('left');
    const [left] = views([bare]);
    expect(left?.sections?.pods).toEqual([]);
    expect(left?.unknown).toEqual(['pod-left']);
  });
});
