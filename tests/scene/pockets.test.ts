/** Pockets in the drawing: their meshes, made anew only when they change, and thrown away. */
import type { Group } from 'three';
import { describe, expect, test } from 'vitest';
import { buildCabin, type CabinModel, LITRE, meshVolume, planPocket } from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import { geometriesAlive } from '../../src/scene/parts/bin';
import { createKit } from '../../src/scene/parts/kit';
import { createPocketsPart } from '../../src/scene/parts/pockets-part';
import { createLook } from '../../src/scene/shading/look';

const plan = demoPlan();
const built = buildCabin(plan);
if (!built.ok) throw new Error(built.error.message);
const cabin: CabinModel = built.cabin;
const [option] = plan.options;
if (!option) throw new Error('the demo has no option');
const drawn = (group: Group) => group.children.length;

describe('pockets in the drawing', () => {
  test('each is a hatched volume and its edges, while they are asked for', () => {
    const part = createPocketsPart(createKit(createLook()));
    part.show(cabin, option, false);
    expect([part.shown(), drawn(part.group)]).toEqual([0, 0]);
    part.show(cabin, option, true);
    expect([part.shown(), drawn(part.group)]).toEqual([2, 4]);
    const before = [...part.group.children];
    part.show(cabin, { ...option, title: 'renamed' }, true);
    expect(part.group.children).toEqual(before);
    part.show(cabin, null, true);
    expect(part.shown()).toBe(0);
  });

  test('what is drawn is the airspace the engine measures, before the speaker is taken off', () => {
    for (const pocket of option.pockets ?? []) {
      const answer = planPocket({ cabin, option }, pocket);
      if (!answer.ok) throw new Error(answer.message);
      const { mesh, netLitres, speakerLitres } = answer.pocket;
      expect(Math.abs(meshVolume(mesh) / LITRE - netLitres - speakerLitres)).toBeLessThan(1e-9);
    }
  });

  test('one without an airspace is left out', () => {
    const part = createPocketsPart(createKit(createLook()));
    const pockets = option.pockets?.map((one, i) => (i ? one : { ...one, panel: 'elsewhere' }));
    part.show(cabin, { ...option, pockets }, true);
    expect(part.shown()).toBe(1);
  });

  test('fifty new depths leave no geometry behind', () => {
    const part = createPocketsPart(createKit(createLook()));
    const alive = geometriesAlive();
    for (let i = 0; i < 50; i++) {
      const pockets = option.pockets?.map((one) => ({ ...one, depth: 40 + i }));
      part.show(cabin, { ...option, pockets }, true);
    }
    expect(geometriesAlive()).toBe(alive + 4);
    part.dispose();
    expect(geometriesAlive()).toBe(alive);
  });
});
