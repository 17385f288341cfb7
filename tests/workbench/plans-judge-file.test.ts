import { describe, expect, it } from 'vitest';
import { writePlan } from '../../src/plan/schema';
import type { Plan } from '../../src/plan/types';
import { judgeBlob, judgeFile, shownRefusal } from '../../src/workbench/plans/judge-file';

const plan: Plan = {
  format: 'earpath-plan',
  version: 1,
  title: 'Points in the open',
  air: { temperatureC: 20, relativeHumidityPercent: 50, pressureKPa: 101.325 },
  cabin: { template: 'none', wheelSide: 'left' },
  seats: [{ id: 'listener', head: [1200, -350, 950] }],
  options: [
    {
      id: 'a',
      title: 'First',
      speakers: [
        { id: 'one', role: 'tweeter', position: [100, -500, 700] },
        { id: 'two', role: 'tweeter', position: [100, 500, 700] },
      ],
    },
  ],
  alignment: { seat: 'listener', sampleRateHz: 48000 },
};

const changed = (change: (data: Record<string, unknown>) => void): string => {
  const data = JSON.parse(writePlan(plan)) as Record<string, unknown>;
  change(data);
  return JSON.stringify(data);
};

describe('a plan file handed to the page', () => {
  it('opens when all is well, with nothing to say', () => {
    expect(judgeFile(writePlan(plan))).toMatchObject({
      kind: 'open',
      readOnly: null,
      notes: [],
      plan: { title: 'Points in the open' },
    });
  });

  it('is refused in one sentence that says where and what', () => {
    const text = changed((data) => {
      data.alignment = { seat: 'listener', sampleRateHz: 'fast' };
    });
    const answer = judgeFile(text);
    expect(answer.kind).toBe('refused');
    expect(answer).toHaveProperty('sentence', expect.stringMatching(/^alignment\.sampleRateHz: /));
  });

  it('is refused when it is empty, cut short or no text', () => {
    for (const input of ['', writePlan(plan).slice(0, 200), new Uint8Array([0xff, 0xd8, 0xff])])
      expect(judgeFile(input).kind).toBe('refused');
  });

  it('is opened to look at only when a newer version made it', () => {
    const answer = judgeFile(
      changed((data) => {
        data.version = 99;
      }),
    );
    expect(answer).toMatchObject({ kind: 'open' });
    expect(answer).toHaveProperty('readOnly', expect.stringContaining('newer version'));
    // Its version stays known, so that it is never written over by this one.
    expect(answer).toHaveProperty('plan.version', 99);
  });

  it('with one bad speaker is offered without it, the speaker named by its path', () => {
    const answer = judgeFile(
      changed((data) => {
        const [option] = data.options as { speakers: Record<string, unknown>[] }[];
        (option?.speakers[1] as Record<string, unknown>).position = [100, 'right', 700];
      }),
    );
    if (answer.kind !== 'offer') throw new Error(`expected an offer, got ${answer.kind}`);
    expect(answer.sentence).toMatch(/^options\[0\]\.speakers\[1\]/);
    expect(answer.accept).toBe('Open without that speaker');
    expect(answer.plan.options[0]?.speakers.map(({ id }) => id)).toEqual(['one']);
  });

  it('whose dimensions leave no cabin is refused, and the two that disagree are named', () => {
    const answer = judgeFile(
      changed((data) => {
        data.seats = [];
        data.alignment = { sampleRateHz: 48000 };
        // A roof far above a seat on the floor: both within their ranges, no car has both.
        const dimensions = { headroom: 1250, seatHeight: 120 };
        data.cabin = { template: 'estate', wheelSide: 'left', dimensions };
        data.options = [{ id: 'a', title: 'First', speakers: [] }];
      }),
    );
    expect(answer.kind).toBe('refused');
    expect(answer).toHaveProperty(
      'sentence',
      expect.stringMatching(/headroom .* and seatHeight .* disagree/),
    );
  });

  it('is refused with a field’s path as it stands in the file, plain words as a sentence', () => {
    expect(shownRefusal('options[0].id: must be text')).toBe('options[0].id: must be text.');
    expect(shownRefusal('format: must be "x", got nothing')).toMatch(/^format: /);
    expect(shownRefusal('the file is empty')).toBe('The file is empty.');
    expect(shownRefusal('the plan was made by a newer version (9): no')).toMatch(/^The plan/);
  });

  it('with a field nobody knows opens, keeps the field and names it', () => {
    const answer = judgeFile(
      changed((data) => {
        data.paintCode = 'LY9B';
      }),
    );
    if (answer.kind !== 'open') throw new Error(`expected it to open, got ${answer.kind}`);
    expect(answer.notes.join()).toContain('paintCode');
    expect(writePlan(answer.plan)).toContain('"paintCode": "LY9B"');
  });

  it('of more than the largest size is refused before it is read', async () => {
    let read = false;
    const huge = {
      size: 200_000_000,
      arrayBuffer: async () => {
        read = true;
        return new ArrayBuffer(0);
      },
    };
    const answer = await judgeBlob(huge as unknown as Blob);
    expect(answer).toMatchObject({ kind: 'refused', sentence: expect.stringContaining('200 MB') });
    expect(read).toBe(false);
  });

  it('that cannot be read (taken away meanwhile) is refused, and nothing throws', async () => {
    const gone = {
      size: 10,
      arrayBuffer: () => Promise.reject(new Error('the file has gone')),
    };
    expect(await judgeBlob(gone as unknown as Blob)).toEqual({
      kind: 'refused',
      sentence: 'the file could not be read: the file has gone',
    });
  });
});
