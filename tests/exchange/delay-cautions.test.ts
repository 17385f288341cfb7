/** What a file says besides delays: zones to keep clear of, polarity, and the way round. */
import { produce } from 'immer';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { toCsv, toJson, toText } from '../../src/exchange';
import { demoPlan } from '../../src/plan/demo';
import { mountSpeaker, setCrossover, setPolarity } from '../../src/plan/edits';
import { delaysOf, type SamplePlan, samplePlan } from './sample';

const cells = (csv: string, heading: string): string[] => {
  const [headings = [], ...rows] = Papa.parse<string[]>(csv.trimEnd()).data;
  return rows.map((row) => row[headings.indexOf(heading)] ?? 'no such column');
};

/** The sample, with a zone round its left speaker. */
const inZone = (id: string): SamplePlan => ({
  ...samplePlan([1000, 1400], [{}, { position: [-1000, 700, 0] }]),
  keepClear: [{ id, reason: 'airbag', shape: 'box', center: [-1000, 0, 0], size: [50, 50, 50] }],
});

describe('keep-clear zones in the files', () => {
  test('the speaker that reaches into one is named in all three, the other is not', () => {
    const all = delaysOf(inZone('side-airbag'));
    const csv = toCsv(all);
    expect(cells(csv, 'keep_clear')).toEqual([
      'side airbag: The speaker reaches into a zone you marked.',
      'none known; the maker’s documents and the car itself decide',
    ]);
    const json = JSON.parse(toJson(all));
    expect(json.rows[0].keepClear).toMatchObject([{ id: 'side-airbag', reason: 'airbag' }]);
    expect(json.rows[1].keepClear).toEqual([]);
    expect(json.keepClear).toEqual(['The left mid reaches into: side airbag.']);
    const text = toText(all);
    expect(text).toContain('KEEP CLEAR\n- The left mid reaches into: side airbag.');
    expect(text).toMatch(/left mid .* KEEP CLEAR\n/);
    expect(text).not.toMatch(/right mid .* KEEP CLEAR\n/);
    expect(text).toContain('The maker’s documents and the car itself decide');
  });

  test('a body style’s zone is told with what cannot be known from here', () => {
    const plan = produce(demoPlan(), (draft) =>
      mountSpeaker('a', 'tweeter-left', { panel: 'pillar-left', u: 0.5, v: 0.6 })(draft),
    );
    const all = delaysOf(plan);
    const tweeter = all.rows.find((row) => row.speaker === 'tweeter-left');
    expect(tweeter?.keepClear.map(({ name }) => name).join()).toMatch(/airbag/i);
    const at = all.rows.indexOf(tweeter as (typeof all.rows)[number]);
    expect(cells(toCsv(all), 'keep_clear')[at]).toContain('cannot be told from here');
  });

  test('where none is reached into, no file says that a spot is safe', () => {
    const text = toText(delaysOf(samplePlan([1000, 1400])));
    expect(text).toContain('Keep-clear zones reached into: none known; the maker’s documents');
    expect(text).not.toMatch(/\bsafe\b/i);
  });

  test('fault 9: a zone named like a formula runs in no cell', () => {
    expect(cells(toCsv(delaysOf(inZone('=cmd()'))), 'keep_clear')[0]).toMatch(/^'=cmd\(\): /);
  });
});

describe('polarity in the files', () => {
  const demo = (...edits: ReturnType<typeof setPolarity>[]) =>
    delaysOf(
      produce(demoPlan(), (draft) => {
        for (const edit of edits) edit(draft);
      }),
    );
  const second = setCrossover('a', 'midrange', 'tweeter', {
    family: 'linkwitz-riley',
    order: 2,
    frequencyHz: 3000,
  });
  const swapped = (all: ReturnType<typeof demo>) =>
    all.rows.filter((row) => row.inverted).map((row) => row.speaker);

  test('is normal throughout with crossovers of order 4, and the crossovers are named', () => {
    const all = demo(setCrossover('a', 'midrange', 'tweeter', null));
    expect(swapped(all)).toEqual([]);
    expect(toText(all)).toContain(
      '- mids to tweeters: Linkwitz-Riley order 4 at 2500 Hz, proposed from the bands',
    );
  });

  test('is swapped for tweeters above a crossover of order 2, by usage', () => {
    const all = demo(second);
    expect(swapped(all)).toEqual(['tweeter-left', 'tweeter-right']);
    const csv = toCsv(all);
    expect(cells(csv, 'polarity').slice(0, 3)).toEqual(['swapped', 'swapped', 'normal']);
    expect(cells(csv, 'polarity_from')[0]).toBe('usual for its crossovers');
    expect(toText(all)).toMatch(/left tweeter .*SWAPPED/);
    expect(toText(all)).toContain('- mids to tweeters: Linkwitz-Riley order 2 at 3000 Hz\n');
  });

  test('is as the plan says where the plan says it', () => {
    const all = demo(second, setPolarity('a', 'tweeter-left', false));
    expect(swapped(all)).toEqual([]);
    expect(cells(toCsv(all), 'polarity_from')[0]).toBe('set in the plan');
    expect(swapped(demo(setPolarity('a', 'midbass-left', true)))).toEqual([
      'midbass-left',
      'midbass-right',
    ]);
  });
});

describe('the way in the files', () => {
  test('of the many things near a line only the nearest are named, and the others counted', () => {
    const all = delaysOf(demoPlan());
    const near = all.rows.flatMap(({ lines }) => lines).filter(({ line }) => line === 'grazing');
    expect(near.some(({ grazedBy }) => grazedBy.length > 5)).toBe(true);
    for (const { words, grazedBy } of near) {
      expect(words).toMatch(/^free, but passes close to the /);
      expect(words.length).toBeLessThan(120);
      if (grazedBy.length > 5) expect(words).toMatch(/ and \d+ other things$/);
    }
  });

  test('straight line and way round stand side by side, and what the way goes round', () => {
    const plan: SamplePlan = {
      ...samplePlan([1000, 1400]),
      obstacles: [{ id: '=board', shape: 'box', center: [-1200, 0, 0], size: [10, 900, 900] }],
    };
    const csv = toCsv(delaysOf(plan));
    expect(cells(csv, 'straight_mm')).toEqual(['1000', '1400']);
    const [free, round] = cells(csv, 'path_mm').map(Number);
    expect(free).toBe(1000);
    expect(round).toBeGreaterThan(1700);
    expect(cells(csv, 'goes_round')).toEqual(['', "'=board"]);
    expect(cells(csv, 'line_in_words')[0]).toBe('free');
    expect(cells(csv, 'line_in_words')[1]).toMatch(/^blocked by .*; the path goes round .*\+3/);
    expect(toText(delaysOf(plan))).toContain('the way round where that is blocked');
  });

  test('a speaker inside a body has no way round, and the file says what its path then is', () => {
    const plan: SamplePlan = {
      ...samplePlan([1000, 1400], [{}, { position: [-1000, 700, 0] }]),
      obstacles: [{ id: 'box', shape: 'box', center: [-1000, 700, 0], size: [90, 90, 90] }],
    };
    const { notes, rows } = delaysOf(plan);
    const line = rows[1]?.lines[0];
    expect(line?.detour).toBeNull();
    expect(line?.path).toBe(line?.straight);
    expect(notes.join()).toContain('no way round is known, so the path is the straight line');
  });
});
