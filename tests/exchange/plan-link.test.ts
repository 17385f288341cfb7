import fc from 'fast-check';
import { zlibSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import {
  holdsPlan,
  LONGEST_LINK,
  planOfFragment,
  planToFragment,
} from '../../src/exchange/plan-link';
import { demoPlan } from '../../src/plan/demo';
import { readPlan } from '../../src/plan/schema';
import type { Plan } from '../../src/plan/types';

function fragmentOf(plan: Plan): string {
  const link = planToFragment(plan);
  if (!link.ok) throw new Error(`${link.length} characters are too many`);
  return link.fragment;
}

function readBack(fragment: string): Plan {
  const answer = planOfFragment(fragment);
  if (!answer.ok) throw new Error(answer.message);
  const read = readPlan(answer.bytes);
  if (!read.ok) throw new Error(read.error.message);
  return read.plan;
}

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

const packedAs = (bytes: Uint8Array): string =>
  `#plan=1.${Buffer.from(zlibSync(bytes, { level: 9 })).toString('base64url')}`;

describe('a plan within a link', () => {
  test('comes back as it was', () => {
    expect(readBack(fragmentOf(demoPlan()))).toEqual(demoPlan());
  });

  test('needs nothing but letters, digits and two signs, and is short enough for a message', () => {
    const fragment = fragmentOf(demoPlan());
    expect(fragment).toMatch(/^#plan=1\.[\w-]+$/);
    expect(fragment.length).toBeLessThan(4000);
    expect(holdsPlan(fragment)).toBe(true);
    expect(holdsPlan('#answers')).toBe(false);
  });

  test('keeps any title and story, in any script', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 80 }), (title) => {
        const plan = { ...demoPlan(), title };
        expect(readBack(fragmentOf(plan)).title).toBe(title);
      }),
      { numRuns: 40, seed: 3 },
    );
  });

  test('may end in what a sentence puts behind it', () => {
    for (const after of ['.', ').', '"', ',', '%20'])
      expect(readBack(fragmentOf(demoPlan()) + after)).toEqual(demoPlan());
  });

  test('is refused, never read wrong, when a letter is another or is missing', () => {
    const whole = fragmentOf(demoPlan());
    const start = '#plan=1.'.length;
    const read = { otherwise: 0 };
    fc.assert(
      fc.property(
        fc.integer({ min: start, max: whole.length - 1 }),
        fc.constantFrom(...LETTERS),
        fc.boolean(),
        (at, letter, missing) => {
          const changed = whole.slice(0, at) + (missing ? '' : letter) + whole.slice(at + 1);
          const answer = planOfFragment(changed);
          if (changed === whole) return;
          if (answer.ok) {
            // The last letter holds bits that belong to no byte.
            expect(at).toBe(whole.length - 1);
            expect(readBack(changed)).toEqual(demoPlan());
            read.otherwise += 1;
          } else expect(answer.message).toMatch(/^the link is damaged: .+ as a file$/);
        },
      ),
      { numRuns: 400, seed: 4 },
    );
    expect(read.otherwise).toBeLessThan(10);
    for (const cut of [start, start + 1, start + 5, 200, whole.length - 6])
      expect(planOfFragment(whole.slice(0, cut)).ok, `cut after ${cut}`).toBe(false);
  });

  test('says so when it holds something else, or was packed in a later way', () => {
    expect(planOfFragment('#answers')).toEqual({ ok: false, message: 'the link holds no plan' });
    expect(planOfFragment('#plan=2.abc')).toMatchObject({
      message: expect.stringContaining('newer version'),
    });
    expect(planOfFragment('#plan=1.ab$c')).toMatchObject({
      message: expect.stringContaining('a sign that no link has'),
    });
    const text = planOfFragment(packedAs(new TextEncoder().encode('[1, 2]')));
    expect(text.ok && readPlan(text.bytes)).toMatchObject({ ok: false });
  });

  test('that would unpack to gigabytes is refused early', () => {
    const bomb = packedAs(new Uint8Array(60_000_000));
    expect(bomb.length).toBeLessThan(90_000);
    const before = process.memoryUsage().arrayBuffers;
    expect(planOfFragment(bomb)).toEqual({
      ok: false,
      message: 'the plan in the link is longer than 4 MB and is not read',
    });
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(30_000_000);
  });

  test('too large for a link is said, with its length', () => {
    const vertices = Array.from({ length: 4000 }, (_, i) => [i * 1.37, (i * 7919) % 1000, i % 97]);
    const plan = {
      ...demoPlan(),
      obstacles: [{ id: 'scan', shape: 'mesh', vertices, triangles: [[0, 1, 2]] }],
    } as unknown as Plan;
    const link = planToFragment(plan);
    expect(link).toMatchObject({ ok: false, most: LONGEST_LINK });
    if (!link.ok) expect(link.length).toBeGreaterThan(LONGEST_LINK);
  });
});
