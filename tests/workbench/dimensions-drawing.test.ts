import { describe, expect, it } from 'vitest';
import { convexHull } from '../../src/workbench/dimensions/drawing/hull';
import {
  boxOf,
  fitToPaper,
  type Point,
  pathThrough,
  project,
} from '../../src/workbench/dimensions/drawing/project';
import { shapePoints } from '../../src/workbench/dimensions/drawing/shape-points';
import { angleMarks, onPaper, tapeMarks } from '../../src/workbench/dimensions/drawing/tape';

const numbers = (d: string): number[] => (d.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);

describe('the car on paper', () => {
  it('has its nose to the left and its roof up from the side', () => {
    expect(project('side', [-900, -700, 1200])).toEqual([-900, -1200]);
  });

  it('has its right side up in plan, so that plan and side view stand in line', () => {
    expect(project('plan', [500, 300, 0])).toEqual([500, -300]);
  });

  it('has its left on the left, looking forward from inside', () => {
    expect(project('front', [0, -300, 700])).toEqual([-300, -700]);
  });

  it('fills the width it is given, margins kept', () => {
    const box = boxOf([
      [0, 0],
      [2000, 500],
    ]);
    if (!box) throw new Error('no box');
    const paper = fitToPaper(box, 220, 400, 10);
    expect(paper.at([0, 0])).toEqual([10, 10]);
    expect(paper.at([2000, 500])).toEqual([210, 60]);
    expect(paper.height).toBe(70);
  });

  it('is held to the height where it would be too tall, and centred', () => {
    const paper = fitToPaper({ left: 0, right: 100, top: 0, bottom: 1000 }, 200, 120, 10);
    expect(paper.height).toBe(120);
    expect(paper.at([50, 0])).toEqual([100, 10]);
  });

  it('has no box when there is nothing to draw', () => {
    expect(boxOf([])).toBeNull();
    expect(boxOf([[Number.NaN, 0]])).toBeNull();
  });
});

describe('outlines', () => {
  it('keeps the corners of a square and drops what is inside or on an edge', () => {
    const square: Point[] = [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ];
    const hull = convexHull([...square, [5, 5], [5, 0], [2, 7]]);
    expect(hull).toHaveLength(4);
    for (const corner of square) expect(hull).toContainEqual(corner);
  });

  it('has every point of a seeded cloud inside or on it', () => {
    let seed = 7;
    const random = () => {
      seed = (seed * 1103515245 + 12345) % 2147483648;
      return seed / 2147483648;
    };
    const cloud = Array.from({ length: 200 }, (): Point => [random() * 100, random() * 100]);
    const hull = convexHull(cloud);
    for (const [x, y] of cloud) {
      for (const [i, a] of hull.entries()) {
        const b = hull[(i + 1) % hull.length] as Point;
        const side = (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]);
        expect(side).toBeGreaterThan(-1e-6);
      }
    }
  });

  it('turns a box about its upright axis to the right-handed side', () => {
    const points = shapePoints({
      shape: 'box',
      center: [0, 0, 0],
      size: [200, 20, 20],
      turnDeg: [0, 0, 90],
    });
    expect(Math.max(...points.map(([, y]) => y))).toBeCloseTo(100, 6);
    expect(Math.max(...points.map(([x]) => x))).toBeCloseTo(10, 6);
  });

  it('shows a wheel rim at its outer diameter', () => {
    const points = shapePoints({
      shape: 'ring',
      center: [0, 0, 0],
      axis: [1, 0, 0],
      diameter: 340,
      thickness: 32,
    });
    for (const [x, y, z] of points) {
      expect(x).toBeCloseTo(0, 6);
      expect(Math.hypot(y, z)).toBeCloseTo(186, 6);
    }
  });
});

describe('the tape in a drawing', () => {
  it('stands clear of what it measures, on the side away from the car', () => {
    const { line, extensions } = tapeMarks([0, 100], [80, 100], [40, 50], '80 mm');
    const [x1, y1, x2, y2] = numbers(line);
    expect([x1, x2]).toEqual([0, 80]);
    expect(y1).toBe(y2);
    expect(y1).toBeGreaterThan(100);
    // Both extension lines run from the measured point beyond the dimension line.
    for (const d of extensions) expect(numbers(d)[3]).toBeGreaterThan(y1 as number);
  });

  it('has arrowheads with their tips at both ends of the line', () => {
    const { arrows, line } = tapeMarks([0, 100], [80, 100], [40, 50], '80 mm');
    const y = numbers(line)[1];
    expect(numbers(arrows[0] as string).slice(0, 2)).toEqual([0, y]);
    expect(numbers(arrows[1] as string).slice(0, 2)).toEqual([80, y]);
    // The heads lie between the ends where there is room.
    expect(numbers(arrows[0] as string)[2]).toBeGreaterThan(0);
  });

  it('sets the arrows outside where there is no room between', () => {
    const { arrows } = tapeMarks([0, 100], [12, 100], [40, 50], '80 mm');
    expect(numbers(arrows[0] as string)[2]).toBeLessThan(0);
    expect(numbers(arrows[1] as string)[2]).toBeGreaterThan(12);
  });

  it('breaks the line with the value where there is room, and sets it beside where there is not', () => {
    const long = tapeMarks([0, 100], [200, 100], [100, 50], '1430 mm');
    expect(long.label[1]).toBe(numbers(long.line)[1]);
    const short = tapeMarks([0, 100], [60, 100], [30, 50], '1430 mm');
    expect(short.label[1]).toBeGreaterThan((numbers(short.line)[1] as number) + 8);
    // Upright, the line needs no more room than the height of the figures.
    const upright = tapeMarks([0, 0], [0, 60], [50, 30], '1430 mm');
    expect(upright.label[0]).toBe(numbers(upright.line)[0]);
  });

  it('keeps the whole value on the paper', () => {
    expect(onPaper([2, 3], '1350 mm', 420, 270)).toEqual([expect.closeTo(35.1), 13.5]);
    const [x] = onPaper([419, 100], '1350 mm', 420, 270);
    expect(x).toBeCloseTo(420 - 35.1, 6);
    expect(onPaper([200, 100], '1350 mm', 420, 270)).toEqual([200, 100]);
  });

  it('survives a length of nothing', () => {
    const { line } = tapeMarks([5, 5], [5, 5], [0, 0], '80 mm');
    for (const n of numbers(line)) expect(Number.isFinite(n)).toBe(true);
  });

  it('draws a rake of 60° from upright against an upright line', () => {
    const tilt = (60 * Math.PI) / 180;
    const { legs } = angleMarks([0, 0], [Math.sin(tilt) * 100, -Math.cos(tilt) * 100], 60);
    const [, , x, y] = numbers(legs[1]);
    expect(x).toBeCloseTo(0, 6);
    expect(y).toBeLessThan(0);
  });

  it('draws a slope of 30° from the floor against a level line', () => {
    const slope = (30 * Math.PI) / 180;
    const { legs } = angleMarks([0, 0], [Math.cos(slope) * 100, -Math.sin(slope) * 100], 30);
    const [, , x, y] = numbers(legs[1]);
    expect(x).toBeGreaterThan(0);
    expect(y).toBeCloseTo(0, 6);
  });

  it('writes paths with a tenth of a unit and closes them when told', () => {
    expect(
      pathThrough(
        [
          [0.04, 1.26],
          [2, 3],
        ],
        true,
      ),
    ).toBe('M0 1.3L2 3Z');
  });
});
