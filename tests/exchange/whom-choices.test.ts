import { describe, expect, it } from 'vitest';
import { whomChoices } from '../../src/exchange';
import { evaluatePlan } from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import type { Plan } from '../../src/plan/types';

function choicesFor(alignment: Plan['alignment'], chosen?: string) {
  const plan: Plan = { ...demoPlan(), alignment };
  const answer = evaluatePlan(plan);
  const result = answer.ok ? answer.options[0] : undefined;
  if (!result) throw new Error('expected a result');
  const choices = whomChoices({ plan, result }, chosen);
  if (!choices) throw new Error('expected choices');
  return choices;
}

describe('whom the delays are exported for', () => {
  const one = { seat: 'front-right', sampleRateHz: 48000 };
  const weighted = {
    sampleRateHz: 48000,
    by: 'seats' as const,
    seats: [
      { id: 'front-left', weight: 2 },
      { id: 'front-right', weight: 1 },
    ],
  };

  it('is the plan’s own seat to begin with, and says so', () => {
    const { value, settings, sentence } = choicesFor(one);
    expect(value).toBe('seat:front-right');
    expect(settings).toEqual({ by: 'seat', seat: 'front-right' });
    expect(sentence).toBe('For the front right seat, as the plan is aligned.');
  });

  it('is the plan’s compromise to begin with where it has one, with its weights', () => {
    const { value, settings, sentence } = choicesFor(weighted);
    expect(value).toBe('seats');
    expect(settings).toEqual({ by: 'seats', seats: weighted.seats });
    expect(sentence).toBe(
      'The best compromise over front left seat (counts 2), front right seat (counts 1), as the plan is aligned.',
    );
  });

  it('can be another than the plan’s, and then says what the plan itself does', () => {
    expect(choicesFor(weighted, 'seat:front-left').sentence).toBe(
      'For the front left seat; the plan itself is aligned for several.',
    );
    const several = choicesFor(one, 'seats');
    expect(several.settings).toMatchObject({ by: 'seats' });
    expect(several.sentence).toMatch(/, all counting alike; the plan itself is aligned for the fr/);
  });

  it('goes back to the plan’s own when the seat chosen is no more', () => {
    expect(choicesFor(one, 'seat:boot').value).toBe('seat:front-right');
  });
});
