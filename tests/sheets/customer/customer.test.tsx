import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { measureOptions } from '../../../src/geometry';
import { compareBlocks } from '../../../src/sheets/customer/compare-block';
import { knownBlocks } from '../../../src/sheets/customer/known-blocks';
import { sayChoice } from '../../../src/sheets/customer/say-choice';
import { sayTime, widestPair } from '../../../src/sheets/customer/say-time';
import { sayWay } from '../../../src/sheets/customer/say-way';
import type { PaperFacts } from '../../../src/sheets/facts';
import { wordsOf } from '../../../src/sheets/words/use-words';
import { contentOf, factsOfPlan, plainText } from '../mark-out/papers';
import { factsWith } from '../papers-facts';

const [en, de] = [wordsOf('en', 'mm'), wordsOf('de', 'mm')];

const measuredOf = ({ plan, cabin, results }: PaperFacts) =>
  measureOptions(
    plan.options.flatMap((option) => {
      const result = results.find(({ id }) => id === option.id);
      return result ? [{ plan, cabin, option, result }] : [];
    }),
  );

describe('the sentence about time', () => {
  const facts = factsWith('demo');
  const widest = facts.seat && widestPair(facts.seat.pairs);
  const ms = Math.abs(widest?.differenceTime ?? 0);
  const mm = Math.abs(widest?.difference ?? 0);

  test('tells the widest pair in the engine’s numbers, and what that does to the ear', () => {
    expect(ms).toBeGreaterThan(0.63);
    const said = sayTime(facts, en);
    expect(said).toContain(`${mm.toFixed(0)}\u00a0mm nearer`);
    expect(said).toContain(`${ms.toFixed(2)}\u00a0ms earlier`);
    expect(said).toContain('all the music seem to come from that side');
  });

  test('is German with a decimal comma', () => {
    const said = sayTime(facts, de);
    expect(said).toContain(`${ms.toFixed(2).replace('.', ',')}\u00a0ms früher`);
    expect(said).not.toMatch(/\d\.\d/);
  });

  test.each([
    [0.02, 'hardly notices'],
    [0.1, 'drift a little'],
    [0.4, 'clearly away from the middle'],
    [0.7, 'seem to come from that side'],
  ])('%f ms apart: %s', (time, words) => {
    const seat = facts.seat && {
      ...facts.seat,
      pairs: [
        { pair: 'tweeter', difference: -343 * time, differenceTime: -time, levelDifferenceDb: 0 },
      ],
    };
    expect(sayTime({ ...facts, seat }, en)).toContain(words);
  });

  test('both sides together, and no pair at all', () => {
    const pairs = [{ pair: 'tweeter', difference: 0, differenceTime: 0, levelDifferenceDb: 0 }];
    const seat = facts.seat && { ...facts.seat, pairs };
    expect(sayTime({ ...facts, seat }, en)).toContain('arrives together');
    expect(sayTime(factsWith(1), en)).toContain('nothing to compare');
  });
});

describe('the sentence about what is in the way', () => {
  const facts = factsWith('demo');

  test('counts free lines as the engine does and names what stands in the way', () => {
    const arrivals = facts.seat?.arrivals ?? [];
    const free = arrivals.filter(({ line }) => line !== 'blocked').length;
    expect(free).toBeLessThan(arrivals.length);
    expect(sayWay(facts, en)).toContain(`${free} of the ${arrivals.length} speakers have a free`);
  });

  test('is short where nothing stands in the way', () => {
    const seat = facts.seat && {
      ...facts.seat,
      arrivals: facts.seat.arrivals.map((one) => ({ ...one, line: 'clear' as const })),
    };
    expect(sayWay({ ...facts, seat }, en)).toBe(
      'Nothing stands between your head and any of the 6 speakers.',
    );
  });
});

describe('the sentence about the choice', () => {
  test('says what is better and what is worse than in the other option', () => {
    const facts = factsWith('demo');
    const said = sayChoice(facts, measuredOf(facts), en);
    expect(said).toMatch(/Compared with “Mids in the kick panels”, the mids point past you/);
    expect(said).toMatch(/In return, the left and right mids arrive .* apart/);
    const german = sayChoice(facts, measuredOf(facts), de);
    // The titles of options are printed as typed.
    expect(german.replace(/„.*?“/, '')).not.toMatch(/\b(the|instead|and)\b/);
    expect(german).toMatch(/\d,\d\d\sms/);
  });

  test('tells of fit alone where there is no other option', () => {
    const facts = factsWith(1);
    expect(sayChoice(facts, measuredOf(facts), en)).toBe(
      'The speaker fits where it is drawn, as far as sizes usual in such a car tell.',
    );
  });
});

describe('whether all fits', () => {
  const { plan } = factsWith('demo');
  /** The demo's first option, so many of its speakers without sizes. */
  const unsized = (count: number) => {
    const [first] = plan.options;
    const speakers = (first?.speakers ?? []).map((speaker, i) => {
      const { body, ...bare } = speaker;
      return i < count ? bare : speaker;
    });
    return factsOfPlan({ ...plan, options: [{ id: 'a', title: 'One', speakers }] });
  };
  const said = (facts: PaperFacts, words = en) => sayChoice(facts, measuredOf(facts), words);

  test('is not claimed of speakers whose sizes nobody entered', () => {
    expect(said(unsized(0))).toContain('All 6 speakers fit where they are drawn');
    expect(said(unsized(6))).toBe(
      '6 speakers have no sizes entered: whether they fit is not known.',
    );
    expect(said(unsized(1))).toBe(
      'One speaker has no sizes entered: whether it fits is not known.',
    );
    expect(said(unsized(1), de)).toBe(
      'Für einen Lautsprecher sind keine Einbaumaße eingegeben: Ob er passt, ist nicht bekannt.',
    );
    expect(said(unsized(6), de)).toBe(
      'Für 6 Lautsprecher sind keine Einbaumaße eingegeben: Ob sie passen, ist nicht bekannt.',
    );
  });

  test('is told beside what does not fit for sure', () => {
    const facts = unsized(2);
    const [first] = facts.plan.options;
    const speakers = (first?.speakers ?? []).map((speaker) =>
      speaker.id === 'midbass-left' && speaker.body
        ? { ...speaker, body: { ...speaker.body, depth: 400 } }
        : speaker,
    );
    const wrong = factsOfPlan({ ...plan, options: [{ id: 'a', title: 'One', speakers }] });
    expect(said(wrong)).toBe(
      'One speaker does not fit yet where drawn and will still move. 2 speakers have no sizes entered: whether they fit is not known.',
    );
  });

  test('no option is the best in what fits while that is not known of one', () => {
    const [a, b] = plan.options;
    if (!a || !b) throw new Error('the demo has two options');
    const deep = a.speakers.map((one) => ({
      ...one,
      ...(one.body && { body: { ...one.body, depth: 400 } }),
    }));
    const bare = b.speakers.map(({ body, ...one }) => one);
    const facts = (speakers: typeof b.speakers) =>
      factsOfPlan({
        ...plan,
        options: [
          { ...b, speakers },
          { ...a, speakers: deep },
        ],
      });
    const row = (one: PaperFacts) => {
      const table = compareBlocks(one, measuredOf(one), en).find(({ kind }) => kind === 'table');
      if (table?.kind !== 'table') throw new Error('no table');
      const rows = renderToStaticMarkup(
        <table>
          <tbody>{table.rows}</tbody>
        </table>,
      ).split('</tr>');
      return plainText(rows.find((text) => text.includes('do not fit')) ?? '');
    };
    expect(row(facts(b.speakers))).toBe('Speakers that do not fit ◆ best: 0 6');
    expect(row(facts(bare))).toBe('Speakers that do not fit 0; 6 not known 6');
    expect(said(facts(b.speakers))).toContain('every speaker fits (there: 6 do not)');
    expect(said(facts(bare))).not.toContain('every speaker fits');
  });

  test('is not known where the option was not measured', () => {
    const facts = unsized(0);
    expect(sayChoice(facts, [], en)).toBe('Whether the 6 speakers fit where drawn is not known.');
    expect(sayChoice(factsWith(1), [], de)).toBe(
      'Ob der Lautsprecher dorthin passt, wo er gezeichnet ist, ist nicht bekannt.',
    );
  });
});

describe('what was measured and what was assumed', () => {
  const textOf = (facts: PaperFacts, words = en) =>
    knownBlocks(facts, words)
      .map(({ id }) => plainText(renderToStaticMarkup(contentOf(knownBlocks(facts, words), id))))
      .join(' ');

  test('names the dimensions and depths set for this car, and counts the rest as typical', () => {
    const { plan } = factsWith('demo');
    const facts = factsOfPlan({
      ...plan,
      cabin: {
        ...plan.cabin,
        dimensions: { seatHeight: 300 },
        measured: { 'door-lower-left': { depthBehind: 62 } },
      },
    });
    const all = Object.keys(facts.cabin.dimensions).length;
    expect(textOf(facts)).toContain(
      'Seat height 300 mm and depth behind the left lower door card 62 mm',
    );
    expect(textOf(facts)).toContain(`${all - 1} dimensions`);
    expect(textOf(facts, de)).toContain('Sitzhöhe 300 mm');
  });

  test('counts with whoever sits on the seat that is looked at', () => {
    const { plan } = factsWith('demo');
    const facts = factsOfPlan({ ...plan, seats: [{ id: 'front-left', occupantHeight: 1960 }] });
    expect(facts.seat?.id).toBe('front-left');
    expect(textOf(facts)).toContain('A listener of 1960 mm');
    expect(textOf(factsWith('demo'))).toContain('A listener of 1755 mm');
  });

  test('says so where nothing was measured', () => {
    expect(textOf(factsWith('demo'))).toContain(
      'Nothing of the cabin was measured in this car yet.',
    );
  });
});
