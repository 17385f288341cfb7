/** Rings in the drawing: where the engine has them, moved in place, and thrown away. */
import { produce } from 'immer';
import type { Mesh } from 'three';
import { describe, expect, test } from 'vitest';
import {
  evaluatePlan,
  inputOfSpeaker,
  meshVolume,
  placeOfSpeaker,
  ringInCar,
  ringOfSpeaker,
} from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import { mountSpeaker, setRing } from '../../src/plan/edits';
import type { Plan } from '../../src/plan/types';
import { geometriesAlive } from '../../src/scene/parts/bin';
import { createKit } from '../../src/scene/parts/kit';
import { createRingsPart } from '../../src/scene/parts/rings-part';
import { createLook } from '../../src/scene/shading/look';

const onRings = (standoff = 8): Plan =>
  produce(demoPlan(), (draft) => {
    setRing('a', 'midbass-left', {})(draft);
    mountSpeaker('a', 'midbass-left', { panel: 'door-lower-left', u: 0.12, v: 0.3, standoff })(
      draft,
    );
  });

function standing(plan: Plan) {
  const answer = evaluatePlan(plan);
  if (!answer.ok) throw new Error(answer.error.message);
  return (plan.options[0]?.speakers ?? []).flatMap((speaker) => {
    const placed = answer.options[0]?.placed.find((one) => one.speaker === speaker.id);
    return placed ? [{ speaker, placed }] : [];
  });
}

describe('rings in the drawing', () => {
  test('are drawn for those that stand on one, and taken away with it', () => {
    const part = createRingsPart(createKit(createLook()));
    part.show(standing(demoPlan()));
    expect(part.shown()).toBe(0);
    part.show(standing(onRings()));
    expect(part.shown()).toBe(2);
    // Too little stand-off: there is no such ring.
    part.show(standing(onRings(1)));
    expect(part.shown()).toBe(0);
    part.dispose();
  });

  test('stand where the engine has them, with its volume', () => {
    const found = standing(onRings()).find(({ speaker }) => speaker.id === 'midbass-left');
    if (!found) throw new Error('no midbass');
    const { speaker, placed } = found;
    const [answer, input, place] = [
      ringOfSpeaker(speaker, placed),
      inputOfSpeaker(speaker),
      placeOfSpeaker(speaker, placed),
    ];
    if (!answer?.ok || !input || !place) throw new Error('no ring');
    const mesh = ringInCar(input, place, answer.ring, 48);
    // A circle of 48 sides has 0.29 % less area.
    expect(Math.abs(meshVolume(mesh) / answer.ring.volume - 1)).toBeLessThan(5e-3);
    expect(meshVolume(ringInCar(input, place, answer.ring))).toBeCloseTo(
      meshVolume(answer.ring.mesh),
      3,
    );
  });

  test('are moved in place: the same geometry, elsewhere', () => {
    const part = createRingsPart(createKit(createLook()));
    part.show(standing(onRings(8)));
    const meshes = () => part.group.children.flatMap((one) => one.children) as Mesh[];
    const before = meshes().map(({ geometry }) => geometry);
    const height = () => {
      meshes()[0]?.geometry.computeBoundingBox();
      const box = meshes()[0]?.geometry.boundingBox;
      return box ? box.max.y - box.min.y : 0;
    };
    const low = height();
    part.show(standing(onRings(20)));
    expect(meshes().map(({ geometry }) => geometry)).toEqual(before);
    expect(height() - low).toBeGreaterThan(10);
    part.dispose();
  });

  test('fifty changes leave no geometry behind', () => {
    const before = geometriesAlive();
    const part = createRingsPart(createKit(createLook()));
    const plans = [
      onRings(8),
      produce(onRings(12), setRing('a', 'midbass-left', { seat: 'sunk' })),
      demoPlan(),
    ].map(standing);
    for (let n = 0; n < 50; n++) part.show(plans[n % 3] ?? []);
    part.dispose();
    expect(geometriesAlive()).toBe(before);
  });
});
