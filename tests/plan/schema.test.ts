import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { formatRefusal, readPlan, writePlan } from '../../src/plan/schema';
import type { Plan } from '../../src/plan/types';
import { smallPlan } from '../store/fixtures';

const golden = readFileSync(new URL('./fixtures/version-1.json', import.meta.url), 'utf8');

function opened(text: string) {
  const answer = readPlan(text);
  if (!answer.ok) throw new Error(formatRefusal(answer.error));
  return answer;
}

describe('reading and writing plans', () => {
  test('the file that holds every field opens without a warning', () => {
    const { plan, warnings, newer } = opened(golden);
    expect(warnings).toEqual([]);
    expect(newer).toBe(false);
    expect(plan).toEqual(JSON.parse(golden));
  });

  test('what is written reads back the same, and is written the same again', () => {
    for (const plan of [opened(golden).plan, smallPlan()]) {
      const text = writePlan(plan);
      expect(opened(text).plan).toEqual(plan);
      expect(writePlan(opened(text).plan)).toBe(text);
    }
  });

  test('fields are written in one order, however they came', () => {
    const turned = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(turned);
      if (typeof value !== 'object' || value === null) return value;
      return Object.fromEntries(
        Object.entries(value)
          .reverse()
          .map(([key, item]) => [key, turned(item)]),
      );
    };
    const backwards = turned(JSON.parse(golden)) as Plan;
    expect(writePlan(backwards)).toBe(writePlan(opened(golden).plan));
  });

  test('what is missing is filled in, so the shortest plan is a plan', () => {
    const { plan } = opened('{"format":"earpath-plan","version":1,"options":[{"id":"a"}]}');
    expect(plan).toEqual({
      format: 'earpath-plan',
      version: 1,
      title: 'Untitled plan',
      air: { temperatureC: 20, relativeHumidityPercent: 50, pressureKPa: 101.325 },
      cabin: { template: 'none', wheelSide: 'left' },
      seats: [],
      options: [{ id: 'a', speakers: [] }],
      alignment: { sampleRateHz: 48000 },
    });
  });

  test('unknown fields are named and come through reading and writing unharmed', () => {
    const data = JSON.parse(golden);
    data.colour = { trim: ['beige', 1, null] };
    data.cabin.panels[0].glue = 'two-part';
    data.obstacles[1].leather = true;
    data.options[0].speakers[0].mount.screws = 4;
    data.options[0].speakers[1].aim.by = 'eye';
    data['odd name'] = 1;
    const { plan, warnings } = opened(JSON.stringify(data));
    expect(
      warnings.map((warning) => /the field (.+) is not known/.exec(warning)?.[1]).sort(),
    ).toEqual([
      '["odd name"]',
      'cabin.panels[0].glue',
      'colour',
      'obstacles[1].leather',
      'options[0].speakers[0].mount.screws',
      'options[0].speakers[1].aim.by',
    ]);
    expect(JSON.parse(writePlan(plan))).toEqual(data);
  });

  test('a byte order mark in front is no harm', () => {
    expect(opened(`\uFEFF${golden}`).plan.title).toBe('Every field of version 1');
    const bytes = new TextEncoder().encode(`\uFEFF${golden}`);
    expect(readPlan(bytes).ok).toBe(true);
  });

  test('a number that is not finite is never written', () => {
    const plan = smallPlan();
    const bad = { ...plan, air: { ...plan.air, temperatureC: Number.NaN } };
    expect(() => writePlan(bad)).toThrow(/expected a finite number at \.air\.temperatureC/);
  });

  test('dimensions out of range are refused, and the plan offered to be mended', () => {
    const data = JSON.parse(golden);
    data.cabin.dimensions.seatHeight = 28000;
    const answer = readPlan(JSON.stringify(data));
    expect(answer.ok).toBe(false);
    if (answer.ok) return;
    expect(answer.error.path).toBe('cabin.dimensions.seatHeight');
    expect(answer.withoutBad).toBeUndefined();
    expect(answer.asItIs?.plan).toEqual(data);
  });

  test('a scan of 200,000 triangles is read as an obstacle', () => {
    const vertices = Array.from({ length: 100_000 }, (_, i) => [i % 1000, i / 1000, i % 7]);
    const triangles = Array.from({ length: 200_000 }, (_, i) => [
      i % 100_000,
      (i + 1) % 100_000,
      (i + 2) % 100_000,
    ]);
    const scan = { id: 'scan', shape: 'mesh', vertices, triangles };
    const text = JSON.stringify({ ...smallPlan(), obstacles: [scan] });
    expect(readPlan(text, { references: false }).ok).toBe(true);
  });
});

test('responses that no longer cover a widened band leave the plan readable', () => {
  const data = JSON.parse(golden);
  data.options[0].speakers[0].bandHz = [500, 20000];
  expect(readPlan(JSON.stringify(data)).ok).toBe(true);
});

describe('sentences', () => {
  const refusal = (change: (plan: never) => void) => {
    const data = JSON.parse(golden);
    change(data as never);
    const answer = readPlan(JSON.stringify(data));
    return answer.ok ? 'accepted' : formatRefusal(answer.error);
  };

  // biome-ignore lint/suspicious/noExplicitAny: the point is to write what the types forbid.
  const cases: [string, (plan: any) => void][] = [
    [
      'options[0].speakers[2].position: must be three numbers [x, y, z], got the text "here"',
      (plan) => {
        plan.options[0].speakers[2].position = 'here';
      },
    ],
    [
      'options[0].speakers[0].role: must be given',
      (plan) => {
        delete plan.options[0].speakers[0].role;
      },
    ],
    [
      'options[0].speakers[0].bandHz: must run from low to high, got 300 and 200',
      (plan) => {
        plan.options[0].speakers[0].bandHz = [300, 200];
      },
    ],
    [
      'options[0].speakers[2].mount: give a position or a mount, not both (speaker "sub")',
      (plan) => {
        plan.options[0].speakers[2].mount = { panel: 'pillar-left', u: 0, v: 0 };
      },
    ],
    [
      'options[0].speakers[2].position: give a position or a mount (speaker "sub")',
      (plan) => {
        delete plan.options[0].speakers[2].position;
      },
    ],
    [
      'options[0].speakers[2].side: must be given, "left" or "right", for a speaker of the pair "bass"',
      (plan) => {
        plan.options[0].speakers[2].pair = 'bass';
      },
    ],
    [
      'options[0].speakers[1].side: the pair "tweeter" already has a left speaker, "tweeter-left"',
      (plan) => {
        plan.options[0].speakers[1].side = 'left';
      },
    ],
    [
      'options[0].speakers[0].responses: the response on the axis (0°) is missing (speaker "tweeter-left")',
      (plan) => {
        plan.options[0].speakers[0].responses.shift();
      },
    ],
    [
      'options[0].crossovers[0]: a Linkwitz-Riley crossover is two equal Butterworth filters in a row, so its order is even, got 3',
      (plan) => {
        plan.options[0].crossovers[0].order = 3;
      },
    ],
    [
      'options[0].crossovers[0].below: there is no pair "midbass" in this option',
      (plan) => {
        plan.options[0].crossovers[0].below = 'midbass';
      },
    ],
    [
      'options[0].crossovers[1]: these two pairs already have a crossover, options[0].crossovers[0]',
      (plan) => {
        const [first] = plan.options[0].crossovers;
        plan.options[0].crossovers.push({ ...first, below: first.above, above: first.below });
      },
    ],
    [
      'alignment.seats[1].id: there is no seat "roof" in this plan',
      (plan) => {
        plan.alignment.seats[1].id = 'roof';
      },
    ],
    [
      'alignment.seats[0].weight: must be more than 0 and at most 1000, got 0',
      (plan) => {
        plan.alignment.seats[0].weight = 0;
      },
    ],
    [
      'cabin: must be an object with fields, got a list of 0',
      (plan) => {
        plan.cabin = [];
      },
    ],
    [
      'cabin.measured["kick-left"].depthBehind: must be between 0 and 100000, got -4',
      (plan) => {
        plan.cabin.measured = { 'kick-left': { depthBehind: -4 } };
      },
    ],
    [
      'cabin.measured: must be an object of panels, got a list of 0',
      (plan) => {
        plan.cabin.measured = [];
      },
    ],
    [
      'obstacles[3].triangles[0][2]: there is no vertex 7; the mesh has 3',
      (plan) => {
        plan.obstacles[3].triangles[0][2] = 7;
      },
    ],
    [
      'obstacles[1].axis: must have a length, got [0, 0, 0]',
      (plan) => {
        plan.obstacles[1].axis = [0, 0, 0];
      },
    ],
    [
      'alignment.seat: there is no seat "attic" in this plan',
      (plan) => {
        plan.alignment.seat = 'attic';
      },
    ],
    [
      'options[0].speakers[2].aim: a free point has no panel whose normal it could take (speaker "sub")',
      (plan) => {
        plan.options[0].speakers[2].aim = { kind: 'normal' };
      },
    ],
    [
      'format: must be "earpath-plan", got the text "other"',
      (plan) => {
        plan.format = 'other';
      },
    ],
  ];
  test.each(cases)('%s', (sentence, change) => {
    expect(refusal(change)).toBe(sentence);
  });
});
