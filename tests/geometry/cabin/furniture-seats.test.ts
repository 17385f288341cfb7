import { describe, expect, test } from 'vitest';
import { buildSeatFurniture } from '../../../src/geometry/cabin/furniture';
import { mirrorObstacle } from '../../../src/geometry/cabin/mirror';
import type { Obstacle, Seat } from '../../../src/geometry/cabin/model';
import { placeSeats } from '../../../src/geometry/cabin/seats';
import { getTemplate, TEMPLATES, type TemplateData } from '../../../src/geometry/cabin/templates';
import type { SeatInput, Side } from '../../../src/geometry/input';
import { sub, type Vec3 } from '../../../src/geometry/vector';
import { clearance, isFiniteShape, isWatertight, volume } from './solids';

const estate = getTemplate('estate') as TemplateData;
/** One of each kind, where the question is about how bodies are made, not about their sizes. */
const KINDS = ['estate', 'roadster', 'panel-van'].map((id) => getTemplate(id) as TemplateData);

function seated(template: TemplateData, inputs: SeatInput[] = [], wheelSide: Side = 'left') {
  const answer = placeSeats(template.dimensions, template, wheelSide, inputs);
  if (!answer.ok) throw new Error(answer.error.message);
  const { seats } = answer;
  return { seats, obstacles: buildSeatFurniture(template.dimensions, seats, template, wheelSide) };
}
const find = (obstacles: readonly Obstacle[], id: string): Obstacle => {
  const found = obstacles.find((o) => o.id === id);
  if (!found) throw new Error(`no obstacle ${id}`);
  return found;
};
const points = (o: Obstacle): readonly Vec3[] =>
  o.shape.shape === 'mesh'
    ? o.shape.vertices
    : o.shape.shape === 'capsule'
      ? [o.shape.from, o.shape.to]
      : [];

describe('seats and the people in them', () => {
  test('every seat has a restraint, and the people who are listed sit there with all their parts', () => {
    const { obstacles } = seated(estate, [{ id: 'front-left' }]);
    const ids = obstacles.map((o) => o.id);
    for (const id of [
      'seat-front-left',
      'seat-front-right',
      'seat-rear-left',
      'head-restraint-front-left',
      'head-restraint-rear-right',
      'occupant-front-left-head',
      'occupant-front-left-torso',
      'occupant-front-left-left-thigh',
      'occupant-front-left-right-shin',
      'occupant-front-left-left-foot',
      'occupant-front-left-right-arm',
    ]) {
      expect(ids).toContain(id);
    }
    expect(ids.filter((id) => id.startsWith('occupant-front-right'))).toEqual([]);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('a two-seater has no bench', () => {
    const { obstacles } = seated(getTemplate('roadster') as TemplateData);
    expect(obstacles.some((o) => o.id.includes('rear'))).toBe(false);
  });

  test('every body is closed and right side out', () => {
    for (const template of KINDS) {
      for (const o of seated(template).obstacles) {
        const meshes = [o.shape, ...(o.drawn ?? []).map((d) => d.mesh)];
        for (const mesh of meshes) {
          if (mesh.shape !== 'mesh') continue;
          expect(isWatertight(mesh), `${template.id} ${o.id} is watertight`).toBe(true);
          expect(volume(mesh), `${template.id} ${o.id} has its outside outside`).toBeGreaterThan(0);
        }
      }
    }
  });

  test('a body that sound meets has at most about 500 triangles', () => {
    for (const o of seated(estate).obstacles) {
      if (o.shape.shape === 'mesh') {
        expect(o.shape.triangles.length, o.id).toBeLessThan(510);
      }
    }
  });

  test("a head has about a person's volume, 3 to 5 litres", () => {
    const head = find(seated(estate).obstacles, 'occupant-front-left-head').drawn?.[0]?.mesh;
    if (!head) throw new Error('expected a drawn head');
    expect(volume(head) / 1e6).toBeGreaterThan(3);
    expect(volume(head) / 1e6).toBeLessThan(5);
  });
});

describe('ears and bodies', () => {
  const skipped = (o: Obstacle, seat: Seat) =>
    o.occupant?.seat === seat.id && o.occupant.part !== 'legs';

  test('no body touches an ear, whoever sits how', () => {
    for (const template of TEMPLATES) {
      for (const input of [
        {},
        { slide: 60, reclineDeg: 8 },
        { slide: -60, reclineDeg: -6, occupantHeight: 1950 },
        { occupantHeight: 1500, reclineDeg: 20 },
      ]) {
        const ids = ['front-left', 'front-right', ...(template.rows > 1 ? ['rear-left'] : [])];
        const { seats, obstacles } = seated(
          template,
          ids.map((id) => ({ id, ...input })),
        );
        for (const seat of seats) {
          for (const ear of [seat.ears.left, seat.ears.right, seat.head]) {
            for (const o of obstacles) {
              if (skipped(o, seat)) continue;
              expect(
                clearance(o.shape, ear),
                `${template.id} ${o.id} at ${seat.id}`,
              ).toBeGreaterThan(15);
            }
          }
        }
      }
    }
  });

  test('ears stay outside even their own head, at common spacings', () => {
    for (const earSpacing of [130, 152, 175]) {
      const { seats, obstacles } = seated(estate, [{ id: 'front-left', earSpacing }]);
      const head = find(obstacles, 'occupant-front-left-head');
      for (const ear of Object.values((seats[0] as Seat).ears)) {
        expect(clearance(head.shape, ear)).toBeGreaterThan(1);
      }
    }
  });

  test('there is air between the back of the head and the restraint, but less than 140 mm', () => {
    for (const template of TEMPLATES) {
      const { seats, obstacles } = seated(template);
      for (const seat of seats) {
        const pad = find(obstacles, `head-restraint-${seat.id}`);
        const nearest = Math.min(...points(pad).map((p) => p[0]));
        const gap = nearest - (seat.head[0] + 90);
        expect(gap, `${template.id} ${seat.id}`).toBeGreaterThan(25);
        expect(gap, `${template.id} ${seat.id}`).toBeLessThan(140);
      }
    }
  });
});

describe('moving a seat', () => {
  const moved = (input: Omit<SeatInput, 'id'>) => seated(estate, [{ id: 'front-left', ...input }]);

  test('sliding takes seat, restraint, head and torso along without bending them', () => {
    const [a, b] = [moved({}).obstacles, moved({ slide: 55 }).obstacles];
    for (const id of [
      'seat-front-left',
      'head-restraint-front-left',
      'occupant-front-left-head',
      'occupant-front-left-torso',
    ]) {
      const [p, q] = [points(find(a, id)), points(find(b, id))];
      expect(q.length).toBe(p.length);
      for (const [i, v] of p.entries()) {
        const step = sub(q[i] as Vec3, v);
        expect(Math.abs(step[0] - 55) + Math.abs(step[1]) + Math.abs(step[2])).toBeLessThan(1e-6);
      }
    }
  });

  test('the feet stay at the pedals while the knees give', () => {
    const [a, b] = [moved({}).obstacles, moved({ slide: 30 }).obstacles];
    const [shinA, shinB] = [a, b].map((o) => find(o, 'occupant-front-left-left-shin').shape);
    if (shinA?.shape !== 'capsule' || shinB?.shape !== 'capsule') throw new Error('capsules');
    expect(shinB.to).toEqual(shinA.to);
    expect(shinB.from[2]).toBeLessThan(shinA.from[2]);
  });

  test('sliding one seat leaves the other as it is', () => {
    const [a, b] = [
      seated(estate),
      seated(estate, [
        { id: 'front-left', slide: 40 },
        { id: 'front-right' },
        { id: 'rear-left' },
        { id: 'rear-right' },
      ]),
    ];
    const other = (o: Obstacle) => o.id.includes('front-right') || o.id.includes('rear');
    expect(b.obstacles.filter(other)).toEqual(a.obstacles.filter(other));
  });

  test('fault 11: odd slides, leans, statures and spacings still give finite closed bodies', () => {
    for (const input of [
      { slide: 5000 },
      { slide: -5000 },
      { reclineDeg: 180 },
      { reclineDeg: -90 },
      { occupantHeight: 0 },
      { occupantHeight: 1e6 },
      { earSpacing: 0 },
      { earSpacing: 1e5, facingDeg: 1e4 },
      { head: [0, 0, 0] as const },
      { head: [850, -370, 265] as const },
    ]) {
      for (const o of moved(input).obstacles) {
        expect(isFiniteShape(o.shape), `${o.id} ${JSON.stringify(input)}`).toBe(true);
        for (const d of o.drawn ?? []) expect(isFiniteShape(d.mesh), o.id).toBe(true);
      }
    }
  });
});

test('right-hand drive has exactly the mirrored bodies', () => {
  for (const template of KINDS) {
    const left = seated(template, [], 'left').obstacles;
    const right = seated(template, [], 'right').obstacles;
    expect(right.length).toBe(left.length);
    for (const o of left) {
      const twin = mirrorObstacle(o);
      expect(find(right, twin.id)).toEqual(twin);
    }
  }
});

describe('a seat drag', () => {
  const dragged = (slide: number) =>
    seated(estate, [
      { id: 'front-left', slide },
      { id: 'front-right' },
      { id: 'rear-left' },
      { id: 'rear-right' },
    ]);

  test('hands back the very same bodies for the places that stayed', () => {
    const [a, b] = [dragged(1).obstacles, dragged(2).obstacles];
    expect(find(b, 'seat-front-right')).toBe(find(a, 'seat-front-right'));
    expect(find(b, 'seat-front-left')).not.toBe(find(a, 'seat-front-left'));
  });

  test('answers the same after a hundred other places as the first time', () => {
    const first = structuredClone(dragged(7).obstacles);
    for (let i = 0; i < 100; i++) dragged(100 + i);
    expect(dragged(7).obstacles).toEqual(first);
  });
});
