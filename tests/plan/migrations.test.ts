import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { MIGRATIONS, type Migration, migrate } from '../../src/plan/migrations';
import { CURRENT_VERSION, readPlan, writePlan } from '../../src/plan/schema';
import { smallPlan } from '../store/fixtures';

/** A version that never was: lengths in cm, options called layouts. */
const madeUp: Migration = {
  from: 0,
  title: 'layouts are options now',
  up: ({ layouts, ...plan }) => ({ ...plan, options: layouts }),
};

function versionZero() {
  const { options, ...rest } = smallPlan();
  return { ...rest, version: 0, layouts: options };
}

describe('bringing older plans up to date', () => {
  test('a made-up version 0 becomes version 1 and says what was done', () => {
    const answer = readPlan(JSON.stringify(versionZero()), { migrations: [madeUp] });
    expect(answer).toMatchObject({
      ok: true,
      newer: false,
      warnings: ['brought up to date: layouts are options now'],
    });
    if (answer.ok) expect(answer.plan).toEqual(smallPlan());
  });

  test('migrating twice changes nothing', () => {
    const once = migrate(versionZero(), [madeUp], 1);
    if (!once.ok) throw new Error(once.error.message);
    const twice = migrate(once.plan, [madeUp], 1);
    expect(twice).toEqual({ ok: true, plan: once.plan, steps: [] });
  });

  test('steps run one after the other, each from its own version', () => {
    const count = (from: number): Migration => ({
      from,
      title: `step ${from}`,
      up: (plan) => ({ ...plan, seen: [...((plan.seen as number[]) ?? []), from] }),
    });
    const answer = migrate({ version: 0 }, [count(2), count(0), count(1)], 3);
    expect(answer).toEqual({
      ok: true,
      plan: { version: 3, seen: [0, 1, 2] },
      steps: ['step 0', 'step 1', 'step 2'],
    });
  });

  test('the plan given is left as it was', () => {
    const plan = versionZero();
    const greedy: Migration = {
      from: 0,
      title: 'takes everything',
      up: (own) => {
        delete own.layouts;
        return own;
      },
    };
    migrate(plan, [greedy], 1);
    expect(plan).toEqual(versionZero());
  });

  test('a version nobody knows the way from is refused', () => {
    const answer = readPlan(JSON.stringify(versionZero()));
    expect(answer).toMatchObject({
      ok: false,
      error: {
        path: 'version',
        message: 'no way is known from version 0 of the plan format to 1',
      },
    });
  });

  test('every published version has a golden file that opens, and there is a way from each', () => {
    const folder = new URL('./fixtures/', import.meta.url);
    const files = readdirSync(folder).filter((name) => /^version-\d+\.json$/.test(name));
    expect(files).toHaveLength(CURRENT_VERSION);
    expect(MIGRATIONS.map(({ from }) => from)).toEqual(
      Array.from({ length: CURRENT_VERSION - 1 }, (_, i) => i + 1),
    );
    for (const name of files) {
      const answer = readPlan(readFileSync(new URL(name, folder), 'utf8'));
      if (!answer.ok) throw new Error(`${name}: ${answer.error.message}`);
      const again = readPlan(writePlan(answer.plan));
      expect(again.ok && again.plan).toEqual(answer.plan);
    }
  });
});
