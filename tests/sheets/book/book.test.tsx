import type { ReactElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { measureOptions } from '../../../src/geometry';
import { demoPlan } from '../../../src/plan/demo';
import { bookBlocks } from '../../../src/sheets/book/blocks';
import { customerBlocks } from '../../../src/sheets/customer/blocks';
import { drawCar } from '../../../src/sheets/drawing/draw-car';
import type { Prepared } from '../../../src/sheets/drawing/prepare';
import type { PaperFacts } from '../../../src/sheets/facts';
import type { Block, Told } from '../../../src/sheets/page';
import { WordsProvider, wordsOf } from '../../../src/sheets/words/use-words';
import type { PlanPicture } from '../../../src/store/plan-pictures';
import { factsOfPlan, plainText } from '../mark-out/papers';
import { factsWith } from '../papers-facts';

function preparedOf({ plan, cabin, results }: PaperFacts): Prepared {
  const stages = plan.options.flatMap((option) => {
    const result = results.find(({ id }) => id === option.id);
    return result ? [{ plan, cabin, option, result }] : [];
  });
  const drawings = {
    behind: drawCar(cabin, 'behind', 'front'),
    above: drawCar(cabin, 'above', 'front'),
    side: drawCar(cabin, 'side', 'front'),
  };
  return { drawings, measured: measureOptions(stages) };
}

const PICTURE: PlanPicture = {
  id: 'p',
  caption: 'Pod <b>',
  width: 400,
  height: 300,
  bytes: new Uint8Array([1]),
};

const TOLD: Told = { page: 1, pages: 9, pageOf: (id) => (id === 'tune' ? 7 : 3) };

function printed(blocks: readonly Block[], language: string): string {
  const pieces = blocks.map((block): ReactElement => {
    if (block.kind === 'table') {
      return (
        <table key={block.id}>
          <thead>{block.head}</thead>
          <tbody>{block.rows}</tbody>
        </table>
      );
    }
    const { content } = block;
    return <div key={block.id}>{typeof content === 'function' ? content(TOLD) : content}</div>;
  });
  const markup = renderToStaticMarkup(
    <WordsProvider language={language} unit="mm">
      {pieces}
    </WordsProvider>,
  );
  // In drawings too.
  expect(markup).not.toMatch(/NaN|Infinity/);
  return plainText(markup);
}

describe.each(['demo', 0, 1, 40] as const)('with %s speakers', (count) => {
  const facts = factsWith(count);
  const prepared = preparedOf(facts);

  test.each(['en', 'de'])('book and customer sheet print in %s, every block of its own', (id) => {
    const words = wordsOf(id, 'mm');
    const choices = { pictures: [PICTURE], choice: {} };
    for (const blocks of [
      bookBlocks(facts, prepared, choices, words, 'A4'),
      customerBlocks(facts, prepared, words, 'Letter', true),
    ]) {
      const ids = blocks.map((block) => block.id);
      expect(new Set(ids).size).toBe(ids.length);
      const text = printed(blocks, id);
      expect(text).not.toMatch(/undefined|NaN|Infinity|\{\w+[,}]/);
      for (const block of blocks)
        if (block.kind === 'table') expect(block.rows.length, block.id).toBeGreaterThan(0);
      if (typeof count === 'number' && count > 0)
        expect(blocks.some((one) => one.kind === 'table' && one.rows.length === count)).toBe(true);
    }
  });
});

test.each([
  ['with a seat', [{ id: 'front-left', head: [900, -365, 880], facingDeg: 0, earSpacing: 152 }]],
  ['without a seat', []],
] as const)('a plan of panels entered by hand, %s, is printed too', (_, seats) => {
  const facts = factsOfPlan({
    ...demoPlan(),
    cabin: {
      template: 'none',
      wheelSide: 'left',
      panels: [
        {
          id: 'baffle',
          corners: [
            [0, -600, 300],
            [0, 600, 300],
            [0, 600, 900],
            [0, -600, 900],
          ],
          mountable: true,
        },
      ],
    },
    seats,
    options: [
      {
        id: 'a',
        title: 'One',
        speakers: [{ id: 's', role: 'wideband', mount: { panel: 'baffle', u: 0.3, v: 0.5 } }],
      },
    ],
  });
  const prepared = preparedOf(facts);
  for (const id of ['en', 'de']) {
    const words = wordsOf(id, 'in');
    const choices = { pictures: [], choice: {} };
    const text = printed(bookBlocks(facts, prepared, choices, words, 'Letter'), id);
    expect(text).not.toMatch(/undefined|NaN|Infinity/);
    expect(text).toContain('baffle');
    const sheet = customerBlocks(facts, prepared, words, 'Letter', true);
    expect(printed(sheet, id)).not.toMatch(/undefined|NaN|Infinity/);
  }
});

test('the contents give each chapter the page it begins on; names typed are printed as typed', () => {
  const facts = factsWith('demo');
  const words = wordsOf('en', 'mm');
  const choices = { pictures: [PICTURE], choice: {} };
  const text = printed(bookBlocks(facts, preparedOf(facts), choices, words, 'A4'), 'en');
  expect(text).toMatch(/The system 3 Where the speakers sit, and why 3/);
  expect(text).toMatch(/The tune to start from 7/);
  expect(text).toContain('Picture 1: Pod &lt;b&gt;');
});

test('nothing measured is said, and no page pretends otherwise', () => {
  const facts = factsWith('demo');
  const choices = { pictures: [], choice: {} };
  const text = printed(
    bookBlocks(facts, preparedOf(facts), choices, wordsOf('en', 'mm'), 'A4'),
    'en',
  );
  expect(text).toContain('Nothing has been measured in the car yet.');
  expect(text).toContain('No pictures were added.');
});

test('what was measured stands beside the prediction, and who is off is named', () => {
  const { plan, result, option } = factsWith('demo');
  const seat = result.seats[0];
  /** A loop of 5 ms; the left mid arrives 0.6 ms late. */
  const measured = (seat?.arrivals ?? []).map(({ speaker, time }) => ({
    speaker,
    seat: seat?.id ?? '',
    at: 'head' as const,
    time: time + 5 + (speaker === 'midrange-left' ? 0.6 : 0),
    sd: 0.01,
    method: 'edge' as const,
    sampleRateHz: 48_000,
  }));
  const facts = factsOfPlan({ ...plan, options: [{ ...option, measured }] });
  const choices = { pictures: [], choice: {} };
  const blocks = (id: string) =>
    printed(bookBlocks(facts, preparedOf(facts), choices, wordsOf(id, 'mm'), 'A4'), id);
  const speed = result.speedOfSound;
  expect(blocks('en')).toContain('left mid does not arrive as predicted');
  expect(blocks('en')).toContain(`+0.600 ms (+${(0.6 * speed).toFixed(0)} mm)`);
  expect(blocks('en')).toContain('the arrival of 6 channels');
  expect(blocks('de')).toContain('Nicht wie vorhergesagt kommt an: Mitteltöner links.');
  expect(blocks('de')).not.toContain('noch nichts gemessen');
});
