/** The car drawn flat, for browsers that cannot draw in 3D. */
import fc from 'fast-check';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { windowOf } from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import { FlatHalf } from '../../src/scene/flat/flat-half';
import { flatCar, flatPlan } from '../../src/scene/flat/flat-plan';
import { labelRows } from '../../src/scene/flat/label-rows';
import { stageOf } from '../geometry/study/stages';

const stage = stageOf(demoPlan());
const seat = stage.cabin.seats.find(({ id }) => id === 'front-left') ?? null;
const car = flatCar(stage.cabin, seat);
const waves = stage.result.placed.map(({ position }) => ({ centre: position }));
const window = windowOf(car, seat, [{ waves }]);
const flat = (width: number, height: number) =>
  flatPlan(car, window, seat, stage, { width, height });

describe('one option from above', () => {
  test.each([
    [664, 400],
    [332, 320],
    [390, 260],
  ])(
    'lies with its speakers, its listener and all labels on a sheet of %i × %i',
    (width, height) => {
      const { speakers, head } = flat(width, height);
      expect(speakers).toHaveLength(6);
      expect(head).not.toBeNull();
      for (const { at, way, label } of speakers) {
        for (const [x, y] of [at, ...way]) {
          expect(x).toBeGreaterThan(0);
          expect(x).toBeLessThan(width);
          expect(y).toBeGreaterThan(0);
          expect(y).toBeLessThan(height);
        }
        expect(label.y).toBeGreaterThan(0);
        expect(label.y).toBeLessThan(height);
        // Words have at least the room left for them beside the car.
        const room = label.side === 'left' ? label.x : width - label.x;
        expect(room).toBeGreaterThanOrEqual(width < 520 ? 86 : 130);
      }
    },
  );

  test('keeps the car’s proportions: what is nearer in the car is nearer on the sheet', () => {
    const { speakers, toSheet } = flat(664, 400);
    const a = toSheet([0, 0]);
    const b = toSheet([1000, 0]);
    const c = toSheet([0, 1000]);
    expect(Math.abs(b[0] - a[0] - (c[1] - a[1]))).toBeLessThan(1e-9);
    const side = (id: string) => speakers.find(({ speaker }) => speaker.id === id)?.label.side;
    expect(side('tweeter-left')).toBe('left');
    expect(side('tweeter-right')).toBe('right');
  });

  test('says for every speaker its name, its way and whether that is free', () => {
    const rect = { left: 0, top: 0, width: 664, height: 400 };
    const html = renderToStaticMarkup(<FlatHalf plan={flat(664, 400)} rect={rect} />);
    for (const speaker of ['L tweeter', 'R tweeter', 'L mid', 'R mid', 'L midbass', 'R midbass'])
      expect(html).toContain(`>${speaker}<`);
    for (const { path, line } of stage.result.seats[0]?.arrivals ?? []) {
      const word = { clear: '', grazing: ', near miss', blocked: ', blocked' }[line];
      expect(html).toContain(`>${path.toFixed(0)} mm${word}<`);
    }
    expect(html).not.toContain('NaN');
  });

  test('without a seat there is a car with speakers and no ways', () => {
    const bare = flatCar(stage.cabin, null);
    const plan = flatPlan(bare, windowOf(bare, null, [{ waves }]), null, stage, {
      width: 664,
      height: 400,
    });
    expect(plan.head).toBeNull();
    expect(plan.speakers.every(({ arrival, way }) => arrival === null && way.length === 0)).toBe(
      true,
    );
  });
});

describe('labels in a column', () => {
  test('stay where they are wanted when there is room', () => {
    expect(labelRows([50, 120, 300], 34, 0, 400)).toEqual([50, 120, 300]);
    expect(labelRows([], 34, 0, 400)).toEqual([]);
  });

  test('push each other apart, and back from the foot of the sheet', () => {
    expect(labelRows([100, 100, 100], 30, 0, 400)).toEqual([100, 130, 160]);
    expect(labelRows([395, 396], 30, 0, 400)).toEqual([355, 385]);
  });

  test('never overlap, leave the sheet or change places, however many there are', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 400 }), { maxLength: 30 }), (places) => {
        const wanted = [...places].sort((a, b) => a - b);
        const rows = labelRows(wanted, 34, 0, 400);
        const step = Math.min(34, 400 / Math.max(1, wanted.length));
        for (const [i, row] of rows.entries()) {
          expect(row).toBeGreaterThanOrEqual(step / 2 - 1e-9);
          expect(row).toBeLessThanOrEqual(400 - step / 2 + 1e-9);
          if (i > 0) expect(row - (rows[i - 1] ?? 0)).toBeGreaterThanOrEqual(step - 1e-9);
        }
      }),
    );
  });
});
