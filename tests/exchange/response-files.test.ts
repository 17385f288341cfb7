/** Measured responses from several files at once. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { angleInName } from '../../src/exchange/angle-in-name';
import { decodeMeasurement, MAX_MEASUREMENT_BYTES } from '../../src/exchange/decode-measurement';
import { type FileChoice, gatherResponses } from '../../src/exchange/response-files';
import { MOST_POINTS, thinResponse } from '../../src/exchange/thin-response';

const file = (name: string, ...lines: string[]) => ({ name, text: lines.join('\n') });
const gather = (
  files: { name: string; text: string }[],
  choices: FileChoice[] = [],
  band?: [number, number],
) => gatherResponses(files, choices, band);

const axis = file('mid 0deg.txt', '500 80', '1000 82', '2000 81');
const thirty = file('mid 30deg.txt', '500 79', '1000 79', '2000 75');

describe('the angle in a file’s name', () => {
  test.each([
    ['mid 30deg.txt', 30],
    ['mid_15°.frd', 15],
    ['tw25 60 deg.txt', 60],
    ['mid -15deg.txt', 15],
    ['22,5deg.txt', 22.5],
    ['Woofer On-Axis.txt', 0],
    ['midonaxis.txt', null],
    ['tweeter-45.txt', 45],
    ['M75-45.txt', 45],
    ['45', 45],
    ['2024-05-30.txt', null],
    ['mid.txt', null],
    ['mid 200.txt', null],
    ['mid 1.5kHz.txt', null],
  ])('%s', (name, angle) => {
    expect(angleInName(name)).toBe(angle);
  });
});

describe('files chosen together', () => {
  test('one file for each angle become one set, by rising angle', () => {
    const { responses, problem, files } = gather([thirty, axis], [], [500, 2000]);
    expect(problem).toBeNull();
    expect(responses).toEqual([
      { offAxisDeg: 0, frequencyHz: [500, 1000, 2000], levelDb: [80, 82, 81] },
      { offAxisDeg: 30, frequencyHz: [500, 1000, 2000], levelDb: [79, 79, 75] },
    ]);
    expect(files.map(({ asksAngle, angleDeg }) => [asksAngle, angleDeg])).toEqual([
      [true, 30],
      [true, 0],
    ]);
  });

  test('a table with angles in its heading asks nothing', () => {
    const table = file('all.csv', 'Hz;0;30', '500;80;79', '1000;82;79');
    const { responses, problem, files } = gather([table]);
    expect(problem).toBeNull();
    expect(responses.map(({ offAxisDeg }) => offAxisDeg)).toEqual([0, 30]);
    expect(files[0]).toMatchObject({ asksAngle: false, third: null });
  });

  test('an angle nobody says is asked for, and what is said counts over the name', () => {
    const nameless = file('mid.txt', '500 79', '1000 79', '2000 75');
    const asked = gather([axis, nameless]);
    expect(asked.problem).toBe('mid.txt, at which angle off the axis was it measured?');
    expect(asked.files[1]?.problem).toContain('at which angle');
    const said = gather([axis, thirty], [{}, { angleDeg: 45 }]);
    expect(said.responses.map(({ offAxisDeg }) => offAxisDeg)).toEqual([0, 45]);
    expect(gather([axis, thirty], [{}, { angleDeg: null }]).problem).toContain('at which angle');
  });

  test('a third column without a name is asked about, and read as it best can be', () => {
    const phase = file('mid 0deg.txt', '500 80 12', '1000 82 40', '2000 81 90');
    const first = gather([phase]);
    expect(first.files[0]).toMatchObject({ third: 'phase', problem: null });
    expect(first.responses).toEqual([
      { offAxisDeg: 0, frequencyHz: [500, 1000, 2000], levelDb: [80, 82, 81] },
    ]);
    const table = file('mid.txt', '500 80 0', '1000 82 0', '500 79 30', '1000 79 30');
    const read = gather([table]);
    expect(read.files[0]?.third).toBe('angle');
    expect(read.responses.map(({ offAxisDeg }) => offAxisDeg)).toEqual([0, 30]);
    // Said otherwise, it is refused where it then makes no sense.
    expect(gather([table], [{ third: 'phase' }]).problem).toMatch(/^mid\.txt, line 3: /);
    const named = file('mid 0deg.txt', 'Hz dB phase', '500 80 12', '1000 82 40');
    expect(gather([named]).files[0]?.third).toBeNull();
  });

  test('one bad file is named with its line; the others are shown all the same', () => {
    const bad = file('bad.txt', '100 80', '200 81', '150 82');
    const { problem, responses, files } = gather([axis, bad]);
    expect(problem).toMatch(/^bad\.txt, line 3: 150 Hz after 200 Hz/);
    expect(files.map((one) => one.problem === null)).toEqual([true, false]);
    expect(responses).toHaveLength(1);
  });

  test('what does not cover the band is refused with file, angle and what is missing', () => {
    expect(gather([axis, thirty], [], [400, 2500]).problem).toBe(
      'mid 0deg.txt: the response at 0° runs from 500 to 2000 Hz; of the speaker’s band it leaves ' +
        'out what lies from 400 to 500 and from 2000 to 2500 Hz',
    );
    const short = file('short 30.txt', '500 79', '1000 79', '1900 75');
    expect(gather([axis, short], [], [500, 2000]).problem).toMatch(
      /^short 30\.txt: .* from 1900 to 2000 Hz$/,
    );
    expect(gather([axis, thirty], [], [500, 2000]).problem).toBeNull();
  });

  test('the same angle twice is refused with both files, and so is a set without the axis', () => {
    expect(gather([axis, thirty, { ...thirty, name: 'again 30.txt' }]).problem).toBe(
      'mid 30deg.txt and again 30.txt both hold the response at 30° off the axis',
    );
    expect(gather([thirty]).problem).toBe('the response on the axis (0°) is missing');
  });

  test('no files are no problem yet, and nothing to take', () => {
    expect(gather([])).toEqual({ files: [], responses: [], problem: null, thinned: null });
  });
});

describe('a response of very many points', () => {
  const many = (count: number, level: (i: number) => number) => ({
    offAxisDeg: 0,
    frequencyHz: Array.from({ length: count }, (_, i) => 20 + i * 0.3),
    levelDb: Array.from({ length: count }, (_, i) => level(i)),
  });

  test('is left alone as long as it is no longer than it may be', () => {
    const short = many(MOST_POINTS, (i) => Math.sin(i));
    expect(thinResponse(short)).toEqual({ response: short, withinDb: 0 });
  });

  test('is thinned so that no measured level is farther off than it says', () => {
    const whole = many(66_000, (i) => 85 + 8 * Math.sin(i / 900) + 0.01 * Math.sin(i * 1.7));
    const thinned = thinResponse(whole);
    if (!thinned) throw new Error('expected it to be thinned');
    const { response, withinDb } = thinned;
    expect(withinDb).toBeGreaterThan(0);
    expect(response.frequencyHz.length).toBeLessThanOrEqual(MOST_POINTS);
    expect(response.frequencyHz[0]).toBe(20);
    expect(response.frequencyHz.at(-1)).toBe(whole.frequencyHz.at(-1));
    expect(farthestOff(whole, response)).toBeLessThanOrEqual(withinDb + 1e-9);
  });

  test('whatever its levels, the promise holds', () => {
    fc.assert(
      fc.property(
        fc.integer(),
        fc.double({ min: 0.001, max: 0.03, noNaN: true }),
        (seed, rough) => {
          let state = seed >>> 0;
          const random = () => {
            state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
            return state / 2 ** 32 - 0.5;
          };
          let level = 80;
          const whole = many(5000, () => (level += random() * rough));
          const thinned = thinResponse(whole);
          if (thinned) expect(farthestOff(whole, thinned.response)).toBeLessThan(0.2 + 1e-9);
        },
      ),
      { numRuns: 40 },
    );
  });

  test('that is all noise is refused rather than smoothed in silence', () => {
    const noise = many(9000, (i) => (i % 2) * 6);
    expect(thinResponse(noise)).toBeNull();
    const text = noise.frequencyHz.map((hz, i) => `${hz.toFixed(1)} ${noise.levelDb[i]}`);
    expect(gather([file('noise 0deg.txt', ...text)]).problem).toMatch(
      /^noise 0deg\.txt: 9000 points that cannot be thinned .*; smooth it/,
    );
  });

  type Response = { frequencyHz: readonly number[]; levelDb: readonly number[] };

  /** The most any point of the whole is off the straight lines of the thinned one, dB. */
  function farthestOff(whole: Response, { frequencyHz: f, levelDb }: Response): number {
    let [k, most] = [0, 0];
    for (const [i, hz] of whole.frequencyHz.entries()) {
      while (k < f.length - 2 && hz > (f[k + 1] as number)) k++;
      const [a, b] = [f[k] as number, f[k + 1] as number];
      const t = Math.log(hz / a) / Math.log(b / a);
      const line = (levelDb[k] as number) * (1 - t) + (levelDb[k + 1] as number) * t;
      most = Math.max(most, Math.abs(line - (whole.levelDb[i] as number)));
    }
    return most;
  }
});

describe('the bytes of a measured file', () => {
  const bytes = (...codes: number[]) => new Uint8Array(codes);

  test('are read as UTF-8, as UTF-16 with its mark, and as the older western code', () => {
    expect(decodeMeasurement(new TextEncoder().encode('0° −3'))).toEqual({
      ok: true,
      text: '0° −3',
    });
    expect(decodeMeasurement(bytes(0xff, 0xfe, 0x30, 0, 0xb0, 0))).toEqual({
      ok: true,
      text: '0°',
    });
    expect(decodeMeasurement(bytes(0xfe, 0xff, 0, 0x30, 0, 0xb0))).toEqual({
      ok: true,
      text: '0°',
    });
    expect(decodeMeasurement(bytes(0x30, 0xb0))).toEqual({ ok: true, text: '0°' });
  });

  test('that are no text, or far too many, are refused in words', () => {
    expect(decodeMeasurement(bytes(0x50, 0x4b, 3, 4, 0, 0))).toEqual({
      ok: false,
      message: 'it is no text file',
    });
    expect(decodeMeasurement(new Uint8Array(MAX_MEASUREMENT_BYTES + 1))).toMatchObject({
      ok: false,
    });
  });
});
