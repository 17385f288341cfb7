import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type ImpulseAnswer, readImpulseText } from '../../src/exchange';

const read = (answer: ImpulseAnswer) => {
  if (!answer.ok) throw new Error(answer.message);
  return { ...answer, samples: [...answer.samples] };
};
const refusal = (text: string) => {
  const answer = readImpulseText(text);
  return answer.ok ? 'was read' : answer.message;
};
const VALUES = Array.from({ length: 20 }, (_, i) => (i === 5 ? 0.75 : i % 3 ? -0.125 : 0));
const times = (rateHz: number, perSecond: number, digits: number, start = 0) =>
  VALUES.map((_, i) => (((i + start) * perSecond) / rateHz).toFixed(digits));
const table = (first: readonly string[], mark: string, ...heading: string[]) =>
  [...heading, ...first.map((time, i) => `${time}${mark}${VALUES[i]}`)].join('\n');

describe('an impulse response as text', () => {
  test('one sample in each line has no rate, and says so', () => {
    const answer = read(readImpulseText(`# measured\nvalue\n\n${VALUES.join('\r\n')}\r\n`));
    expect(answer).toMatchObject({ sampleRateHz: null, startMs: 0, samples: VALUES });
  });

  test('one sample in each line with decimal commas', () => {
    const text = VALUES.map((value) => String(value).replace('.', ',')).join('\n');
    expect(read(readImpulseText(text)).samples).toEqual(VALUES);
  });

  test.each([
    ['tabs', '\t'],
    ['blanks', '  '],
    ['semicolons', ';'],
    ['commas', ','],
    ['commas and blanks', ', '],
  ])('seconds and samples parted by %s', (_, mark) => {
    const answer = read(readImpulseText(table(times(44100, 1, 9), mark)));
    expect(answer).toMatchObject({ sampleRateHz: 44100, samples: VALUES });
  });

  test.each(['\t', ' ', ';', '; '])('decimal commas, parted by "%s"', (mark) => {
    const text = table(times(48000, 1000, 4), mark).replaceAll('.', ',');
    expect(read(readImpulseText(text))).toMatchObject({ sampleRateHz: 48000, samples: VALUES });
  });

  test('seconds and ms are told apart by what they would mean, or by the heading', () => {
    for (const rate of [8000, 44100, 48000, 96000, 192000]) {
      expect(read(readImpulseText(table(times(rate, 1, 9), ' '))).sampleRateHz).toBe(rate);
      expect(read(readImpulseText(table(times(rate, 1000, 6), ' '))).sampleRateHz).toBe(rate);
    }
    expect(
      read(readImpulseText(table(times(48000, 1000, 6), ' ', 'Time (ms) Value'))).sampleRateHz,
    ).toBe(48000);
    expect(read(readImpulseText(table(times(48000, 1, 9), ' ', 'time [s] p'))).sampleRateHz).toBe(
      48000,
    );
    expect(refusal(table(times(48000, 1000, 6), ' ', 'Time (s) Value'))).toMatch(
      /^line 2: steps of 0\.02083 are no sample rate .* in the unit the heading names/,
    );
  });

  test('times that begin before zero, or after, are kept', () => {
    const early = read(readImpulseText(table(times(48000, 1000, 6, -48), ' ')));
    expect(Math.abs(early.startMs + 1)).toBeLessThan(1e-6);
    expect(early.sampleRateHz).toBe(48000);
  });

  test('an unusual rate is read as it is', () => {
    const { sampleRateHz } = read(readImpulseText(table(times(51200, 1, 9), ' ')));
    expect(Math.abs((sampleRateHz ?? 0) - 51200)).toBeLessThan(1);
  });

  test.each([
    ['nothing', '', /^the file has no line with a number/],
    ['a heading alone', 'Time Value', /no line with a number/],
    ['too few', '0.1\n0.2', /^2 samples only; 16 are the least/],
    ['three columns', table(times(48000, 1, 9), ' ').replaceAll(/$/gm, ' 1'), /^line 1: 3 columns/],
    [
      'words in between',
      `${VALUES.join('\n')}\nend of file`,
      /^line 21: expected a number, got "end of file"/,
    ],
    [
      'a word for a sample',
      `${table(times(48000, 1, 9), ' ')}\n0.0004167 x`,
      /^line 21: the sample is not a number, got "x"/,
    ],
    [
      'a column missing',
      table(times(48000, 1, 9), ' ').replace(/^(0\.000020833) .*$/m, '$1'),
      /^line 2: columns: 1 where line 1 has 2/,
    ],
    ['falling times', table(times(48000, 1, 9).reverse(), ' '), /^line 20: times do not rise/],
    [
      'a gap',
      table(times(48000, 1, 9).toSpliced(3, 1, '0.0000900'), ' '),
      /^line 4: a time of 0\.00009 where 0\.0000625 would be even/,
    ],
    [
      'steps of no rate',
      table(times(1, 1, 0), ' '),
      /^line 1: steps of 1 are no sample rate .* neither/,
    ],
    ['numbers beyond belief', `${VALUES.join('\n')}\n1e200`, /^line 21: a sample of "1e200"/],
    [
      'commas in two roles',
      VALUES.map((_, i) => `0,000${i},0,5`).join('\n'),
      /^line 1: the sample is not a number/,
    ],
  ])('%s is refused with where and what', (_, text, message) => {
    expect(refusal(text)).toMatch(message);
  });

  test('any text gives a sound or a sentence', () => {
    const line = fc.oneof(
      fc.string(),
      fc.double().map(String),
      fc.constantFrom('0,5', '1;2', '1,2,3', ''),
    );
    fc.assert(
      fc.property(fc.array(line, { maxLength: 40 }), (lines) => {
        const answer = readImpulseText(lines.join('\n'));
        if (answer.ok) expect(answer.samples.every(Number.isFinite)).toBe(true);
        else expect(answer.message.length).toBeGreaterThan(10);
      }),
      { numRuns: 200 },
    );
  });
});
