import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { type PillarView, pillarViews, type SpeakerInput } from '../../../src/geometry';
import { ViewDrawing } from '../../../src/workbench/answers/view/view-drawing';
import { viewPlan } from '../../../src/workbench/answers/view/view-plan';
import { viewSentence, viewsCompared } from '../../../src/workbench/fit/view-words';
import { cabinOf, placedIn, planOf } from '../../geometry/fit/boards';

const view = (change: Partial<PillarView> = {}): PillarView => ({
  side: 'left',
  panel: 'pillar-left',
  driver: true,
  beforeDeg: 5.2,
  afterDeg: 6.6,
  addedDeg: 1.4,
  overLimit: true,
  speakers: ['a'],
  unknown: [],
  lines: null,
  linesBefore: null,
  sections: null,
  ...change,
});

describe('what a pillar hides, in words', () => {
  it('tells before, after and the difference, and the limit', () => {
    expect(viewSentence(view())).toBe(
      'The pod on the left A-pillar hides 1.4° more: 5.2° before, 6.6° after. ' +
        'UN R125 allows 6°: this is over it.',
    );
    const within = { afterDeg: 5.5, addedDeg: 0.3, overLimit: false };
    expect(viewSentence(view({ ...within, speakers: ['a', 'b'] }))).toBe(
      'The pods on the left A-pillar hide 0.3° more: 5.2° before, 5.5° after. UN R125 allows 6°.',
    );
  });

  it('says when nothing is added, nothing stands there, or a body is not known', () => {
    const same = { afterDeg: 5.2, addedDeg: 0, overLimit: false };
    expect(viewSentence(view(same))).toContain('hides nothing more: 5.2° before and after.');
    expect(viewSentence(view({ ...same, speakers: [] }))).toContain('Nothing stands on the left');
    expect(viewSentence(view({ ...same, unknown: ['a'] }))).toMatch(
      /^Without what stands on it.*counts as nothing\.$/,
    );
    const none = { beforeDeg: null, afterDeg: null, addedDeg: null, reason: 'no eyes' };
    expect(viewSentence(view(none))).toBe('What the left A-pillar hides is not known: no eyes.');
  });

  it('compares the two pillars', () => {
    const right = view({ side: 'right', driver: false, afterDeg: 3 });
    expect(viewsCompared([view(), right])).toBe(
      'The left one, at the wheel’s side, hides more than the right one: 6.6° against 3.0°.',
    );
    expect(viewsCompared([view(), view({ side: 'right' })])).toBe('Both pillars hide 6.6°.');
    expect(viewsCompared([view({ afterDeg: null }), right])).toBeNull();
  });
});

describe('the drawing of the view', () => {
  const cabin = cabinOf({ ...planOf({}, []), cabin: { template: 'estate', wheelSide: 'left' } });
  const pods = (['left', 'right'] as const).map(
    (side): SpeakerInput => ({
      id: side,
      role: 'midrange',
      side,
      mount: { panel: `pillar-${side}`, u: 0.4, v: 0.55, standoff: 30 },
      body: { flange: 90, cutout: 80, depth: 30 },
    }),
  );
  const views = pillarViews({
    cabin,
    option: { id: 'a', speakers: pods },
    placed: placedIn(cabin, pods),
  });

  it('keeps lengths and angles as they are, and the left of the driver above', () => {
    for (const one of views) {
      const plan = viewPlan(one);
      if (!plan) throw new Error('nothing to draw');
      const { eye, otherEye, outer, inner, innerEnd, parallelEnd } = plan.after;
      const apart = Math.hypot(eye[0] - otherEye[0], eye[1] - otherEye[1]);
      expect(Math.abs(apart - 65)).toBeLessThan(1e-9);
      // The left eye is drawn above the right one, whichever of them looks past the outer edge.
      expect(one.side === 'left' ? eye[1] < otherEye[1] : eye[1] > otherEye[1]).toBe(true);
      const slope = ([x, y]: readonly [number, number]) =>
        Math.atan2(y - otherEye[1], x - otherEye[0]);
      const read = Math.abs(slope(innerEnd) - slope(parallelEnd)) * (180 / Math.PI);
      expect(Math.abs(read - (one.afterDeg ?? -1))).toBeLessThan(1e-9);
      for (const [x] of [outer, inner]) expect(x).toBeGreaterThan(100);
      expect(plan.pods).toHaveLength(1);
    }
  });

  it('keeps everything on the sheet, and carries its number as text', () => {
    const [left] = views;
    if (!left) throw new Error('no view');
    const plan = viewPlan(left);
    const { x = 0, y = 0, width = 0, height = 0 } = plan?.box ?? {};
    for (const [px, py] of [...(plan?.pillar ?? []), ...(plan?.pods.flat() ?? [])]) {
      expect(px > x && px < x + width && py > y && py < y + height).toBe(true);
    }
    const text = renderToStaticMarkup(<ViewDrawing view={left} width={400} />);
    expect(text).toContain(`>${left.afterDeg?.toFixed(1)}°<`);
    expect(text).not.toContain('NaN');
  });
});
