/** Fault 29: measured responses as text, read right or refused with the line number. */
import { describe, expect, test } from 'vitest';
import { MAX_RESPONSE_LENGTH, readResponses } from '../../src/exchange/response-text';
import { measuredDirectivity } from '../../src/geometry/sound/measured-directivity';

const read = (lines: string[], hints = {}) => {
  const answer = readResponses(lines.join('\n'), hints);
  if (!answer.ok) throw new Error(answer.message);
  return answer.responses;
};
const refusal = (lines: string[], hints = {}) => {
  const answer = readResponses(lines.join('\n'), hints);
  if (answer.ok) throw new Error(`read as ${JSON.stringify(answer.responses)}`);
  return answer;
};

const PLAIN = {
  offAxisDeg: null,
  frequencyHz: [1000, 1500.5, 2000],
  levelDb: [-3.2, 0.5, 1],
};

describe('a response that can be read is read right', () => {
  test.each([
    ['blanks', ['1000 -3.2', '1500.5   0.5', '2000 1']],
    ['tabs', ['1000\t-3.2', '1500.5\t0.5', '2000\t1']],
    ['commas', ['1000,-3.2', '1500.5,0.5', '2000,1']],
    ['commas and blanks', ['1000, -3.2', '1500.5, 0.5', '2000, 1']],
    ['semicolons', ['1000;-3.2;', '1500.5; 0.5;', '2000;1;']],
    ['quoted cells', ['"Hz","dB"', '"1000","-3.2"', '"1500.5","0.5"', '"2000","1"']],
    ['printed minus signs', ['1000 −3.2', '1500.5 0.5', '2000 1']],
    ['thousandths', ['1000,000 -3,200', '1500,500 0,500', '2000,000 1,000']],
    ['exponents', ['1e3 -3.2', '1.5005e3 5e-1', '2E+3 1']],
    ['decimal commas and blanks', ['1000 -3,2', '1500,5 0,5', '2000 1']],
    ['decimal commas and semicolons', ['1000;-3,2', '1500,5;0,5', '2000;1']],
    ['decimal commas and tabs', ['1000,0\t-3,2', '1500,5\t,5', '2000,0\t1,0']],
    ['line ends of another system', ['1000 -3.2\r', '1500.5 0.5\r', '2000 1\r']],
    ['a byte order mark', ['\uFEFF1000 -3.2', '1500.5 0.5', '2000 1']],
    ['falling frequencies', ['2000 1', '1500.5 0.5', '1000 -3.2']],
    ['empty lines', ['', '1000 -3.2', '', '1500.5 0.5', '2000 1', '', '']],
    [
      'comments',
      ['* measured', '# in the car', '; at 1 m', '// x', '1000 -3.2', '1500.5 0.5 # dip', '2000 1'],
    ],
    ['a heading in words', ['Freq (Hz)  SPL (dB)', '1000 -3.2', '1500.5 0.5', '2000 1']],
    ['kilohertz', ['kHz dB', '1 -3.2', '1.5005 0.5', '2 1']],
  ])('%s', (_, lines) => {
    expect(read(lines)).toEqual([PLAIN]);
  });

  test('three columns: the third is the phase', () => {
    const lines = ['1000 -3.2 12', '1500.5 0.5 -170', '2000 1 90.5'];
    expect(read(lines)).toEqual([{ ...PLAIN, phaseDeg: [12, -170, 90.5] }]);
    expect(read(['Hz dB phase', ...lines], { thirdColumn: 'angle' })[0]?.phaseDeg).toHaveLength(3);
  });

  test('falling frequencies take their levels and phases along', () => {
    const [one] = read(['2000 1 90', '1000 -3 12']);
    expect(one).toEqual({
      offAxisDeg: null,
      frequencyHz: [1000, 2000],
      levelDb: [-3, 1],
      phaseDeg: [12, 90],
    });
  });

  test('three columns: where nothing names the third, that is said, so that it can be asked', () => {
    const lines = ['1000 -3.2 12', '1500.5 0.5 -170', '2000 1 90.5'];
    expect(readResponses(lines.join('\n')).unnamedThird).toBe(true);
    expect(readResponses(['Hz dB phase', ...lines].join('\n')).unnamedThird).toBeUndefined();
    expect(readResponses('Hz dB angle\n1000 0 0\n2000 0 0').unnamedThird).toBeUndefined();
    expect(readResponses('Hz 0 30\n1000 0 0\n2000 0 0').unnamedThird).toBeUndefined();
    expect(readResponses('1000 0\n2000 0').unnamedThird).toBeUndefined();
    // Also where it cannot be read as it was taken to be.
    const table = '1000 0 0\n2000 0 0\n1000 -1 30\n2000 -2 30';
    expect(readResponses(table)).toMatchObject({ ok: false, line: 3, unnamedThird: true });
    expect(readResponses(table, { thirdColumn: 'angle' })).toMatchObject({
      ok: true,
      unnamedThird: true,
    });
  });

  test('three columns: the third is the angle where the heading or the user says so', () => {
    const lines = ['1000 0 0', '2000 0 0', '1000 -1 30', '2000 -2.5 30'];
    const both = [
      { offAxisDeg: 0, frequencyHz: [1000, 2000], levelDb: [0, 0] },
      { offAxisDeg: 30, frequencyHz: [1000, 2000], levelDb: [-1, -2.5] },
    ];
    expect(read(lines, { thirdColumn: 'angle' })).toEqual(both);
    expect(read(['Hz dB off-axis', ...lines])).toEqual(both);
    expect(read(['Hz dB angle', ...lines.toReversed()])).toEqual(both);
    expect(read(['Hz dB angle', '1000 0 0', '1000 -1 30', '2000 0 0', '2000 -2.5 30'])).toEqual(
      both,
    );
  });

  test('one table: the heading names the angle of each column', () => {
    const both = [
      { offAxisDeg: 0, frequencyHz: [1000, 2000], levelDb: [0, 0] },
      { offAxisDeg: 30, frequencyHz: [1000, 2000], levelDb: [-1, -2.5] },
    ];
    expect(read(['Hz 0 30', '1000 0 -1', '2000 0 -2.5'])).toEqual(both);
    expect(read(['* Hz 0° 30°', '1000\t0\t-1', '2000\t0\t-2.5'])).toEqual(both);
    expect(read(['Frequency [Hz] 0 deg 30 deg', '1000 0 -1', '2000 0 -2.5'])).toEqual(both);
    expect(read(['Hz;on axis;30 deg', '1000;0;-1', '2000;0;-2,5'])).toEqual(both);
  });

  test('one file per angle: the user says which', () => {
    expect(read(['1000 0', '2000 -1'], { offAxisDeg: 15 })[0]?.offAxisDeg).toBe(15);
    expect(read(['Hz 30', '1000 0', '2000 -1'])[0]?.offAxisDeg).toBe(30);
  });
});

describe('a response that cannot be read is refused in one sentence with the line', () => {
  test.each([
    ['one row', ['# x', '1000 -3'], 2, 'a single row is no response'],
    ['a repeated frequency', ['1000 0', '1500 0', '1500 1'], 3, '1500 Hz again, after line 2'],
    ['a falling one', ['1000 0', '2000 0', '1500 1'], 3, '1500 Hz after 2000 Hz'],
    ['a rising one among falling', ['2000 0', '1000 0', '', '1500 1'], 4, '1500 Hz after 1000 Hz'],
    ['a gap', ['1000 0', '2000 0', '8000 1'], 3, 'a gap of more than an octave, from 2000 to 8000'],
    ['a missing level', ['1000;0', '2000;', '4000;1'], 2, 'the level is missing'],
    ['a level missing between', ['1000;0;5', '2000;;5'], 2, 'the level is missing'],
    ['a line cut off', ['1000 0', '2000'], 2, '1 columns where line 1 has 2'],
    ['a level in words', ['1000 0', '2000 low'], 2, 'the level is not a number, got "low"'],
    ['NaN', ['1000 0', '2000 NaN'], 2, 'the level is not a number, got "NaN"'],
    ['words between numbers', ['1000 0', 'then', '2000 0'], 2, 'expected a frequency, got "then"'],
    ['no frequency', ['0 0', '1000 0'], 1, 'a frequency is above 0 Hz'],
    ['a negative one', ['-5 0', '1000 0'], 1, 'a frequency is above 0 Hz'],
    ['a level that cannot be', ['1000 0', '2000 1e9'], 2, '400 is the most'],
    ['one column', ['1000', '2000'], 1, 'one column only'],
    ['four columns unnamed', ['1000 0 -1 -2', '2000 0 -1 -2'], 1, 'no heading that names'],
    ['commas in two roles', ['1000,-3,2', '2000,-4,1'], 1, 'part the columns with semicolons'],
    ['commas in two roles, later', ['1000,-3.2', '2000,-4,1'], 2, 'decimals have commas'],
    ['two decimal marks', ['1000 -3.2', '1,500 -2.2'], 2, 'another decimal mark than in line 1'],
    ['thousands', ['1,500 -3.2', '2,000 -2.2'], 1, 'can be read two ways'],
    ['thousands or decimals', ['20,000 85,3', '21,000 85'], 1, '"20,000" can be read two ways'],
    ['thousands after hundreds', ['800 85', '900 85,3', '1,000 85'], 3, '1 Hz after 900 Hz'],
    ['marks mixed in a line', ['900,5 -3.2', '1000 -2'], 1, 'both a comma and a point'],
    ['an angle too few', ['Hz 0 15 30', '1000 0 -1', '2000 0 -1'], 2, 'names 4 columns where'],
    ['the same angle twice', ['Hz 30 30', '1000 0 0', '2000 0 0'], 2, 'names 30° twice'],
    ['an angle behind the back', ['Hz dB angle', '1000 0 200', '2000 0 200'], 2, '180 is the most'],
  ])('%s', (_, lines, line, words) => {
    const answer = refusal(lines);
    expect(answer.line).toBe(line);
    expect(answer.message).toContain(`line ${line}: `);
    expect(answer.message).toContain(words);
    expect(answer.message).not.toContain('\n');
  });

  test.each([
    ['nothing', []],
    ['comments only', ['# a', '* b']],
    ['prose', ['Dear customer,', 'no data']],
  ])('%s', (_, lines) => {
    expect(refusal(lines).message).toBe('the file has no line with a frequency and a level');
    expect(refusal(lines).line).toBe(null);
  });

  test('what is far too long, before it is taken apart', () => {
    const answer = readResponses('1000 0\n'.repeat(MAX_RESPONSE_LENGTH / 7 + 1));
    expect(answer).toMatchObject({ ok: false, line: null });
  });

  test('100,000 lines are read', () => {
    const lines = Array.from({ length: 100_000 }, (_, i) => `${20 + i * 0.2} ${-(i % 7)}`);
    expect(read(lines)[0]?.frequencyHz).toHaveLength(100_000);
  });
});

describe('responses that do not cover what is asked of them', () => {
  const responses = (lines: string[]) =>
    read(lines).map((one) => ({ ...one, offAxisDeg: one.offAxisDeg ?? 0 }));
  const table = responses(['Hz 0 30 60', '1000 0 -1 -3', '2000 0 -2 -6']);

  test('are refused, saying which angle and which band', () => {
    expect(measuredDirectivity(table, [1000, 2000], 60)).toMatchObject({ ok: true });
    expect(measuredDirectivity(table, [1000, 2500])).toEqual({
      ok: false,
      message:
        'the response at 0° runs from 1000 to 2000 Hz and does not cover the band from 1000 to 2500 Hz',
    });
    expect(measuredDirectivity(table, [1000, 2000], 61.25)).toEqual({
      ok: false,
      message: 'the responses reach 60° off the axis and do not cover 61.3°',
    });
  });

  test('are refused without the axis, with an angle twice, or with nothing in common', () => {
    const message = (answer: ReturnType<typeof measuredDirectivity>) =>
      answer.ok ? 'read' : answer.message;
    expect(message(measuredDirectivity(table.slice(1)))).toContain('on the axis (0°) is missing');
    expect(message(measuredDirectivity([]))).toContain('on the axis (0°) is missing');
    expect(message(measuredDirectivity([...table, ...table.slice(1)]))).toContain('two responses');
    const high = { offAxisDeg: 15, frequencyHz: [3000, 4000], levelDb: [0, 0] };
    expect(message(measuredDirectivity([...table, high]))).toContain('no frequencies in common');
  });
});
