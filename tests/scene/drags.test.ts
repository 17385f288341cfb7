import { describe, expect, it } from 'vitest';
import { direction, type Panel, pointOnPatch, sub, type Vec3 } from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import type { Plan } from '../../src/plan/types';
import { aimOfSpeaker } from '../../src/scene/drag/aim-drag';
import { type Drag, type DragInput, runDrag } from '../../src/scene/drag/drag';
import { obstacleInCar } from '../../src/scene/drag/obstacle-drag';
import { seatAlongRails } from '../../src/scene/drag/seat-drag';
import { nearestSpot, speakerAlongPanels, speakerInSpace } from '../../src/scene/drag/speaker-drag';
import { panelGeometry } from '../../src/scene/meshes/panel-mesh';
import type { Ray } from '../../src/scene/pick/ray';
import { surfaceCaster } from '../../src/scene/pick/surface-caster';
import { createPlanStore, type Recipe } from '../../src/store/plan-store';
import { boardPlan, cabinOf, panelOf } from './cabin';

const ray = (origin: Vec3, through: Vec3): Ray => ({
  origin,
  direction: direction(sub(through, origin)) as Vec3,
});
const input = (sight: Ray, more: Partial<DragInput> = {}): DragInput => ({
  ray: sight,
  vertical: false,
  head: null,
  ...more,
});

function casts(panels: readonly Panel[]) {
  const { geometry, owner } = panelGeometry(panels);
  const caster = surfaceCaster(geometry, true);
  return (sight: Ray) =>
    [caster.first(sight), caster.firstBack(sight)].flatMap((hit) => {
      const panel = hit && panels[owner[hit.triangle] as number];
      return hit && panel ? [{ panel, point: hit.point }] : [];
    });
}

function drive(plan: Plan, drag: Drag, sights: readonly DragInput[]) {
  const store = createPlanStore(plan);
  const run = runDrag(drag, store);
  for (const sight of sights) run?.move(sight);
  return { store, run };
}

const retitle: Recipe = (draft) => {
  draft.title = 'moved';
};

describe('a drag', () => {
  const still: Drag = { label: 'rename', move: () => retitle };
  const anywhere = input(ray([0, 0, 0], [1, 0, 0]));

  it('is one undo step however often it moved', () => {
    const { store, run } = drive(boardPlan(), still, [anywhere, anywhere, anywhere]);
    run?.commit();
    expect(store.getState().past.map(({ label }) => label)).toEqual(['rename']);
    expect(store.getState().plan.title).toBe('moved');
    store.undo();
    expect(store.getState().plan).toEqual(boardPlan());
  });

  it('cut short leaves the plan and the undo list as they were', () => {
    const { store, run } = drive(boardPlan(), still, [anywhere]);
    expect(store.shown().title).toBe('moved');
    run?.cancel();
    expect(store.shown()).toEqual(boardPlan());
    expect(store.getState().past).toHaveLength(0);
    // What the hand still does afterwards changes nothing.
    run?.move(anywhere);
    run?.commit();
    expect(store.shown()).toEqual(boardPlan());
  });

  it('does not start on a plan that may only be looked at', () => {
    const store = createPlanStore(boardPlan());
    store.open(boardPlan(), 'made by a newer version');
    expect(runDrag(still, store)).toBeNull();
  });

  it('gives way when an undo or another gesture ends it', () => {
    const { store, run } = drive(boardPlan(), still, [anywhere]);
    store.undo();
    expect(run?.running()).toBe(false);
    run?.move(anywhere);
    expect(store.shown()).toEqual(boardPlan());
  });
});

describe('a speaker along panels', () => {
  const plan = boardPlan();
  const cabin = cabinOf(plan);
  const mount = { panel: 'shelf', u: 0.5, v: 0.5, standoff: 12 };
  const start = (from = mount) =>
    speakerAlongPanels({
      optionId: 'a',
      speakerId: 's',
      name: 'tweeter',
      mount: from,
      panels: cabin.panels,
      cast: casts(cabin.panels),
    });
  const spotAfter = (drag: Drag, sights: readonly DragInput[]) =>
    drive(plan, drag, sights).store.shown().options[0]?.speakers[0]?.mount;

  it('goes exactly where the line of sight meets the panel, and keeps its stand-off', () => {
    const target = pointOnPatch(panelOf(cabin, 'shelf').patch, 0.3, 0.8);
    const spot = spotAfter(start(), [input(ray([1500, 100, 1600], target))]);
    expect(spot?.panel).toBe('shelf');
    expect(spot?.u).toBeCloseTo(0.3, 4);
    expect(spot?.v).toBeCloseTo(0.8, 4);
    expect(spot?.standoff).toBe(12);
  });

  it('glides from one panel to the next', () => {
    const eye: Vec3 = [1500, 300, 1300];
    const wall = panelOf(cabin, 'wall-left').patch;
    const shelf = panelOf(cabin, 'shelf').patch;
    const sights = [
      input(ray(eye, pointOnPatch(shelf, 0.5, 0.2))),
      input(ray(eye, pointOnPatch(shelf, 0.5, 0.02))),
      input(ray(eye, pointOnPatch(wall, 0.5, 0.1))),
      input(ray(eye, pointOnPatch(wall, 0.6, 0.5))),
    ];
    const spot = spotAfter(start(), sights);
    expect(spot?.panel).toBe('wall-left');
    expect(spot?.u).toBeCloseTo(0.6, 4);
    expect(spot?.v).toBeCloseTo(0.5, 4);
  });

  it('over a panel nothing can be mounted on, waits at the nearest place that will do', () => {
    const spot = spotAfter(start(), [input(ray([1500, 0, 900], [0, 50, 760]))]);
    expect(spot?.panel).toBe('shelf');
    expect(spot?.u).toBeCloseTo(0, 6);
    expect(spot?.v).toBeCloseTo(650 / 1200, 3);
  });

  it('cannot leave the panels, wherever the hand goes', () => {
    for (let i = 0; i < 60; i++) {
      const t = (2 * Math.PI * i) / 60;
      const away: Vec3 = [
        1500 + 3000 * Math.cos(t),
        4000 * Math.sin(t),
        900 + 3000 * Math.sin(2 * t),
      ];
      const spot = spotAfter(start(), [input(ray([1500, 0, 1000], away))]);
      expect(['shelf', 'wall-left']).toContain(spot?.panel);
      for (const x of [spot?.u ?? -1, spot?.v ?? -1]) {
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x).toBeLessThanOrEqual(1);
      }
    }
  });

  it('stays on the near side the cutaway looks through, not on the far side behind it', () => {
    // Seen from the left, through the back of the left wall.
    const eye: Vec3 = [200, -3000, 1000];
    const wall = panelOf(cabin, 'wall-left').patch;
    const from = { panel: 'wall-left', u: 0.5, v: 0.5, standoff: 12 };
    const spot = spotAfter(start(from), [input(ray(eye, pointOnPatch(wall, 0.6, 0.4)))]);
    expect(spot?.panel).toBe('wall-left');
    expect(spot?.u).toBeCloseTo(0.6, 4);
    expect(spot?.v).toBeCloseTo(0.4, 4);
  });

  it('holds on to its panel until another is clearly nearer', () => {
    const mountable = cabin.panels.filter((panel) => panel.mountable);
    const nearEdge: Vec3 = [200, -595, 712];
    expect(nearestSpot(mountable, nearEdge, 'shelf')?.panel.id).toBe('shelf');
    expect(nearestSpot(mountable, nearEdge, 'wall-left')?.panel.id).toBe('wall-left');
    expect(nearestSpot(mountable, [200, -595, 800], 'shelf')?.panel.id).toBe('wall-left');
  });

  it('takes its tied twin along as a mirror image, in a real cabin', () => {
    const demo = demoPlan();
    const model = cabinOf(demo);
    const option = demo.options[0];
    const left = option?.speakers.find(({ id }) => id === 'tweeter-left');
    if (!option || !left?.mount) throw new Error('the demo has no mounted left tweeter');
    const drag = speakerAlongPanels({
      optionId: option.id,
      speakerId: left.id,
      name: 'left tweeter',
      mount: left.mount,
      panels: model.panels,
      cast: casts(model.panels),
    });
    const target = pointOnPatch(panelOf(model, 'dash-top-left').patch, 0.4, 0.5);
    const head = model.seats[0]?.head as Vec3;
    const { store } = drive(demo, drag, [input(ray(head, target))]);
    const [a, b] = ['tweeter-left', 'tweeter-right'].map(
      (id) => store.shown().options[0]?.speakers.find((speaker) => speaker.id === id)?.mount,
    );
    expect(a?.panel).toBe('dash-top-left');
    expect(b).toEqual({ ...a, panel: 'dash-top-right' });
  });
});

describe('a speaker at a free point', () => {
  it('moves in the plane that faces the eye', () => {
    const drag = speakerInSpace({
      optionId: 'a',
      speakerId: 'free',
      name: 'mid',
      position: [200, 300, 800],
      facing: [1, 0, 0],
    });
    const { store } = drive(boardPlan(), drag, [input(ray([1200, 300, 800], [200, 350, 750]))]);
    expect(store.shown().options[0]?.speakers[1]?.position).toEqual([200, 350, 750]);
  });
});

describe('a speaker’s aim', () => {
  const base = {
    optionId: 'a',
    speakerId: 's',
    name: 'tweeter',
    position: [200, 0, 712] as Vec3,
    tip: [300, 0, 712] as Vec3,
    meet: () => [900, 100, 900] as Vec3,
  };
  const aimAfter = (more: Partial<DragInput>, meet = base.meet as () => Vec3 | null) =>
    drive(boardPlan(), aimOfSpeaker({ ...base, meet }), [
      input(ray([1500, 0, 900], [300, 20, 712]), more),
    ]).store.shown().options[0]?.speakers[0]?.aim;

  it('is at the seat whose head the hand is over', () => {
    expect(aimAfter({ head: 'front-left' })).toEqual({ kind: 'seat', seat: 'front-left' });
  });

  it('is at the point under the hand elsewhere', () => {
    expect(aimAfter({})).toEqual({ kind: 'point', point: [900, 100, 900] });
  });

  it('follows the hand through empty space, where nothing is under it', () => {
    const aim = aimAfter({}, () => null);
    if (aim?.kind !== 'point') throw new Error('expected a point');
    expect(aim.point[1]).toBeGreaterThan(10);
    expect(aim.point[1]).toBeLessThan(30);
  });
});

describe('a seat on its rails', () => {
  const demo = demoPlan();
  const cabin = cabinOf(demo);
  const seat = cabin.seats.find(({ id }) => id === 'front-left');
  if (!seat?.slideRange) throw new Error('the demo’s front left seat does not slide');
  const [front, back] = seat.slideRange;
  const eye: Vec3 = [seat.head[0], -4000, 1200];
  const slidTo = (x: number) => {
    const drag = seatAlongRails({
      seatId: seat.id,
      allSeatIds: cabin.seats.map(({ id }) => id),
      name: 'front left seat',
      grip: seat.head,
      ray: ray(eye, seat.head),
      slide: 0,
      slideRange: [front, back],
    });
    if (!drag) throw new Error('expected a drag');
    const to: Vec3 = [seat.head[0] + x, seat.head[1], seat.head[2]];
    return drive(demo, drag, [input(ray(eye, to))]).store.shown();
  };
  const slideOf = (plan: Plan) => plan.seats?.find(({ id }) => id === 'front-left')?.slide;

  it('slides as far as the hand goes, and the engine agrees', () => {
    const wanted = Math.round(back / 2 || front / 2);
    const plan = slidTo(wanted);
    expect(slideOf(plan)).toBeCloseTo(wanted, 0);
    const moved = cabinOf(plan).seats.find(({ id }) => id === 'front-left');
    expect((moved?.head[0] ?? 0) - seat.head[0]).toBeCloseTo(slideOf(plan) ?? 0, 6);
  });

  it('stops at both ends of its rails', () => {
    expect(slideOf(slidTo(-3000))).toBe(Math.round(front));
    expect(slideOf(slidTo(3000))).toBe(Math.round(back));
  });

  it('cannot be judged from straight ahead, so it does not start', () => {
    const ahead: Vec3 = [-4000, seat.head[1], seat.head[2]];
    expect(
      seatAlongRails({
        seatId: seat.id,
        allSeatIds: [],
        name: 'seat',
        grip: seat.head,
        ray: ray(ahead, seat.head),
        slide: 0,
        slideRange: [front, back],
      }),
    ).toBeNull();
  });
});

describe('a free obstacle', () => {
  const grip: Vec3 = [700, 200, 500];
  const eye: Vec3 = [3000, 1500, 3000];
  const centreAfter = (from: Vec3, sights: readonly DragInput[]) => {
    const drag = obstacleInCar({ obstacleId: 'box', name: 'box', grip, ray: ray(from, grip) });
    const box = drive(boardPlan(), drag, sights).store.shown().obstacles?.[0];
    return box?.shape === 'box' ? box.center : null;
  };

  it('moves in the horizontal plane', () => {
    expect(centreAfter(eye, [input(ray(eye, [800, 150, 500]))])).toEqual([800, 150, 400]);
  });

  it('goes straight up and down with Shift, keeping what it moved before', () => {
    const sights = [
      input(ray(eye, [800, 150, 500])),
      input(ray(eye, [800, 150, 500]), { vertical: true }),
      input(ray(eye, [800, 150, 620]), { vertical: true }),
    ];
    expect(centreAfter(eye, sights)).toEqual([800, 150, 520]);
  });

  it('slides along the sheet where the floor is seen edge-on', () => {
    const aside: Vec3 = [700, -4000, 500];
    expect(centreAfter(aside, [input(ray(aside, [850, 200, 560]))])).toEqual([850, 200, 400]);
  });

  it('does not run off to the horizon', () => {
    const centre = centreAfter(eye, [input(ray(eye, [-90_000, -60_000, 2990]))]);
    expect(centre).toEqual([700, 200, 400]);
  });
});
