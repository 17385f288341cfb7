import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { startingChoice } from '../../../src/exchange';
import type { Block } from '../../../src/sheets/page';
import { tuneSheetBlocks } from '../../../src/sheets/tune/blocks';
import { wordsOf } from '../../../src/sheets/words/use-words';
import { contentOf, factsOf, plainText } from '../mark-out/papers';

const [en, de] = [wordsOf('en', 'mm'), wordsOf('de', 'mm')];
const facts = factsOf();
const start = startingChoice(48000);

const rowsOf = (blocks: readonly Block[], id: string): string[] => {
  const block = blocks.find((one) => one.id === id);
  if (block?.kind !== 'table') throw new Error(`there is no table ${id}`);
  return block.rows.map((row) => plainText(renderToStaticMarkup(row)));
};
const textOf = (blocks: readonly Block[], id: string) =>
  plainText(renderToStaticMarkup(contentOf(blocks, id)));

describe('the tune sheet', () => {
  test('has every channel with the engine’s own delay, in whole samples to begin with', () => {
    const blocks = tuneSheetBlocks(facts, en, {});
    const rows = rowsOf(blocks, 'channels');
    const delays = facts.result.seats[0]?.delays ?? [];
    expect(rows).toHaveLength(delays.length);
    for (const [i, { samples, gainDb }] of delays.entries()) {
      expect(rows[i]).toMatch(new RegExp(`\\b${Math.round(samples)} samples?\\b`));
      expect(rows[i]).toContain(`${gainDb.toFixed(1).replace('-', '−')} dB`);
    }
    expect(textOf(blocks, 'whom')).toContain('at the front left seat');
    expect(textOf(blocks, 'step-0')).toMatch(/whole samples at 48 kHz.*Look up whether/);
  });

  test('speaks in inches where the processor does, and in German with a comma', () => {
    const step = { ...start, kind: 'in' as const };
    const longest = Math.max(...(facts.result.seats[0]?.delays ?? []).map(({ delay }) => delay));
    const inches = (Math.round((longest * facts.result.speedOfSound) / 12.7) / 2).toFixed(1);
    expect(rowsOf(tuneSheetBlocks(facts, en, { step }), 'channels').join()).toContain(
      `${inches} in`,
    );
    const german = tuneSheetBlocks(facts, de, { step });
    expect(rowsOf(german, 'channels').join()).toContain(`${inches.replace('.', ',')} in`);
    expect(textOf(german, 'step-0')).toContain('in Schritten von 0,5 in'.slice(3));
  });

  test('names what the processor cannot hold, and how early it stays', () => {
    const step = { ...start, largest: '1 ms' };
    const blocks = tuneSheetBlocks(facts, en, { step });
    const over = (facts.result.seats[0]?.delays ?? []).filter(
      ({ samples }) => Math.round(samples) > 48,
    );
    expect(over.length).toBeGreaterThan(0);
    const warnings = blocks
      .filter(({ id }) => id.startsWith('warning-'))
      .map(({ id }) => textOf(blocks, id))
      .filter((text) => text.includes('holds no more than 1.00 ms'));
    expect(warnings).toHaveLength(over.length);
    const early = ((over[0]?.delay ?? 0) - 1).toFixed(3);
    expect(warnings[0]).toContain(`${early} ms early`);
    expect(
      rowsOf(blocks, 'channels').filter((row) => row.includes('the most it holds')),
    ).toHaveLength(over.length);
  });

  test('for several seats tells what each is left with', () => {
    const blocks = tuneSheetBlocks(facts, en, { whom: 'seats' });
    expect(textOf(blocks, 'whom')).toContain('best compromise over');
    expect(rowsOf(blocks, 'seats-table')).toHaveLength(facts.plan.alignment.seats?.length ?? 0);
    expect(facts.plan.alignment.seats?.length).toBeGreaterThan(1);
  });

  test('carries the cautions, and says so where there is no speaker', () => {
    const ids = tuneSheetBlocks(facts, en, {}).map(({ id }) => id);
    expect(ids).toEqual(expect.arrayContaining(['cautions', 'cautions-0']));
    const empty = { ...facts, option: { ...facts.option, speakers: [] } };
    expect(textOf(tuneSheetBlocks(empty, en, {}), 'none-0')).not.toBe('');
  });
});
