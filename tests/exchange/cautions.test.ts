import { describe, expect, test } from 'vitest';
import { CAUTIONS, cautionsFor, SHORT_CAUTION } from '../../src/exchange';
import { buildCabin, TEMPLATES } from '../../src/geometry';

const idsFor = (panel: string | null) => cautionsFor(panel).map(({ id }) => id);

describe('cautions beside a spot', () => {
  test('the maker’s documents stand beside every spot, a free point too', () => {
    for (const panel of [null, 'pillar-left', 'screen', 'anything'])
      expect(idsFor(panel)[0]).toBe('maker-first');
  });

  test('where nothing is known of what is there, all of them stand: free points, panels of one’s own', () => {
    // "door-pod" is nothing the cabin has: a name typed says nothing of what lies behind.
    for (const panel of [null, 'baffle', 'door-pod', 'my-pillar-left'])
      expect(cautionsFor(panel), `${panel}`).toEqual(CAUTIONS);
  });

  test.each(TEMPLATES.flatMap(({ id }) => [[id, 'left'] as const, [id, 'right'] as const]))(
    'every panel of the %s that can be mounted on, wheel on the %s, is named by some caution',
    (template, wheelSide) => {
      const built = buildCabin({ cabin: { template, wheelSide } });
      if (!built.ok) throw new Error(template);
      const mountable = built.cabin.panels.filter((one) => one.mountable);
      expect(mountable.length).toBeGreaterThan(20);
      for (const { id } of mountable) {
        const own = CAUTIONS.filter(({ panels }) =>
          panels.some((start) => id === start || id.startsWith(`${start}-`)),
        );
        expect(own.length, id).toBeGreaterThan(0);
        const told = cautionsFor(id);
        expect(told, id).toEqual(expect.arrayContaining(own));
        // Not all of them: the cabin knows it.
        expect(told.length, id).toBeLessThan(CAUTIONS.length);
      }
    },
  );

  test('under the dash it warns of pedals and airbags; behind pillars of edges and structure', () => {
    expect(idsFor('under-dash-left')).toEqual(
      expect.arrayContaining(['airbags', 'pedals', 'impact']),
    );
    for (const panel of ['c-pillar-left', 'd-pillar-right'])
      expect(idsFor(panel)).toEqual(expect.arrayContaining(['airbags', 'impact', 'structure']));
  });

  test('a pillar warns of airbags, the view and edges', () => {
    expect(idsFor('pillar-left')).toEqual(expect.arrayContaining(['airbags', 'sight', 'impact']));
  });

  test('a kick panel warns of pedals and of what lies behind, not of the view', () => {
    expect(idsFor('kick-right')).toEqual(expect.arrayContaining(['pedals', 'behind']));
    expect(idsFor('kick-right')).not.toContain('sight');
  });

  test('a B-pillar is not taken for an A-pillar’s view of the road', () => {
    expect(idsFor('b-pillar-left')).not.toContain('sight');
  });

  test('licensed work, the maker and local rules are deferred to', () => {
    const text = CAUTIONS.map((caution) => caution.text).join(' ');
    expect(text).toMatch(/maker’s/);
    expect(text).toMatch(/licensed/);
    expect(text).toMatch(/local/i);
    expect(SHORT_CAUTION).toMatch(/maker’s documents/);
  });
});
