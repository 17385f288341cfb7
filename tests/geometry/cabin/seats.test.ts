import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mirrorSeat } from '../../../src/geometry/cabin/mirror';
import type { Seat } from '../../../src/geometry/cabin/model';
import { placeSeats } from '../../../src/geometry/cabin/seats';
import { getTemplate, TEMPLATES, type TemplateData } from '../../../src/geometry/cabin/templates';
import type { SeatInput, Side } from '../../../src/geometry/input';
import { distance, length, sub } from '../../../src/geometry/vector';

const named = (id: string): TemplateData => {
  const template = getTemplate(id);
  if (!template) throw new Error(`no template ${id}`);
  return template;
};
const estate = named('estate');
const roadster = named('roadster');

function seatsOf(template: TemplateData, inputs: SeatInput[], wheelSide: Side = 'left'): Seat[] {
  const answer = placeSeats(template.dimensions, template, wheelSide, inputs);
  if (!answer.ok) throw new Error(answer.error.message);
  return answer.seats;
}
const only = (input: SeatInput, template = estate): Seat => seatsOf(template, [input])[0] as Seat;

describe('which seats a plan has', () => {
  test('no list means every seat of the template, front before rear', () => {
    const four = ['front-left', 'front-right', 'rear-left', 'rear-right'];
    expect(seatsOf(estate, []).map((s) => s.id)).toEqual(four);
    expect(seatsOf(roadster, []).map((s) => s.id)).toEqual(['front-left', 'front-right']);
  });

  test('a list means exactly those seats in its order', () => {
    const ids = seatsOf(estate, [{ id: 'rear-right' }, { id: 'front-left' }]).map((s) => s.id);
    expect(ids).toEqual(['rear-right', 'front-left']);
  });

  test('a rear seat in a roadster is refused with both names and the path', () => {
    const inputs = [{ id: 'front-left' }, { id: 'rear-left' }];
    const answer = placeSeats(roadster.dimensions, roadster, 'left', inputs);
    expect(answer.ok).toBe(false);
    if (answer.ok) return;
    expect(answer.error.path).toBe('seats[1].id');
    expect(answer.error.message).toContain('"rear-left"');
    expect(answer.error.message).toContain('"roadster"');
  });

  test('without a template only heads placed by hand exist', () => {
    const answer = placeSeats(null, null, 'left', [{ id: 'me', head: [900, -370, 890] }]);
    expect(answer).toMatchObject({ ok: true, seats: [{ id: 'me', posture: null }] });
    expect(placeSeats(null, null, 'left', [])).toEqual({ ok: true, seats: [] });
    expect(placeSeats(null, null, 'left', [{ id: 'me' }])).toMatchObject({
      ok: false,
      error: { path: 'seats[0].id' },
    });
  });
});

describe('a head placed by hand', () => {
  test('facing straight ahead has its right ear to the right and its eyes ahead', () => {
    const seat = only({ id: 'front-left', head: [900, -370, 890], earSpacing: 160 });
    expect(seat.ears).toEqual({ left: [900, -450, 890], right: [900, -290, 890] });
    expect(seat.eye).toEqual([815, -370, 907]);
  });

  test('turned 90 degrees to the right looks to the right, right ear rearward', () => {
    const seat = only({ id: 'front-left', head: [900, -370, 890], facingDeg: 90 });
    expect(seat.ears.right[0]).toBeCloseTo(976, 9);
    expect(seat.ears.right[1]).toBeCloseTo(-370, 9);
    expect(seat.eye[1]).toBeCloseTo(-285, 9);
  });

  test('brings the seat along its rails as far as they go', () => {
    const far = only({ id: 'front-left', head: [2000, -370, 890] });
    expect(far.posture?.hip[0]).toBe(estate.dimensions.seatReach);
  });
});

describe('adjusting a seat of the template', () => {
  test('sliding moves head, eye, ears and hip rearward and nothing else', () => {
    fc.assert(
      fc.property(fc.double({ min: -150, max: 150, noNaN: true }), (slide) => {
        const [a, b] = [only({ id: 'front-left' }), only({ id: 'front-left', slide })];
        const pairs = [
          [a.head, b.head],
          [a.eye, b.eye],
          [a.ears.left, b.ears.left],
          [a.ears.right, b.ears.right],
          [a.posture?.hip ?? a.head, b.posture?.hip ?? b.head],
        ] as const;
        for (const [from, to] of pairs)
          expect(length(sub(sub(to, from), [slide, 0, 0]))).toBeLessThan(1e-9);
      }),
    );
  });

  test('a slid seat has that much less left of its rails', () => {
    const [front, rear] = only({ id: 'front-left', slide: 40 }).slideRange ?? [0, 0];
    const [front0, rear0] = only({ id: 'front-left' }).slideRange ?? [0, 0];
    expect(front - front0).toBeCloseTo(-40, 9);
    expect(rear - rear0).toBeCloseTo(-40, 9);
    expect(rear - front).toBeCloseTo(estate.dimensions.seatTravel, 9);
    expect(only({ id: 'rear-left' }).slideRange).toBeNull();
  });

  test('reclining moves the head rearward and down, at the same distance from the hip', () => {
    for (const template of TEMPLATES) {
      for (const id of ['front-left', 'front-right']) {
        let before = only({ id }, template);
        for (let reclineDeg = 2; reclineDeg <= 30; reclineDeg += 2) {
          const after = only({ id, reclineDeg }, template);
          expect(after.head[0]).toBeGreaterThan(before.head[0]);
          expect(after.head[2]).toBeLessThan(before.head[2]);
          const [a, b] = [before.posture?.hip ?? after.head, after.posture?.hip ?? after.head];
          expect(distance(after.head, b) - distance(before.head, a)).toBeCloseTo(0, 9);
          before = after;
        }
      }
    }
  });

  test('a taller person has higher ears, nearly straight up', () => {
    const [a, b] = [only({ id: 'front-left' }), only({ id: 'front-left', occupantHeight: 1855 })];
    const rise = b.head[2] - a.head[2];
    expect(rise).toBeGreaterThan(44);
    expect(rise).toBeLessThan((804 / 1755) * 100);
    expect(Math.abs(b.head[0] - a.head[0])).toBeLessThan(0.2 * rise);
  });
});

describe('left- and right-hand drive', () => {
  test('every seat of one is the exact mirror image of the other car’s', () => {
    for (const template of TEMPLATES) {
      const left = seatsOf(template, [], 'left');
      const right = seatsOf(template, [], 'right');
      for (const seat of left) {
        const twin = mirrorSeat(seat);
        expect(right.find((s) => s.id === twin.id)).toEqual(twin);
      }
    }
  });

  test('with a clutch pedal only the person at the wheel sits farther forward', () => {
    const manual = { ...estate, manual: true };
    const [left, right] = seatsOf(manual, [], 'right');
    expect((left?.head[0] ?? 0) - (right?.head[0] ?? 0)).toBeCloseTo(12.5, 9);
  });
});

test('fault 11: a seat at odd values stays finite', () => {
  const odd = fc.oneof(
    fc.constantFrom(0, -1, 1e6, -1e6, 90, 180, 1e-12),
    fc.double({ min: -1e6, max: 1e6, noNaN: true }),
  );
  fc.assert(
    fc.property(
      odd,
      odd,
      odd,
      odd,
      odd,
      (slide, reclineDeg, occupantHeight, facingDeg, earSpacing) => {
        const input = { slide, reclineDeg, occupantHeight, facingDeg, earSpacing };
        const inputs: SeatInput[] = [
          { id: 'front-left', ...input },
          { id: 'rear-right', ...input },
          { id: 'front-right', ...input, head: [slide, reclineDeg, 0] },
        ];
        for (const seat of seatsOf(estate, inputs)) {
          const numbers = [...seat.head, ...seat.eye, ...seat.ears.left, ...seat.ears.right];
          numbers.push(...(seat.posture?.hip ?? []), ...(seat.slideRange ?? []));
          expect(numbers.every(Number.isFinite)).toBe(true);
        }
      },
    ),
  );
});

test('placing seats changes neither dimensions nor inputs', () => {
  const inputs = Object.freeze([Object.freeze({ id: 'front-left', slide: 20 })]);
  const dimensions = Object.freeze({ ...estate.dimensions });
  expect(placeSeats(dimensions, estate, 'left', inputs).ok).toBe(true);
});
