/** What the README shows of the plan file is a plan file. */
import { accessSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { evaluatePlan } from '../src/geometry';
import { readPlan } from '../src/plan/schema';

const README = readFileSync(new URL('../README.md', import.meta.url), 'utf8');
const example = /```jsonc\n([\s\S]*?)```/.exec(README)?.[1] ?? '';

test('the plan file shown in the README opens without a warning and evaluates', () => {
  const read = readPlan(example.replace(/\/\/.*$/gm, ''));
  expect(read).toMatchObject({ ok: true, warnings: [] });
  if (!read.ok) return;
  const answer = evaluatePlan(read.plan);
  expect(answer).toMatchObject({ ok: true });
  expect(answer.ok && answer.options[0]?.seats.length).toBe(4);
});

test('every file and folder the README and the developers’ page point to is there', () => {
  const page = readFileSync(new URL('../DEVELOPERS.md', import.meta.url), 'utf8');
  const named = [
    ...`${README}\n${page}`.matchAll(/`((?:src|tests|vehicle-templates)\/[\w./-]+)`/g),
  ];
  expect(named.length).toBeGreaterThan(10);
  for (const [, path = ''] of named) {
    if (path === 'tests/PATH') continue;
    expect(() => mustExist(path), path).not.toThrow();
  }
});

function mustExist(path: string): void {
  accessSync(new URL(`../${path}`, import.meta.url));
}
