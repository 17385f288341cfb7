import { PerspectiveCamera, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { direction, type Vec3 } from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import { toThree } from '../../src/scene/axes';
import { extentOf } from '../../src/scene/views/extent';
import { fitPoints } from '../../src/scene/views/fit';
import { poseFor } from '../../src/scene/views/poses';
import { boardPlan, cabinOf } from './cabin';

const SHEETS = [
  { width: 1280, height: 800 },
  { width: 768, height: 400 },
  { width: 600, height: 900 },
];
const VIEWS = ['free', 'plan', 'side', 'front'] as const;

function seen(pose: { eye: Vec3; target: Vec3; fovDeg: number }, aspect: number) {
  const camera = new PerspectiveCamera(pose.fovDeg, aspect, 1, 1e6);
  camera.position.copy(toThree(pose.eye, new Vector3()));
  camera.lookAt(toThree(pose.target, new Vector3()));
  camera.updateMatrixWorld();
  return (p: Vec3) => toThree(p, new Vector3()).project(camera);
}

describe('views', () => {
  const cabin = cabinOf(demoPlan());
  const extent = extentOf(cabin);
  const seat = cabin.seats.find(({ id }) => id === 'front-left') ?? null;

  for (const { width, height } of SHEETS) {
    for (const view of VIEWS) {
      it(`holds the car on a sheet of ${width} × ${height}: ${view}`, () => {
        const aspect = width / height;
        const pose = poseFor(view, { ...extent, aspect, seat, wheelSide: 'left' });
        const project = seen(pose, aspect);
        const points = view === 'free' ? extent.stage : extent.car;
        const at = points.map(project);
        const reach = Math.max(...at.flatMap((p) => [Math.abs(p.x), Math.abs(p.y)]));
        expect(reach).toBeLessThanOrEqual(1);
        // Fitted, not merely far away: it touches the margin.
        expect(reach).toBeGreaterThan(0.9);
      });
    }

    it(`shows both front pillars from the driver's eyes on ${width} × ${height}`, () => {
      const aspect = width / height;
      const project = seen(poseFor('seat', { ...extent, aspect, seat, wheelSide: 'left' }), aspect);
      for (const id of ['pillar-left', 'pillar-right']) {
        const foot = cabin.panels.find((panel) => panel.id === id)?.patch.control[1] as Vec3;
        const p = project(foot);
        // Upright sheets cannot hold both without a fish eye; wide ones must.
        if (aspect > 1.5) expect(Math.abs(p.x)).toBeLessThan(1);
        expect(p.z).toBeLessThan(1);
      }
    });
  }

  it('has the front of the car on the left from the side, and on the left or top from above', () => {
    const nose: Vec3 = [-500, 0, 500];
    const tail: Vec3 = [2500, 0, 500];
    const side = seen(poseFor('side', { ...extent, aspect: 1.6, seat, wheelSide: 'left' }), 1.6);
    expect(side(nose).x).toBeLessThan(side(tail).x);
    const wide = seen(poseFor('plan', { ...extent, aspect: 1.6, seat, wheelSide: 'left' }), 1.6);
    expect(wide(nose).x).toBeLessThan(wide(tail).x);
    const tall = seen(poseFor('plan', { ...extent, aspect: 0.7, seat, wheelSide: 'left' }), 0.7);
    expect(tall(nose).y).toBeGreaterThan(tall(tail).y);
    expect(tall([500, -400, 500]).x).toBeLessThan(tall([500, 400, 500]).x);
  });

  it('stands on the passenger side in the free view, on either drive side', () => {
    for (const wheelSide of ['left', 'right'] as const) {
      const { eye } = poseFor('free', { ...extent, aspect: 1.6, seat, wheelSide });
      expect(Math.sign(eye[1])).toBe(wheelSide === 'left' ? 1 : -1);
    }
  });

  it('holds the front row in the free view, and the rear one when somebody there is listening', () => {
    const rear = extentOf(cabin, 'rear-left');
    const headX = (id: string) => cabin.seats.find((s) => s.id === id)?.head[0] ?? Number.NaN;
    expect(extent.back).toBeGreaterThan(headX('front-left'));
    expect(extent.back).toBeLessThan(headX('rear-left'));
    expect(rear.back).toBeGreaterThan(headX('rear-left'));
    expect(extentOf(cabin, 'front-right').back).toBe(extent.back);
  });

  it('stands somewhere finite for a cabin without panels, seats or anything', () => {
    const plan = { ...boardPlan(), seats: [], obstacles: [], options: [] };
    const bare = cabinOf({ ...plan, cabin: { template: 'none', wheelSide: 'left' } });
    const empty = extentOf(bare);
    for (const view of [...VIEWS, 'seat'] as const) {
      const pose = poseFor(view, { ...empty, aspect: 1.6, seat: null, wheelSide: 'left' });
      expect([...pose.eye, ...pose.target, pose.fovDeg, empty.back].every(Number.isFinite)).toBe(
        true,
      );
    }
  });
});

describe('fitPoints', () => {
  it('centres a single point', () => {
    const out = direction([1, 1, 1]) as Vec3;
    const fit = fitPoints([[10, 20, 30]], out, 30, 1.5);
    const project = seen(
      {
        eye: fit.target.map((x, k) => x + fit.distance * (out[k] as number)) as unknown as Vec3,
        target: fit.target,
        fovDeg: 30,
      },
      1.5,
    );
    const p = project([10, 20, 30]);
    expect(Math.abs(p.x)).toBeLessThan(1e-9);
    expect(Math.abs(p.y)).toBeLessThan(1e-9);
  });
});
