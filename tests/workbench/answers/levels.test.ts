import { beforeAll, describe, expect, test } from 'vitest';
import { evaluatePlan, levelsAt, type Stage } from '../../../src/geometry';
import { demoPlan } from '../../../src/plan/demo';
import { groupsOf } from '../../../src/workbench/answers/groups';
import { groupLevels } from '../../../src/workbench/answers/levels/group-levels';
import { levelWords } from '../../../src/workbench/answers/levels/level-words';

function stageOf(change: (plan: ReturnType<typeof demoPlan>) => void = () => {}): Stage {
  const plan = demoPlan();
  change(plan);
  const answer = evaluatePlan(plan);
  if (!answer.ok) throw new Error(answer.error.message);
  const [option, result] = [plan.options[0], answer.options[0]];
  if (!option || !result) throw new Error('the demo has no option');
  return { plan, cabin: answer.cabin, option, result };
}

const groupAt = (stage: Stage, place: number) => {
  const group = groupsOf(stage.option.speakers)[place];
  if (!group) throw new Error(`there is no group ${place}`);
  return group;
};

describe('levels of the pair looked at', () => {
  let stage: Stage;
  beforeAll(() => {
    stage = stageOf();
  });

  test('are the study’s own, left and right not mixed up', () => {
    const levels = groupLevels(stage, 'front-left', groupAt(stage, 0));
    const study = levelsAt(stage, 'front-left')[0];
    expect(levels?.sides.map(({ speaker }) => speaker.side)).toEqual(['left', 'right']);
    expect(levels?.sides[0]?.bands).toEqual(study?.left);
    expect(levels?.sides[1]?.bands).toEqual(study?.right);
    expect(levels?.differences).toEqual(study?.differences);
  });

  test('in words: where both beam, what is lost off the axis, how far they are apart', () => {
    const levels = groupLevels(stage, 'front-left', groupAt(stage, 0));
    const words = levels ? levelWords(levels, stage.option.speakers) : [];
    // A 25 mm piston has lost half its power at 90° where ka = 1.616: 7.06 kHz at 343 m/s.
    expect(words[0]).toBe('Both begin to beam at about 7.1 kHz.');
    expect(words[1]).toMatch(/^Off the axis here at 20 kHz: left −\d\.\d dB, right −\d\.\d dB\.$/);
    expect(words[3]).toMatch(/^Left less right: from /);
  });

  test('the nearer speaker of a pair is the louder one: the sign of the difference is left’s', () => {
    const levels = groupLevels(stage, 'front-left', groupAt(stage, 0));
    const [lowest] = levels?.differences ?? [];
    expect(lowest?.levelDb).toBeGreaterThan(0);
    const across = groupLevels(stage, 'front-right', groupAt(stage, 0));
    expect(across?.differences[0]?.levelDb).toBeLessThan(0);
  });

  test('a speaker without a twin has its octaves, and no difference', () => {
    const alone = stageOf((plan) => {
      const [option] = plan.options;
      if (!option) return;
      const speakers = option.speakers
        .filter(({ id }) => id === 'tweeter-left')
        .map(({ pair: _, side: __, ...speaker }) => speaker);
      Object.assign(option, { speakers });
    });
    const levels = groupLevels(alone, 'front-left', groupAt(alone, 0));
    expect(levels?.differences).toEqual([]);
    expect(levels?.bandName).toBe('octave');
    const arrival = alone.result.seats[0]?.arrivals[0];
    const band = arrival?.bands[0];
    const expected =
      (arrival?.levelDb ?? 0) + (band?.directivityDb ?? 0) - (band?.obstructionDb ?? 0);
    expect(Math.abs((levels?.sides[0]?.bands[0]?.levelDb ?? 99) - expected)).toBeLessThan(1e-9);
    expect(levels && levelWords(levels, alone.option.speakers)[0]).toBe(
      'The tweeter at about 7.1 kHz begins to beam.',
    );
  });

  test('a speaker without a band says why it has no levels', () => {
    const without = stageOf((plan) => {
      const [option] = plan.options;
      if (!option) return;
      const speakers = option.speakers.map(({ bandHz: _, ...speaker }) => speaker);
      Object.assign(option, { speakers });
    });
    const levels = groupLevels(without, 'front-left', groupAt(without, 0));
    for (const side of levels?.sides ?? []) {
      expect(side.bands).toEqual([]);
      expect(side.reasons.join(' ')).toContain('no band');
    }
  });
});
