/** The engine without a browser: plan files in, one line of JSON each out. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { evaluateFile } from '../src/evaluate';
import { evaluatePlan } from '../src/geometry';
import { demoPlan } from '../src/plan/demo';
import { readPlan } from '../src/plan/schema';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const fixture = (name: string) => `tests/fixtures/evaluate/${name}`;

function run(...files: string[]) {
  const { status, stdout, stderr } = spawnSync(
    'npm',
    ['run', '--silent', 'evaluate', '--', ...files],
    { cwd: ROOT, encoding: 'utf8' },
  );
  const lines = stdout.split('\n');
  expect(lines.pop()).toBe('');
  return { status, stderr, answers: lines.map((line) => JSON.parse(line)) };
}

/** Starting npm, the compiler and the engine takes seconds on a busy machine, ms. */
const STARTING = 90_000;

describe('npm run evaluate', { timeout: STARTING }, () => {
  test('prints one line for each file, in order, and ends with 1 when one of them failed', () => {
    const files = ['bare-room.json', 'unknown-panel.json', 'cut-off.plan', 'bare-room.json'].map(
      fixture,
    );
    const { status, answers, stderr } = run(...files);
    expect(answers.map(({ file }) => file)).toEqual(files);
    expect(answers.map((answer) => Object.keys(answer)[1])).toEqual([
      'options',
      'error',
      'error',
      'options',
    ]);
    expect(answers[0].options).toEqual(answers[3].options);
    expect(stderr).toBe('');
    expect(status).toBe(1);
  });

  test('ends with 0 when every file was evaluated', () => {
    expect(run(fixture('bare-room.json')).status).toBe(0);
  });

  test('asked about nothing, says in one sentence what it wants and ends with 2', () => {
    const { status, answers, stderr } = run();
    expect(status).toBe(2);
    expect(answers).toEqual([]);
    expect(stderr.trim().split('\n')).toEqual([
      'Name one or more plan files: npm run --silent evaluate -- FILE...',
    ]);
  });
});

describe('what is evaluated', () => {
  test('the bare room comes out as worked out on paper', async () => {
    const answer = await evaluateFile(fixture('bare-room.json'));
    if (!('options' in answer)) throw new Error(answer.error.message);
    const [option] = answer.options;
    expect(option).toMatchObject({ id: 'a', detail: 'full' });
    const speed = option?.speedOfSound ?? 0;
    // IEC 61094-2:2009 Table F.1: 345.86652 m/s at 23 °C, 101.325 kPa, 50 %.
    expect(Math.abs(speed - 345.86652)).toBeLessThan(0.001);
    const seat = option?.seats[0];
    const [left, right] = seat?.arrivals ?? [];
    expect(Math.abs((left?.path ?? 0) - 1250)).toBeLessThan(1e-9);
    expect(Math.abs((right?.direct ?? 0) - 1000)).toBeLessThan(1e-9);
    // The board stands from x −405 to −395 and y 250 to 350. Shortest round its upright edge at
    // (−395, 350); over its top edges it would be √(600² + (2√(395² + 50²) + 10)²) = 1005.05.
    const round = Math.hypot(405, 250) + Math.hypot(395, 350);
    expect(Math.abs((right?.path ?? 0) - round)).toBeLessThan(1e-3);
    expect(right?.round).toEqual(['board']);
    expect(Math.abs((right?.detour ?? 0) - (round - 1000))).toBeLessThan(1e-3);
    // Looking straight back at X, with the head 750 to the right of 1000 ahead: to the speaker's
    // left, since the car's right is the left of one who looks rearward. atan(0.75) = 36.870°.
    expect(Math.abs((left?.offAxisDeg ?? 0) - 36.8699)).toBeLessThan(1e-4);
    expect(Math.abs((left?.offAxisHorizontalDeg ?? 0) + 36.8699)).toBeLessThan(1e-4);
    expect(right?.offAxisDeg).toBeLessThan(1e-6);
    expect(left?.blockedBy).toEqual([]);
    expect(right).toMatchObject({ line: 'blocked', blockedBy: ['board'] });
    // The left ear is 76 mm left of the head's middle.
    expect(Math.abs((left?.ears.left.path ?? 0) - Math.hypot(1000, 750 - 76))).toBeLessThan(1e-9);
    expect(Math.abs((seat?.pairs[0]?.difference ?? 0) - (1250 - round))).toBeLessThan(1e-3);
    expect(Math.abs((seat?.delays[1]?.delay ?? 0) - (1250 - round) / speed)).toBeLessThan(1e-5);
    // 20 lg(1250/1003.7011) = 1.906 dB.
    expect(Math.abs((seat?.delays[1]?.gainDb ?? 0) + 1.9061)).toBeLessThan(1e-4);
  });

  test('a file and the plan in it give identical numbers', async () => {
    const read = readPlan(readFileSync(fixture('bare-room.json')));
    if (!read.ok) throw new Error(read.error.message);
    const direct = evaluatePlan(read.plan);
    const answer = await evaluateFile(fixture('bare-room.json'));
    expect(direct.ok && direct.options).toEqual('options' in answer && answer.options);
  });

  test.each([
    ['unknown-panel.json', 'options[0].speakers[1].mount.panel', /"ceiling"/],
    ['cut-off.plan', 'obstacles[0].size', /./],
    ['missing.json', '', /there is no such file/],
  ])('%s is refused with the place and one sentence', async (name, path, message) => {
    const answer = await evaluateFile(fixture(name));
    if (!('error' in answer)) throw new Error('was not refused');
    expect(answer.error.path).toBe(path);
    expect(answer.error.message).toMatch(message);
    expect(answer.error.message).not.toContain('\n');
    // The sentence stands alone: it begins with the place.
    expect(answer.error.message.startsWith(path)).toBe(true);
  });

  test('a folder is refused like any file that cannot be read', async () => {
    expect(await evaluateFile('tests/fixtures')).toMatchObject({
      error: { message: 'the file cannot be read: it is a folder', path: '' },
    });
  });

  test('the demo evaluates, with arrivals, pairs and delays for both front seats', () => {
    const answer = evaluatePlan(demoPlan());
    if (!answer.ok) throw new Error(`${answer.error.path}: ${answer.error.message}`);
    for (const option of answer.options)
      for (const id of ['front-left', 'front-right']) {
        const seat = option.seats.find((one) => one.id === id);
        expect(seat?.arrivals).toHaveLength(6);
        expect(seat?.pairs).toHaveLength(3);
        expect(seat?.delays).toHaveLength(6);
      }
  });
});
