/** The search without a browser: a plan and a request in, one JSON object out. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { type SearchRequest, searchSpots } from '../src/geometry';
import { demoPlan } from '../src/plan/demo';
import { checkSearchRequest, readPlan } from '../src/plan/schema';
import { searchFile } from '../src/search';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'earpath-search-'));
afterAll(() => rmSync(folder, { recursive: true }));

let files = 0;
function write(content: unknown): string {
  files += 1;
  const file = join(folder, `${files}.json`);
  writeFileSync(file, typeof content === 'string' ? content : JSON.stringify(content));
  return file;
}

const plan = write(demoPlan());

const REQUEST = {
  option: 'a',
  pair: 'midrange',
  mirrored: true,
  panels: ['dash-top-left', 'pillar-left'],
  step: 80,
  seats: [{ id: 'front-left', weight: 1 }],
  aim: { kind: 'seat', seat: 'front-left' },
  require: { fits: false, free: true, maxOffAxisDeg: 60 },
  want: { difference: 1, offAxisDeg: 0.5, obstructionDb: 1, firstReflectionTime: 0.2 },
  answers: 2,
  apart: 80,
  all: true,
};

function run(...words: string[]) {
  const { status, stdout, stderr } = spawnSync(
    'npm',
    ['run', '--silent', 'search', '--', ...words],
    { cwd: ROOT, encoding: 'utf8', maxBuffer: 2 ** 27 },
  );
  return { status, stdout, stderr };
}

/** Starting npm, the compiler and the engine takes seconds on a busy machine, ms. */
const STARTING = 90_000;

describe('npm run search', { timeout: STARTING }, () => {
  test('prints one JSON object, the engine’s own answer, and ends with 0', () => {
    const { status, stdout, stderr } = run(plan, write(REQUEST));
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(stdout.split('\n')).toHaveLength(2);
    const printed = JSON.parse(stdout);
    const read = readPlan(JSON.stringify(demoPlan()));
    const request = checkSearchRequest(REQUEST);
    if (!read.ok || !request.ok) throw new Error('refused');
    const direct = searchSpots(read.plan, request.request as SearchRequest);
    expect(direct.ok && printed).toEqual(direct.ok && JSON.parse(JSON.stringify(direct.answer)));
    expect(Object.keys(printed)).toEqual(['tried', 'feasible', 'front', 'answers', 'all']);
    for (const spot of [...printed.front, ...printed.answers, ...printed.all])
      expect(spot).toMatchObject({
        panel: expect.any(String),
        u: expect.any(Number),
        v: expect.any(Number),
        partner: { panel: expect.any(String), u: expect.any(Number), v: expect.any(Number) },
        feasible: expect.any(Boolean),
        why: expect.any(Array),
        measures: { difference: expect.any(Number), offAxisDeg: expect.any(Number) },
        score: expect.any(Number),
      });
  });

  test('refuses a bad request in one sentence with its place, and ends with 1', () => {
    const { status, stdout } = run(plan, write({ ...REQUEST, step: '20' }));
    expect(status).toBe(1);
    expect(JSON.parse(stdout)).toEqual({
      error: {
        message: 'in the request: step: must be a number, got the text "20"',
        path: 'step',
      },
    });
  });

  test('asked about nothing, says in one sentence what it wants and ends with 2', () => {
    const { status, stdout, stderr } = run(plan);
    expect(status).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toBe('Name a plan and a request: npm run --silent search -- PLAN REQUEST\n');
  });
});

describe('what a request may not be', () => {
  const path = (change: object) => {
    const read = checkSearchRequest({ ...REQUEST, ...change });
    return read.ok ? null : `${read.error.path}: ${read.error.message}`;
  };

  test.each([
    [{ pair: undefined }, 'pair: must be given: a text'],
    [{ panels: [] }, 'panels: must name at least one panel'],
    [{ panels: 'dash' }, 'panels: must be a list, got the text "dash"'],
    [{ step: 0 }, 'step: must be between 1 and 1000, got 0'],
    [{ apart: -1 }, 'apart: must be between 0 and 100000, got -1'],
    [{ answers: 2.5 }, 'answers: must be a whole number, got 2.5'],
    [{ answers: Number.NaN }, 'answers: must be a number, got NaN'],
    [
      { seats: [{ id: 'a', weight: 0 }] },
      'seats[0].weight: must be more than 0 and at most 1000, got 0',
    ],
    [{ want: { difference: -1 } }, 'want.difference: must be between 0 and 1000, got -1'],
    [{ require: { fits: 1 } }, 'require.fits: must be true or false, got 1'],
    [
      { require: { view: true } },
      'require.view: is not known; there are "fits", "free", "maxOffAxisDeg", "maxPillarViewDeg", "maxAddedPillarViewDeg"',
    ],
    [{ aim: { kind: 'seat' } }, 'aim.seat: must be given'],
    [
      { aim: { kind: 'direction', direction: [0, 0, 0] } },
      'aim.direction: must have a length, got [0, 0, 0]',
    ],
  ])('%j', (change, sentence) => {
    expect(path(change)).toBe(sentence);
  });

  test('an unknown field beside the known ones is named and not used', () => {
    const read = checkSearchRequest({ ...REQUEST, colour: 'red' });
    expect(read).toMatchObject({
      ok: true,
      warnings: ['the field colour is not known here and not used'],
    });
  });

  test.each([
    ['', 'in the request: the file is empty'],
    ['{"option"', 'the file ends here, in the middle: it was cut short'],
    ['{"__proto__":{}}', '__proto__'],
  ])('a file that holds %j', async (content, sentence) => {
    const found = await searchFile(plan, write(content));
    expect('error' in found && found.error.message).toContain(sentence);
  });

  test('several pairs together are searched by a request that lists them', async () => {
    const pairs = ['midrange', 'tweeter'].map((pair) => ({
      pair,
      panels: ['dash-top-left', 'pillar-left'],
      step: 120,
      require: { fits: false },
    }));
    const found = await searchFile(plan, write({ option: 'a', pairs, answers: 1 }));
    expect(found).toMatchObject({
      complete: true,
      answers: [{ spots: [{ pair: 'midrange' }, { pair: 'tweeter' }], score: expect.any(Number) }],
    });
    const bad = await searchFile(plan, write({ option: 'a', pairs: [pairs[0], { pair: 'z' }] }));
    expect('error' in bad && bad.error).toEqual({
      message: 'in the request: pairs[1].pair: there is no pair "z" in the option "a"',
      path: 'pairs[1].pair',
    });
  });

  test.each([
    [{ pairs: [] }, 'pairs: must name at least one pair'],
    [
      { pairs: [{ pair: 'midrange', step: 0 }] },
      'pairs[0].step: must be between 1 and 1000, got 0',
    ],
    [
      { pairs: [{ pair: 'midrange' }, { pair: 'tweeter', require: { maxPillarViewDeg: -1 } }] },
      'pairs[1].require.maxPillarViewDeg: must be between 0 and 180, got -1',
    ],
    [
      { pairs: [{ pair: 'midrange', want: { pathSpread: 1 } }] },
      'pairs[0].want.pathSpread: is not known; there are "difference", "offAxisDeg", "obstructionDb", "firstReflectionTime"',
    ],
    [
      { pairs: [{ pair: 'midrange' }], want: { difference: 1 } },
      'want.difference: is not known; there are "pathSpread"',
    ],
  ])('of several pairs: %j', (change, sentence) => {
    const read = checkSearchRequest({ option: 'a', ...change });
    expect(read.ok ? null : `${read.error.path}: ${read.error.message}`).toBe(sentence);
  });

  test('as first written down, it is answered on the demo and on a compact hatch', {
    timeout: STARTING,
  }, async () => {
    const asked = {
      option: 'a',
      pair: 'midrange',
      mirrored: true,
      panels: ['dash-top-left', 'pillar-left', 'kick-left'],
      step: 20,
      seats: [{ id: 'front-left', weight: 1 }],
      aim: { kind: 'seat', seat: 'front-left' },
      require: { fits: true, free: true, maxOffAxisDeg: 60, maxPillarViewDeg: 6 },
      want: { difference: 1, offAxisDeg: 0.5, obstructionDb: 1, firstReflectionTime: 0.2 },
      answers: 5,
      apart: 80,
      all: true,
    };
    const demo = demoPlan();
    for (const of of [demo, { ...demo, cabin: { ...demo.cabin, template: 'compact-hatch' } }]) {
      const found = await searchFile(write(of), write(asked));
      if (!('all' in found) || !found.all) throw new Error(JSON.stringify(found).slice(0, 200));
      expect(found.all.length).toBe(found.tried);
      const feasible = found.all.filter((spot) => spot.feasible);
      expect(feasible.length).toBe(found.feasible);
      expect(found.front.length).toBeGreaterThan(0);
      expect(found.answers.length).toBeGreaterThan(1);
      expect(found.answers[0]?.score).toBeLessThanOrEqual(
        Math.min(...feasible.map(({ score }) => score)),
      );
    }
  });

  test('a plan that cannot be read is told from a request that cannot', async () => {
    const request = write(REQUEST);
    const missing = await searchFile(join(folder, 'none.json'), request);
    expect('error' in missing && missing.error.message).toContain('there is no such file');
    const bad = await searchFile(write({ ...demoPlan(), options: 3 }), request);
    expect('error' in bad && bad.error).toMatchObject({ path: 'options' });
    expect('error' in bad && bad.error.message).toMatch(/^in the plan: /);
  });
});
