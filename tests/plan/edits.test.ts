import { produce } from 'immer';
import { describe, expect, test } from 'vitest';
import {
  distance,
  evaluatePlan,
  mirrorY,
  type SpeakerInput,
  TEMPLATES,
  type Vec3,
} from '../../src/geometry';
import * as edits from '../../src/plan/edits';
import { ROLES } from '../../src/plan/names';
import type { Plan } from '../../src/plan/types';
import { smallPlan } from '../store/fixtures';

const carPlan = (template = 'estate'): Plan => ({
  ...smallPlan('A car'),
  cabin: { template, wheelSide: 'left' },
  seats: [],
  options: [{ id: 'a', title: 'First', speakers: [] }],
});

const changed = (plan: Plan, ...recipes: edits.PlanRecipe[]): Plan =>
  recipes.reduce((so, recipe) => produce(so, recipe), plan);

const speaker = (plan: Plan, id: string, option = 0): SpeakerInput => {
  const found = plan.options[option]?.speakers.find((s) => s.id === id);
  if (!found) throw new Error(`there is no speaker ${id}`);
  return found;
};

const positions = (plan: Plan) => {
  const answer = evaluatePlan(plan);
  if (!answer.ok) throw new Error(`${answer.error.path}: ${answer.error.message}`);
  return new Map(answer.options[0]?.placed.map((p) => [p.speaker, p]));
};

describe('moving speakers', () => {
  test('a tied pair moves as mirror images, in the plan and in space', () => {
    const plan = changed(
      carPlan(),
      edits.addPair('a', 'tweeter', 25),
      edits.mountSpeaker('a', 'tweeter-left', { panel: 'dash-top-left', u: 0.7, v: 0.2 }),
    );
    expect(speaker(plan, 'tweeter-right').mount).toMatchObject({
      panel: 'dash-top-right',
      u: 0.7,
      v: 0.2,
    });
    const placed = positions(plan);
    const [x, y, z] = placed.get('tweeter-left')?.position ?? [];
    expect(placed.get('tweeter-right')?.position).toEqual([x, -(y as number), z]);
  });

  test('moving the right one moves the left one just as well', () => {
    const plan = changed(smallPlan(), edits.placeSpeakerAt('a', 'midrange-right', [100, 500, 700]));
    expect(speaker(plan, 'midrange-left').position).toEqual([100, -500, 700]);
  });

  test('an untied pair moves one at a time, and tying it with a lead mirrors it again', () => {
    const untied = changed(
      smallPlan(),
      edits.tiePair('a', 'midrange', false),
      edits.mountSpeaker('a', 'midrange-left', { panel: 'board-left', u: 0.9, v: 0.1 }),
    );
    expect(speaker(untied, 'midrange-right').mount?.u).toBe(0.3);
    const tied = changed(untied, edits.tiePair('a', 'midrange', true));
    expect(tied.options[0]?.untied).toBeUndefined();
    expect(speaker(tied, 'midrange-right').mount?.u).toBe(0.3);
    const mirrored = changed(untied, edits.tiePair('a', 'midrange', true, 'left'));
    expect(speaker(mirrored, 'midrange-right').mount).toMatchObject({ u: 0.9, v: 0.1 });
  });

  test('a speaker taken off its panel keeps looking the way the panel did', () => {
    const before = positions(smallPlan()).get('midrange-left');
    const plan = changed(smallPlan(), edits.placeSpeakerAt('a', 'midrange-left', [50, -400, 600]));
    const axis = before?.axis as Vec3;
    const now = positions(plan);
    expect(distance(now.get('midrange-left')?.axis as Vec3, axis)).toBeLessThan(1e-12);
    expect(distance(now.get('midrange-right')?.axis as Vec3, mirrorY(axis))).toBeLessThan(1e-12);
  });

  test('the stand-off stays when a speaker glides to another panel', () => {
    const plan = changed(
      smallPlan(),
      edits.mountSpeaker('a', 'midrange-left', { panel: 'board-right', u: 0.5, v: 0.5 }),
    );
    expect(speaker(plan, 'midrange-left').mount?.standoff).toBe(10);
  });

  test('the twin of a speaker on a panel that has no mirror image stands at the mirrored point', () => {
    const lopsided = produce(smallPlan(), (draft) => {
      const board = draft.cabin.panels?.[1];
      if (board) board.corners[0] = [50, 700, 0];
    });
    const plan = changed(
      lopsided,
      edits.mountSpeaker('a', 'midrange-left', { panel: 'board-left', u: 0.5, v: 0.5 }),
    );
    const placed = positions(plan);
    const [x, y, z] = placed.get('midrange-left')?.position ?? [];
    expect(placed.get('midrange-right')?.position).toEqual([x, -(y as number), z]);
  });

  test('a pair aimed by direction or point looks at mirror images, aimed at a seat at that seat', () => {
    const aim = (a: Parameters<typeof edits.aimSpeaker>[2]) =>
      speaker(changed(smallPlan(), edits.aimSpeaker('a', 'midrange-left', a)), 'midrange-right')
        .aim;
    expect(aim({ kind: 'direction', direction: [1, 0.5, 0] })).toEqual({
      kind: 'direction',
      direction: [1, -0.5, 0],
    });
    expect(aim({ kind: 'point', point: [1400, 0, 900] })).toEqual({
      kind: 'point',
      point: [1400, 0, 900],
    });
    expect(aim({ kind: 'seat', seat: 'front-left' })).toEqual({ kind: 'seat', seat: 'front-left' });
  });
});

describe('adding, copying and removing speakers', () => {
  test.each(TEMPLATES.map(({ id }) => [id]))(
    'in a %s every role can be added three times over, and the engine takes the plan',
    (template) => {
      let plan = carPlan(template);
      for (const role of ROLES) {
        for (let i = 0; i < 2; i++) plan = changed(plan, edits.addPair('a', role, 100));
        plan = changed(plan, edits.addSpeaker('a', role, 100));
      }
      expect(plan.options[0]?.speakers).toHaveLength(ROLES.length * 5);
      const placed = positions(plan);
      expect(placed.size).toBe(ROLES.length * 5);
    },
  );

  test('a second pair does not land on the first', () => {
    const plan = changed(
      carPlan(),
      edits.addPair('a', 'tweeter', 25),
      edits.addPair('a', 'tweeter', 25),
    );
    const first = speaker(plan, 'tweeter-left').mount;
    const second = speaker(plan, 'tweeter-2-left').mount;
    expect(second).not.toEqual(first);
    expect(speaker(plan, 'tweeter-2-right').pair).toBe('tweeter-2');
  });

  test('a speaker added on the side a pair lacks completes the pair, mirrored', () => {
    const half = changed(smallPlan(), edits.removeSpeaker('a', 'midrange-right', false));
    const plan = changed(half, edits.addSpeaker('a', 'midrange', 100, 'right'));
    expect(speaker(plan, 'midrange-right')).toMatchObject({
      pair: 'midrange',
      side: 'right',
      mount: { panel: 'board-right', u: 0.3, v: 0.6 },
    });
  });

  test('copying a tied speaker copies the pair, a little way off', () => {
    const plan = changed(smallPlan(), edits.copySpeaker('a', 'midrange-left'));
    expect(speaker(plan, 'midrange-2-left').mount?.u).toBeCloseTo(0.38, 12);
    expect(speaker(plan, 'midrange-2-right').mount).toEqual({
      ...speaker(plan, 'midrange-2-left').mount,
      panel: 'board-right',
    });
    const alone = changed(smallPlan(), edits.copySpeaker('a', 'subwoofer'));
    expect(speaker(alone, 'subwoofer-2').position).toEqual([2040, 0, 200]);
  });

  test('a copy of an untied speaker stands alone, since its pair has its two already', () => {
    const plan = changed(
      smallPlan(),
      edits.tiePair('a', 'midrange', false),
      edits.copySpeaker('a', 'midrange-left'),
    );
    expect(speaker(plan, 'midrange-left-2').pair).toBeUndefined();
    expect(evaluatePlan(plan).ok).toBe(true);
  });

  test('removing with the twin leaves nothing of the pair, not even that it was untied', () => {
    const plan = changed(
      smallPlan(),
      edits.tiePair('a', 'midrange', false),
      edits.removeSpeaker('a', 'midrange-left', true),
    );
    expect(plan.options[0]?.speakers.map(({ id }) => id)).toEqual(['subwoofer']);
    expect(plan.options[0]?.untied).toBeUndefined();
  });

  test('another role goes for both of a pair and renames a pair named after its role', () => {
    const plan = changed(
      smallPlan(),
      edits.tiePair('a', 'midrange', false),
      edits.changeSpeaker('a', 'midrange-left', { role: 'wideband' }),
    );
    expect(speaker(plan, 'midrange-right')).toMatchObject({ role: 'wideband', pair: 'wideband' });
    expect(plan.options[0]?.untied).toEqual(['wideband']);
  });

  test('a diaphragm is set for both of a tied pair and taken away by null', () => {
    const set = changed(smallPlan(), edits.changeSpeaker('a', 'midrange-left', { diaphragm: 80 }));
    expect(speaker(set, 'midrange-right').diaphragm).toBe(80);
    const gone = changed(set, edits.changeSpeaker('a', 'midrange-left', { diaphragm: null }));
    expect(gone).toEqual(smallPlan());
  });
});

describe('options', () => {
  test('a copy stands right after its original under the next free letter', () => {
    const plan = changed(smallPlan(), edits.addOption('Second'));
    expect(edits.nextOptionId(plan)).toBe('c');
    const copied = changed(plan, edits.copyOption('a'));
    expect(copied.options.map(({ id, title }) => [id, title])).toEqual([
      ['a', 'First'],
      ['c', 'First (copy)'],
      ['b', 'Second'],
    ]);
    expect(copied.options[1]?.speakers).toEqual(copied.options[0]?.speakers);
  });

  test('the last option cannot be taken away', () => {
    expect(changed(smallPlan(), edits.removeOption('a'))).toEqual(smallPlan());
    const two = changed(smallPlan(), edits.addOption('Second'), edits.removeOption('a'));
    expect(two.options.map(({ id }) => id)).toEqual(['b']);
  });
});

describe('the cabin', () => {
  test.each(TEMPLATES.map(({ id }) => [id]))(
    'an estate full of speakers becomes a %s that the engine takes',
    (template) => {
      let plan = changed(carPlan(), edits.setAlignment({ seat: 'rear-right' }));
      for (const role of ROLES) plan = changed(plan, edits.addPair('a', role, 100));
      plan = changed(
        plan,
        edits.aimSpeaker('a', 'tweeter-left', { kind: 'seat', seat: 'rear-left' }),
        edits.changeSeat('rear-left', { reclineDeg: 3 }, ['front-left', 'rear-left', 'rear-right']),
        edits.setTemplate(template),
      );
      const answer = evaluatePlan(plan);
      expect(answer.ok || `${answer.error.path}: ${answer.error.message}`).toBe(true);
      expect(plan.options[0]?.speakers).toHaveLength(ROLES.length * 2);
    },
  );

  test('a change of wheel side takes along who drives, and back again is where it began', () => {
    const plan = changed(
      carPlan(),
      edits.addPair('a', 'tweeter', 25),
      edits.aimSpeaker('a', 'tweeter-left', { kind: 'seat', seat: 'front-left' }),
    );
    const right = changed(plan, edits.setWheelSide('right'));
    expect(right.alignment.seat).toBe('front-right');
    expect(speaker(right, 'tweeter-left').aim).toEqual({ kind: 'seat', seat: 'front-right' });
    expect(speaker(right, 'tweeter-left').mount).toEqual(speaker(plan, 'tweeter-left').mount);
    expect(changed(right, edits.setWheelSide('left'))).toEqual(plan);
  });

  test('another body style is mended even while its dimensions disagree', () => {
    const tall = changed(
      carPlan(),
      edits.addPair('a', 'rear-fill', 100),
      edits.setDimension('seatHeight', 470),
      edits.setTemplate('roadster'),
    );
    expect(evaluatePlan(tall).ok).toBe(false);
    const mended = changed(tall, edits.setDimension('seatHeight', null));
    const answer = evaluatePlan(mended);
    expect(answer.ok || `${answer.error.path}: ${answer.error.message}`).toBe(true);
  });

  test('a dimension is set, and null goes back to the body style', () => {
    const set = changed(carPlan(), edits.setDimension('seatHeight', 300));
    expect(set.cabin.dimensions).toEqual({ seatHeight: 300 });
    expect(changed(set, edits.setDimension('seatHeight', null))).toEqual(carPlan());
  });
});

describe('seats, obstacles and the rest', () => {
  const all = ['front-left', 'front-right', 'rear-left', 'rear-right'];

  test('adjusting one seat lists them all first, so none is lost', () => {
    const plan = changed(carPlan(), edits.changeSeat('front-right', { slide: 40 }, all));
    expect(plan.seats).toEqual(
      all.map((id) => (id === 'front-right' ? { id, slide: 40 } : { id })),
    );
    const answer = evaluatePlan(plan);
    expect(answer.ok && answer.cabin.seats.map(({ id }) => id)).toEqual(all);
  });

  test('choosing seats keeps how they stand; all of them unadjusted is an empty list', () => {
    const moved = changed(carPlan(), edits.changeSeat('front-right', { slide: 40 }, all));
    const two = changed(moved, edits.setSeats(['front-right'], all));
    expect(two.seats).toEqual([{ id: 'front-right', slide: 40 }]);
    expect(two.alignment.seat).toBe('front-right');
    expect(
      changed(carPlan(), edits.setSeats(['front-left'], all), edits.setSeats(all, all)).seats,
    ).toEqual([]);
  });

  test('obstacles of every shape are added, moved and removed', () => {
    const shapes = [
      { shape: 'box', center: [0, 0, 0], size: [10, 10, 10] },
      { shape: 'ring', center: [0, 0, 0], axis: [1, 0, 0], diameter: 370, thickness: 30 },
      { shape: 'capsule', from: [0, 0, 0], to: [0, 0, 100], radius: 60 },
      {
        shape: 'mesh',
        vertices: [
          [0, 0, 0],
          [1, 0, 0],
          [0, 1, 0],
        ],
        triangles: [[0, 1, 2]],
      },
    ] as const;
    for (const shape of shapes) {
      const id = edits.nextObstacleId(smallPlan());
      const added = changed(smallPlan(), edits.addObstacle(shape));
      const there = changed(added, edits.moveObstacle(id, [5, -6, 7]));
      expect(there).not.toEqual(added);
      expect(changed(there, edits.moveObstacle(id, [-5, 6, -7]))).toEqual(added);
      expect(changed(added, edits.removeObstacle(id)).obstacles).toEqual([]);
    }
    const box = changed(smallPlan(), edits.addObstacle(shapes[0]), edits.addObstacle(shapes[0]));
    expect(box.obstacles?.map(({ id }) => id)).toEqual(['obstacle', 'obstacle-2']);
  });

  test('an edit of something that is not there changes nothing', () => {
    const recipes = [
      edits.mountSpeaker('x', 'midrange-left', { panel: 'board-left', u: 0, v: 0 }),
      edits.aimSpeaker('a', 'nobody', { kind: 'normal' }),
      edits.addPair('x', 'tweeter', 25),
      edits.copyOption('x'),
      edits.renameOption('x', 'y'),
      edits.tiePair('a', 'nobody', false),
      edits.removeSpeaker('a', 'nobody', true),
      edits.changeObstacle('nobody', { center: [0, 0, 0] }),
      edits.moveObstacle('nobody', [1, 1, 1]),
      edits.removeObstacle('nobody'),
      edits.changeSeat('nobody', { slide: 1 }, ['front-left']),
    ];
    const plan = smallPlan();
    for (const recipe of recipes) expect(changed(plan, recipe)).toBe(plan);
  });
});

describe('what was measured behind panels', () => {
  test('is set, corrected field by field, and forgotten', () => {
    const once = changed(
      carPlan(),
      edits.setPanelMeasure('kick-left', { depthBehind: 72, airspaceBehind: 5.5 }),
      edits.setPanelMeasure('kick-right', { depthBehind: 58 }),
    );
    expect(once.cabin.measured).toEqual({
      'kick-left': { depthBehind: 72, airspaceBehind: 5.5 },
      'kick-right': { depthBehind: 58 },
    });
    const corrected = changed(once, edits.setPanelMeasure('kick-left', { airspaceBehind: null }));
    expect(corrected.cabin.measured?.['kick-left']).toEqual({ depthBehind: 72 });
    const without = changed(
      corrected,
      edits.setPanelMeasure('kick-left', { depthBehind: null }),
      edits.setPanelMeasure('kick-right', null),
    );
    expect(without).toEqual(carPlan());
    expect(changed(once, edits.setPanelMeasure('kick-right', { depthBehind: 58 }))).toBe(once);
    expect(changed(once, edits.setPanelMeasure('floor-left', null))).toBe(once);
  });

  test('takes the place of the usual depth, on that panel alone, and outlives a body style', () => {
    const depths = (plan: Plan) => {
      const answer = evaluatePlan(plan);
      if (!answer.ok) throw new Error(answer.error.message);
      return Object.fromEntries(
        answer.cabin.panels.map((p) => [p.id, [p.depthBehind, p.airspaceBehind]]),
      );
    };
    const plan = carPlan();
    const measured = changed(plan, edits.setPanelMeasure('kick-left', { depthBehind: 72 }));
    const usual = depths(plan);
    expect(depths(measured)).toEqual({ ...usual, 'kick-left': [72, usual['kick-left']?.[1]] });
    const other = changed(measured, edits.setTemplate('city-car'));
    expect(depths(other)['kick-left']?.[0]).toBe(72);
  });
});
