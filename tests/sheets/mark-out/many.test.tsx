/** Fault 24 on the installer's papers: none, one and forty speakers, A4 and Letter. */
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test, vi } from 'vitest';
import * as geometry from '../../../src/geometry';
import { mountSpeaker, setRing } from '../../../src/plan/edits';
import { findMarks, markOutBlocks } from '../../../src/sheets/mark-out';
import type { Block } from '../../../src/sheets/page';
import { ringBlocks } from '../../../src/sheets/ring';
import { wordsOf } from '../../../src/sheets/words/use-words';
import { factsWith } from '../papers-facts';
import { contentOf, factsOf, factsOfPlan, plainText } from './papers';

vi.mock('../../../src/geometry', async (load) => {
  const all = await load<typeof geometry>();
  return { ...all, markOut: vi.fn(all.markOut) };
});

const markup = (blocks: readonly Block[]) =>
  blocks.map(({ id }) => renderToStaticMarkup(contentOf(blocks, id))).join(' ');

/** The same, each on a ring. */
function onRings(count: number) {
  const { plan, option } = factsWith(count);
  const speakers = option.speakers.map((one) => ({
    ...one,
    ring: {},
    ...(one.mount && { mount: { ...one.mount, standoff: 40 } }),
  }));
  return factsOfPlan({ ...plan, options: [{ ...option, speakers }] });
}

describe.each([0, 1, 40])('%i speakers', (count) => {
  const facts = factsWith(count);
  const rings = onRings(count);
  test.each([
    ['en', 'mm', 'A4'],
    ['de', 'mm', 'Letter'],
    ['en', 'in', 'Letter'],
  ] as const)(
    'in %s, %s, on %s: each has its spot, template and ring once',
    (language, unit, size) => {
      const words = wordsOf(language, unit);
      const marks = markOutBlocks(words, facts, size);
      const sheet = ringBlocks(words, rings, size);
      for (const blocks of [marks, sheet]) {
        const ids = blocks.map(({ id }) => id);
        expect(new Set(ids).size).toBe(ids.length);
        const html = markup(blocks);
        expect(html).not.toMatch(/NaN|Infinity|undefined/);
        expect(plainText(html)).not.toMatch(/\{\w+[,}]/);
      }
      const counted = (blocks: readonly Block[], start: string) =>
        blocks.filter(({ id }) => id.startsWith(start)).length;
      expect(counted(marks, 'spot-')).toBe(count);
      expect(counted(marks, 'template-')).toBeGreaterThanOrEqual(count);
      expect(counted(sheet, 'head-')).toBe(count);
      // No page of nothing but a title.
      expect(marks.length).toBeGreaterThan(1);
      expect(sheet.length).toBeGreaterThan(1);
      if (count > 0) expect(counted(marks, 'cautions')).toBeGreaterThan(3);
    },
  );
});

test('marks are worked out once for a plan, whatever its words, its size and the printer', () => {
  const facts = factsOf();
  const asked = vi.mocked(geometry.markOut);
  asked.mockClear();
  const found = findMarks(facts);
  expect(asked).toHaveBeenCalledTimes(1);
  for (const size of ['A4', 'Letter'] as const)
    for (const refused of [false, true])
      markOutBlocks(wordsOf('de', 'mm'), facts, size, refused, found);
  expect(asked).toHaveBeenCalledTimes(1);
});

describe('with the wheel on the right', () => {
  const text = (language: string, id: string) => {
    const { plan } = factsOf([
      mountSpeaker('a', 'tweeter-right', { panel: 'pillar-right', u: 0.5, v: 0.9, standoff: 15 }),
      setRing('a', 'midbass-left', { screws: 6 }),
      mountSpeaker('a', 'midbass-left', {
        panel: 'door-lower-left',
        u: 0.14,
        v: 0.4,
        standoff: 40,
      }),
    ]);
    const facts = factsOfPlan({ ...plan, cabin: { ...plan.cabin, wheelSide: 'right' } });
    const blocks = markOutBlocks(wordsOf(language, 'mm'), facts, 'A4');
    return plainText(renderToStaticMarkup(contentOf(blocks, id)));
  };

  test('zones, heights, tapes and rings are told as with the wheel on the left', () => {
    const tweeter = text('en', 'spot-tweeter-right');
    expect(tweeter).toMatch(/^Keep clear\. .*right curtain airbag/);
    expect(tweeter).toMatch(/[\d]+ mm above the top of the sill/);
    expect(tweeter).toMatch(/within [\d.]+ mm of the spot/);
    const midbass = text('en', 'spot-midbass-left');
    expect(midbass).toMatch(/On a ring: [\d.]+ mm outside/);
    expect(midbass).toContain('Look up before cutting here: Airbags and belts');
    const german = text('de', 'spot-tweeter-right');
    expect(german).toMatch(/^Freihalten\. .*A-Säule rechts/);
    expect(german).not.toMatch(/\d\.\d|\b(the|of|mm above)\b/);
  });
});
