/** Waves in the drawing: where the sound is, nothing left behind when they are no longer looked at. */
import { Mesh, Vector3 } from 'three';
import { describe, expect, test } from 'vitest';
import { carFromAbove, slowMotion } from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import { geometriesAlive } from '../../src/scene/parts/bin';
import { createKit } from '../../src/scene/parts/kit';
import { createWavesPart } from '../../src/scene/parts/waves-part';
import { createLook } from '../../src/scene/shading/look';
import { createMotionKeeper } from '../../src/scene/waves/keep-motion';
import { waveBounds } from '../../src/scene/waves/wave-bounds';
import { stage as bareStage, stageOf } from '../geometry/study/stages';

const stage = stageOf(demoPlan());
const { cabin } = stage;
const seat = cabin.seats.find(({ id }) => id === 'front-left') ?? null;
const motion = slowMotion(stage, 'front-left', 'none');
const late = slowMotion(stage, 'front-left', 'aligned');

const balls = (part: ReturnType<typeof createWavesPart>) =>
  part.group.children.filter((one): one is Mesh => one instanceof Mesh);

describe('waves in the drawing', () => {
  test('are spheres round every speaker, as large as the sound has come', () => {
    const part = createWavesPart(createKit(createLook()));
    part.show(motion, seat, cabin);
    part.at(0);
    expect(part.drawn().size).toBe(0);
    part.at(1.5);
    expect(part.drawn().size).toBe(6);
    for (const radius of part.drawn().values())
      expect(Math.abs(radius - 1.5 * motion.speed)).toBeLessThan(1e-6);
    for (const { speaker, centre } of motion.waves) {
      const here = balls(part).filter(
        ({ position }) => position.distanceTo(new Vector3(...centre)) < 1e-9,
      );
      expect(here.length, speaker).toBe(2);
    }
    part.dispose();
  });

  test('with delays are there only when their speaker has started', () => {
    const part = createWavesPart(createKit(createLook()));
    part.show(late, seat, cabin);
    part.at(1);
    const started = late.waves.filter(({ start }) => start < 1).map(({ speaker }) => speaker);
    expect(started.length).toBeGreaterThan(0);
    expect(started.length).toBeLessThan(6);
    expect([...part.drawn().keys()].sort()).toEqual([...started].sort());
    part.dispose();
  });

  test('turn faint once what arrives is at the head', () => {
    const kit = createKit(createLook());
    const part = createWavesPart(kit);
    part.show(motion, seat, cabin);
    const [first] = motion.reaches.filter(({ at }) => at === 'head');
    if (!first) throw new Error('nothing arrives');
    const faint = () =>
      balls(part).filter(({ material }) => material === part.look.past.left).length;
    part.at(first.time - 1e-6);
    expect(faint()).toBe(0);
    part.at(first.time);
    expect(faint()).toBe(1);
    part.dispose();
    kit.dispose();
  });

  test('leave no geometry behind after fifty openings, and none while they are closed', () => {
    const before = geometriesAlive();
    const part = createWavesPart(createKit(createLook()));
    const closed = geometriesAlive();
    for (let i = 0; i < 50; i++) {
      part.show(i % 2 ? motion : late, seat, cabin);
      part.at(2);
      expect(geometriesAlive()).toBe(closed + 1);
      part.show(null, null, null);
      expect(geometriesAlive()).toBe(closed);
      expect(part.group.visible).toBe(false);
    }
    part.dispose();
    expect(geometriesAlive()).toBe(before);
  });

  test('make nothing anew while time goes on', () => {
    const part = createWavesPart(createKit(createLook()));
    part.show(motion, seat, cabin);
    const meshes = balls(part);
    const geometries = meshes.map(({ geometry }) => geometry);
    for (let t = 0; t < 4; t += 0.05) {
      part.show(motion, seat, cabin);
      part.at(t);
    }
    expect(balls(part)).toEqual(meshes);
    balls(part).forEach(({ geometry }, i) => {
      expect(geometry).toBe(geometries[i]);
    });
    part.dispose();
  });
});

describe('the bounds of waves', () => {
  const { edges, floor, roof } = waveBounds(cabin);

  test('hold every place of the cabin, and not much more', () => {
    const { outline } = carFromAbove(cabin, 900);
    for (const [x, y] of outline)
      for (const [across, rearward, far] of edges)
        expect(x * across + y * rearward).toBeLessThan(far);
    const widest = Math.max(...outline.map(([x]) => x));
    expect(edges[0]?.[2]).toBeLessThan(widest + 30);
    const heads = cabin.seats.map(({ head }) => head[2]);
    expect(Math.min(...heads)).toBeGreaterThan(floor);
    expect(Math.max(...heads)).toBeLessThan(roof);
  });

  test('are none without a cabin', () => {
    const bare = waveBounds(bareStage([]).cabin);
    expect(bare.edges.every(([, , far]) => far >= 1e6)).toBe(true);
    expect(bare.roof - bare.floor).toBeGreaterThan(1e6);
  });
});

test('a motion is worked out once for each answer, seat and choice of delays', () => {
  const keeper = createMotionKeeper();
  const first = keeper.of(stage, 'front-left', 'none');
  expect(keeper.of({ ...stage }, 'front-left', 'none')).toBe(first);
  expect(keeper.of(stage, 'front-left', 'aligned')).not.toBe(first);
  expect(keeper.of(stage, 'front-right', 'none').seat).toBe('front-right');
});
