import { describe, expect, test } from 'vitest';
import { buildCabin, TEMPLATES } from '../../src/geometry';
import { bodyFor, GENERIC_BODIES, genericBody, ROLE_HABITS } from '../../src/plan/bodies';
import { ROLES } from '../../src/plan/names';

describe('generic bodies', () => {
  test('every body fits its own ranges, its flange covers its cut-out', () => {
    for (const generic of GENERIC_BODIES) {
      const body = bodyFor(generic);
      expect(body.flange).toBeGreaterThan(body.cutout);
      expect([...generic.cutout].sort((a, b) => a - b)).toEqual(generic.cutout);
      expect([...generic.depth].sort((a, b) => a - b)).toEqual(generic.depth);
      expect(generic.diaphragm).toBeLessThan(body.flange);
    }
  });

  test('a 165 fails a 60 mm pocket by 4 mm, and its cut-out range holds 142 mm', () => {
    const generic = genericBody(165);
    if (!generic) throw new Error('there is a 165');
    expect(bodyFor(generic).depth - 60).toBe(4);
    expect(generic.cutout[0]).toBeLessThan(142);
    expect(generic.cutout[1]).toBeGreaterThan(142);
  });

  test('every role has sizes there are and a band that runs upward', () => {
    for (const role of ROLES) {
      const habit = ROLE_HABITS[role];
      for (const size of habit.sizes) expect(genericBody(size)?.id).toBe(size);
      expect(habit.bandHz[0]).toBeLessThan(habit.bandHz[1]);
    }
  });

  test.each(TEMPLATES.map(({ id }) => [id]))('a %s has a usual spot for a front stage', (id) => {
    const answer = buildCabin({ cabin: { template: id, wheelSide: 'left' } });
    if (!answer.ok) throw new Error(answer.error.message);
    const mountable = answer.cabin.panels.filter((p) => p.mountable).map((p) => p.id);
    for (const role of ['tweeter', 'midrange', 'midbass', 'wideband'] as const) {
      const spots = ROLE_HABITS[role].spots.map(({ panel }) => `${panel}-left`);
      expect(
        spots.some((spot) => mountable.includes(spot)),
        role,
      ).toBe(true);
    }
  });
});
