import { describe, expect, test } from 'vitest';
import { CAUTIONS, cautionsFor, SHORT_CAUTION } from '../../src/exchange';

const idsFor = (panel: string | null) => cautionsFor(panel).map(({ id }) => id);

describe('cautions beside a spot', () => {
  test('the maker’s documents stand beside every spot, a free point too', () => {
    for (const panel of [null, 'pillar-left', 'screen', 'anything'])
      expect(idsFor(panel)[0]).toBe('maker-first');
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
