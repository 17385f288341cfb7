/** Files with measured responses: told by what is in them, broken ones refused in one sentence. */
import { describe, expect, test } from 'vitest';
import { writeWav } from '../../src/exchange';
import {
  aroundLoudest,
  KEPT_AFTER,
  KEPT_BEFORE,
  readMeasuredFile,
} from '../../src/exchange/measured-file';
import { edgeArrival } from '../../src/geometry';
import { response, sinc } from '../geometry/measure/synthetic';

const text = (content: string) => new TextEncoder().encode(content);
const sound = response([{ shape: sinc, at: 600.4, level: 0.7 }], 46, 3, 2000);

const arrivalOf = (bytes: Uint8Array): number => {
  const answer = readMeasuredFile(bytes);
  if (!answer.ok) throw new Error(answer.message);
  const [track] = answer.tracks;
  if (!track) throw new Error('no track');
  const edge = edgeArrival({ ...track, sampleRateHz: answer.sampleRateHz ?? 48000 });
  if ('problem' in edge) throw new Error(edge.problem);
  return edge.ms;
};

describe('a measured response', () => {
  test('arrives at the same time from every kind of WAV and from text', () => {
    const wanted = arrivalOf(writeWav({ sampleRateHz: 48000, channels: [sound] }, 'float32'));
    expect(Math.abs(wanted - 600.4 / 48)).toBeLessThan(1 / 48);
    for (const encoding of ['int16', 'int24', 'float32'] as const) {
      const bytes = writeWav({ sampleRateHz: 48000, channels: [sound] }, encoding);
      expect(Math.abs(arrivalOf(bytes) - wanted)).toBeLessThan(0.05 / 48);
    }
    const timed = [...sound].map((one, i) => `${(i / 48).toFixed(6)}\t${one.toFixed(7)}`);
    expect(Math.abs(arrivalOf(text(`ms\tsample\n${timed.join('\n')}`)) - wanted)).toBeLessThan(
      0.05 / 48,
    );
  });

  test('of several channels gives them all, and tells its rate and how it is stored', () => {
    const bytes = writeWav({ sampleRateHz: 96000, channels: [sound, sound, sound] }, 'int24');
    expect(readMeasuredFile(bytes)).toMatchObject({
      ok: true,
      sampleRateHz: 96000,
      stored: 'int24',
      length: 2000,
      tracks: { length: 3 },
    });
  });

  test('without times leaves the rate to be asked', () => {
    const answer = readMeasuredFile(text([...sound].join('\n')));
    expect(answer).toMatchObject({ ok: true, sampleRateHz: null, stored: 'text' });
  });

  test('that is long is cut round its loudest point, and its times stay those of the file', () => {
    const samples = new Float64Array(480_000);
    samples[240_000] = 0.8;
    const cut = aroundLoudest({ samples, startMs: 12 }, 48000);
    expect(cut.samples.length).toBe(48 * (KEPT_BEFORE + KEPT_AFTER) + 1);
    expect(cut.startMs).toBeCloseTo(12 + 5000 - KEPT_BEFORE, 9);
    expect(cut.samples[48 * KEPT_BEFORE]).toBe(0.8);
  });

  const wav = writeWav({ sampleRateHz: 48000, channels: [sound] }, 'int16');
  test.each([
    ['an empty file', new Uint8Array(), 'it is empty'],
    [
      'a WAV cut off',
      wav.slice(0, 900),
      'byte 4: the file says it is 4044 bytes long, but there are only 900: it was cut short, or never finished',
    ],
    [
      'a WAV of the long kind',
      text('RF64xxxxWAVE'),
      'byte 0: a WAV file of the long kind (RF64), which is not read; save it as plain WAV',
    ],
    [
      'bytes of something else',
      new Uint8Array([0, 1, 2, 0, 0, 9]),
      'it is neither a WAV nor a text file',
    ],
    [
      'a plan',
      text('{"format":"earpath-plan"}'),
      'it is a text of another kind, no list of samples',
    ],
    ['a letter', text('Dear customer,\nyour car is ready'), 'the file has no line with a number'],
    ['a text with a gap', text('1\n2\n3\nx\n5'), 'line 4: expected a number, got "x"'],
  ])('in %s is refused in one sentence', (_, bytes, message) => {
    expect(readMeasuredFile(bytes)).toEqual({
      ok: false,
      message,
      ...(message.startsWith('byte') && { byte: expect.any(Number) }),
      ...(/^line|no line/.test(message) && { line: message.startsWith('line') ? 4 : null }),
    });
  });
});
