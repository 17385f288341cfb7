import { describe, expect, it } from 'vitest';
import { type Box, type LabelWant, placeLabel } from '../../src/scene/place-label';

const SHEET = { width: 600, height: 400 };
const want = (more: Partial<LabelWant> = {}): LabelWant => ({
  id: 'w',
  kind: 'speaker',
  text: 'L tweeter',
  x: 300,
  y: 200,
  hidden: false,
  gap: 12,
  weight: 60,
  ...more,
});
const size = () => ({ width: 80, height: 18, stood: 0 });
const inside = (box: Box | null) =>
  box !== null && box.left >= 0 && box.top >= 0 && box.right <= 600 && box.bottom <= 400;
const apart = (a: Box, b: Box) =>
  a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;

describe('words on the sheet', () => {
  it('never lie on each other: ten at one mark', () => {
    const taken: Box[] = [];
    for (let i = 0; i < 10; i++) {
      const box = placeLabel(want(), size(), taken, SHEET);
      if (!box) continue;
      for (const other of taken) expect(apart(box, other)).toBe(true);
      taken.push(box);
    }
    expect(taken.length).toBeGreaterThan(3);
    expect(placeLabel(want(), size(), taken, SHEET)).toBeNull();
  });

  it('stay on the sheet in its corners', () => {
    for (const [x, y] of [
      [2, 2],
      [598, 2],
      [2, 398],
      [598, 398],
    ] as const)
      expect(inside(placeLabel(want({ x, y }), size(), [], SHEET))).toBe(true);
  });

  it('that must be seen stay on the sheet even where nothing is free', () => {
    const full = [{ left: 0, top: 0, right: 600, bottom: 400 }];
    expect(inside(placeLabel(want({ weight: 120, x: 599 }), size(), full, SHEET))).toBe(true);
    expect(placeLabel(want({ weight: 60 }), size(), full, SHEET)).toBeNull();
  });

  it('stay where they stood as long as that is free, so that nothing jumps', () => {
    const label = size();
    const right = placeLabel(want(), label, [], SHEET) as Box;
    const other = placeLabel(want(), label, [right], SHEET) as Box;
    expect(other).not.toEqual(right);
    expect(placeLabel(want(), label, [], SHEET)).toEqual(other);
  });

  it('of the line looked at stand beside it', () => {
    const box = placeLabel(want({ kind: 'length', beside: true }), size(), [], SHEET) as Box;
    expect(box.left > 300 || box.right < 300 || box.top > 200 || box.bottom < 200).toBe(true);
  });

  it('of a ray stand past its end as seen from the head', () => {
    const from = { x: 300, y: 300 };
    const box = placeLabel(want({ kind: 'octave', from, gap: 4 }), size(), [], SHEET) as Box;
    expect(box.bottom).toBeLessThan(200);
    expect((box.left + box.right) / 2).toBe(300);
  });
});
