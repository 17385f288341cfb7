import { describe, expect, it } from 'vitest';
import { planToFragment } from '../../src/exchange';
import { demoPlan } from '../../src/plan/demo';
import { NEWER } from '../../src/workbench/plans/judge-file';
import { judgeLink } from '../../src/workbench/plans/judge-link';

const WHY = 'looked at only';

function fragmentOf(change: object = {}): string {
  const made = planToFragment({ ...demoPlan(), ...change });
  if (!made.ok) throw new Error('it fits into a link');
  return made.fragment;
}

describe('a link', () => {
  it('opens to be looked at only, whether pasted whole or from the # on or after it', () => {
    const fragment = fragmentOf();
    for (const link of [
      fragment,
      fragment.slice(1),
      ` https://garage.example/tools/${fragment}.\n`,
    ])
      expect(judgeLink(link, WHY)).toMatchObject({
        kind: 'open',
        readOnly: WHY,
        plan: { title: demoPlan().title },
      });
  });

  it('with a plan of a newer version stays closed to changes for that reason', () => {
    expect(judgeLink(fragmentOf({ version: 99 }), WHY)).toMatchObject({
      kind: 'open',
      readOnly: NEWER,
    });
  });

  it('that is no link, or of something else, is refused in a sentence', () => {
    expect(judgeLink('hello', WHY)).toEqual({
      kind: 'refused',
      sentence: 'the link holds no plan',
    });
    expect(judgeLink(fragmentOf({ format: 'something' }), WHY)).toMatchObject({
      kind: 'refused',
      sentence: 'format: must be "earpath-plan", got the text "something"',
    });
  });

  it('with one bad speaker is offered without it, to be looked at only', () => {
    const plan = demoPlan();
    const [first, ...others] = plan.options;
    const [speaker, ...rest] = first?.speakers ?? [];
    const bad = [{ ...first, speakers: [{ ...speaker, diaphragm: -5 }, ...rest] }, ...others];
    expect(judgeLink(fragmentOf({ options: bad }), WHY)).toMatchObject({
      kind: 'offer',
      readOnly: WHY,
    });
  });
});
