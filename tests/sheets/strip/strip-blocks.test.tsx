import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { type Stage, slowMotion, stripMoments } from '../../../src/geometry';
import { removeSpeaker, setAlignment } from '../../../src/plan/edits';
import type { Block } from '../../../src/sheets/page';
import { stripBlocks } from '../../../src/sheets/strip/strip-blocks';
import { svgTree } from '../../../src/sheets/strip/svg-tree';
import { wordsOf } from '../../../src/sheets/words/use-words';
import { contentOf, factsOf, plainText } from '../mark-out/papers';

const [en, de] = [wordsOf('en', 'mm'), wordsOf('de', 'mm')];
const WIDTH = 180;
const markup = (blocks: readonly Block[], id: string) =>
  renderToStaticMarkup(contentOf(blocks, id));
const stageOf = ({ plan, cabin, option, result }: ReturnType<typeof factsOf>): Stage => ({
  plan,
  cabin,
  option,
  result,
});

describe('the arrival of sound on paper', () => {
  const facts = factsOf();
  const blocks = stripBlocks(facts, en, WIDTH);
  const moments = (delays: 'none' | 'aligned') =>
    stripMoments(slowMotion(stageOf(facts), facts.seat?.id ?? '', delays));

  test('shows every moment of both rows with its time, as built and set up', () => {
    for (const delays of ['none', 'aligned'] as const) {
      const text = plainText(markup(blocks, `arrival-${delays}`));
      for (const { time } of moments(delays))
        expect(text).toContain(en.n.time(time).replace('\u00a0', ' '));
    }
    expect(plainText(markup(blocks, 'arrival-none'))).toContain('All 6 speakers start');
    expect(plainText(markup(blocks, 'arrival-aligned'))).toContain('All 6 arrive together');
    expect(plainText(markup(blocks, 'arrival-aligned'))).toMatch(/^Set up for your seat,/);
  });

  test('says how long the longer row lasts', () => {
    const ends = (['none', 'aligned'] as const).map(
      (delays) => slowMotion(stageOf(facts), facts.seat?.id ?? '', delays).end,
    );
    const [short, long] = ends.sort((a, b) => a - b) as [number, number];
    expect(long - short).toBeGreaterThan(0.01);
    expect(plainText(markup(blocks, 'strip-lead'))).toContain(
      `Up to ${long.toFixed(2)} ms, twice.`,
    );
    expect(plainText(markup(stripBlocks(facts, de, WIDTH), 'strip-lead'))).toContain(
      `Bis zu ${long.toFixed(2).replace('.', ',')} ms, zweimal.`,
    );
  });

  test('has its height before it is drawn, within a page, and both rows to one scale', () => {
    const sizes = (['none', 'aligned'] as const).map((delays) => {
      const html = markup(blocks, `arrival-${delays}`);
      const [, width, height] = /width:([\d.]+)mm;height:([\d.]+)mm/.exec(html) ?? [];
      const pictures = [...html.matchAll(/<svg x="[^"]*" y="[^"]*" width="([\d.]+)"/g)];
      return {
        width: Number(width),
        height: Number(height),
        wide: new Set(pictures.map(([, w]) => w)),
      };
    });
    for (const { width, height } of sizes) {
      expect(width).toBe(WIDTH);
      expect(height).toBeGreaterThan(30);
      expect(height).toBeLessThan(120);
    }
    expect(new Set(sizes.flatMap(({ wide }) => [...wide])).size).toBe(1);
  });

  test('names of what is drawn once differ between the rows of one page', () => {
    const html = ['none', 'aligned'].map((delays) => markup(blocks, `arrival-${delays}`)).join('');
    const ids = [...html.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
    expect(ids.length).toBeGreaterThanOrEqual(4);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('speaks German with a comma, and no English', () => {
    const said = stripBlocks(facts, de, WIDTH);
    const text = plainText(markup(said, 'arrival-none'));
    expect(text).toContain('0,00 ms');
    expect(text).toContain('Alle 6 Lautsprecher beginnen');
    expect(text).not.toMatch(/arrive|start|there/);
  });

  test('says whose delays they are where they are for another seat', () => {
    const other = factsOf([setAlignment({ seat: 'front-right' })]);
    expect(plainText(markup(stripBlocks(other, en, WIDTH), 'arrival-aligned'))).toMatch(
      /^Set up for another place, the front right seat\./,
    );
    const several = factsOf([setAlignment({ by: 'seats' })]);
    expect(plainText(markup(stripBlocks(several, en, WIDTH), 'arrival-aligned'))).toMatch(
      /^Set up as a compromise between several seats\./,
    );
  });

  test('is left out where there is nobody to listen, or nothing to tell apart', () => {
    expect(stripBlocks({ ...facts, seat: null }, en, WIDTH)).toEqual([]);
    const ids = facts.option.speakers.map(({ id }) => id);
    const alone = factsOf(ids.slice(1).map((id) => removeSpeaker('a', id, false)));
    expect(alone.option.speakers).toHaveLength(1);
    expect(stripBlocks(alone, en, WIDTH)).toEqual([]);
  });
});

test('a drawing that came as data is drawn as it is', () => {
  const html = renderToStaticMarkup(
    svgTree({
      tag: 'svg',
      attributes: { viewBox: '0 0 1 1', strokeWidth: 2 },
      children: [{ tag: 'text', attributes: {}, children: ['a < b'] }],
    }),
  );
  expect(html).toBe('<svg viewBox="0 0 1 1" stroke-width="2"><text>a &lt; b</text></svg>');
});
