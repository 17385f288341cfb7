import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { demoPlan } from '../../../src/plan/demo';
import type { Plan } from '../../../src/plan/types';
import { summaryBlocks } from '../../../src/sheets/book/summary';
import { tuneBlocks } from '../../../src/sheets/book/tune';
import type { PaperFacts } from '../../../src/sheets/facts';
import { wordsOf } from '../../../src/sheets/words/use-words';
import type { TuneChoice } from '../../../src/store/tune-choice';
import { contentOf, factsOfPlan, plainText } from '../mark-out/papers';

const words = wordsOf('en', 'mm');

function told(facts: PaperFacts, choice: TuneChoice = {}): string {
  const blocks = summaryBlocks(facts, words, choice);
  return plainText(renderToStaticMarkup(contentOf(blocks, 'summary-text-0')));
}

function rows(facts: PaperFacts, printed = words): string[] {
  const table = summaryBlocks(facts, printed, {}).find(({ kind }) => kind === 'table');
  if (table?.kind !== 'table') throw new Error('there is no table');
  const markup = renderToStaticMarkup(
    <table>
      <tbody>{table.rows}</tbody>
    </table>,
  );
  return markup.split('</tr>').map(plainText).filter(Boolean);
}

/** The demo with its first option's speakers changed. */
function demoWith(change: (speakers: Plan['options'][number]['speakers']) => unknown): PaperFacts {
  const plan = structuredClone(demoPlan()) as Plan;
  const [option] = plan.options;
  if (!option) throw new Error('the demo has no option');
  const speakers = change(option.speakers) as typeof option.speakers;
  return factsOfPlan({ ...plan, options: [{ ...option, speakers }] });
}

describe('the table of the system', () => {
  test('tells cut-out and depth to the tenth, and of each where a pair is not alike', () => {
    const facts = demoWith((all) =>
      all.map((one) => {
        if (one.role !== 'midbass') return one;
        const left = one.side === 'left';
        return {
          ...one,
          body: { flange: 158, cutout: left ? 138.5 : 136, depth: left ? 62.4 : 62 },
        };
      }),
    );
    const midbass = rows(facts).filter((row) => /midbass/i.test(row));
    expect(midbass).toEqual([
      expect.stringMatching(/^Left midbass 1 .* 138\.5 mm 62\.4 mm 1 box$/),
      expect.stringMatching(/^Right midbass 1 .* 136\.0 mm 62\.0 mm 1 box$/),
    ]);
    expect(rows(facts, wordsOf('en', 'in')).join()).toContain('5.45 in 2.46 in');
    // Alike: one row for both.
    expect(rows(facts).filter((row) => /tweeter/i.test(row))).toEqual([
      expect.stringMatching(/^Tweeters 2 .* 45\.0 mm/),
    ]);
  });

  test('tells bands of each where they differ', () => {
    const facts = demoWith((all) =>
      all.map((one) => (one.id === 'tweeter-left' ? { ...one, bandHz: [4000, 20000] } : one)),
    );
    const tweeters = rows(facts).filter((row) => /tweeter/i.test(row));
    expect(tweeters).toHaveLength(2);
    expect(tweeters[0]).toContain('Left tweeter 1 4 kHz – 20 kHz');
  });
});

describe('the system in a few sentences', () => {
  test('a lone tweeter is in no pair', () => {
    const facts = demoWith((all) => all.filter(({ id }) => id === 'tweeter-left'));
    expect(told(facts)).toContain('One speaker in no pair');
    expect(rows(facts)[0]).toMatch(/^Left tweeter 1 /);
    expect(told(demoWith((all) => all))).toContain('6 speakers in 3 pairs');
  });

  test('the seat is the one the tune in the same book is for', () => {
    const facts = factsOfPlan(demoPlan());
    const choice = { whom: 'seat:front-right' };
    expect(told(facts, choice)).toContain('brings the sound together at the front right seat.');
    const chapter = tuneBlocks(facts, words, choice)
      .filter(({ kind }) => kind !== 'table')
      .map(({ id }) => renderToStaticMarkup(contentOf(tuneBlocks(facts, words, choice), id)))
      .join();
    expect(chapter).toContain('front right seat');
    expect(told(facts, { whom: 'seats' })).toMatch(
      /best compromise over front left seat and front right seat/,
    );
    expect(told(facts)).not.toContain('front right seat');
  });
});
