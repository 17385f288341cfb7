import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { looksLikeWav, readWav, type WavAnswer, writeWav } from '../../../src/exchange';

const ascii = (text: string) => [...text].map((letter) => letter.charCodeAt(0));
const u16 = (value: number) => [value & 255, (value >> 8) & 255];
const u32 = (value: number) => [...u16(value & 0xffff), ...u16(value >>> 16)];
const chunk = (id: string, body: number[], size = body.length) => [
  ...ascii(id),
  ...u32(size),
  ...body,
  ...(body.length % 2 ? [0] : []),
];
const riff = (...chunks: number[][]) => {
  const body = [...ascii('WAVE'), ...chunks.flat()];
  return new Uint8Array([...ascii('RIFF'), ...u32(body.length), ...body]);
};
const fmt = (tag: number, channels: number, bits: number, rate = 48000) => [
  ...u16(tag),
  ...u16(channels),
  ...u32(rate),
  ...u32((rate * channels * bits) / 8),
  ...u16((channels * bits) / 8),
  ...u16(bits),
];
const TAIL = [0, 0, 0, 0, 0x10, 0, 0x80, 0, 0, 0xaa, 0, 0x38, 0x9b, 0x71];
const extensible = (tag: number, channels: number, bits: number, valid = bits) => [
  ...fmt(0xfffe, channels, bits),
  ...u16(22),
  ...u16(valid),
  ...u32(0),
  ...u16(tag),
  ...TAIL,
];
const float32 = (...values: number[]) => [...new Uint8Array(new Float32Array(values).buffer)];
const float64 = (...values: number[]) => [...new Uint8Array(new Float64Array(values).buffer)];

const soundIn = (answer: WavAnswer) => {
  if (!answer.ok) throw new Error(answer.message);
  return answer;
};
const samplesIn = (bytes: Uint8Array) =>
  soundIn(readWav(bytes)).channels.map((channel) => [...channel]);
const refusal = (bytes: Uint8Array) => {
  const answer = readWav(bytes);
  return answer.ok ? 'was read' : answer.message;
};

describe('a WAV file is read, byte by byte by hand', () => {
  test('integers of 16 bits on two channels', () => {
    const bytes = riff(
      chunk('fmt ', fmt(1, 2, 16, 44100)),
      chunk('data', [0x00, 0x80, 0xff, 0x7f, 0x00, 0x40, 0xff, 0xff]),
    );
    expect(soundIn(readWav(bytes))).toMatchObject({ sampleRateHz: 44100, encoding: 'int16' });
    expect(samplesIn(bytes)).toEqual([
      [-1, 0.5],
      [32767 / 32768, -1 / 32768],
    ]);
  });

  test('integers of 24 bits, an odd number of bytes with its padding', () => {
    const bytes = riff(
      chunk('fmt ', fmt(1, 1, 24)),
      chunk('data', [0, 0, 0x80, 0xff, 0xff, 0x7f, 0x01, 0x00, 0x00]),
      chunk('note', [1, 2]),
    );
    expect(samplesIn(bytes)).toEqual([[-1, 8388607 / 8388608, 1 / 8388608]]);
  });

  test('integers of 32 bits, floats of 32 and of 64', () => {
    const data = (tag: number, bits: number, body: number[]) =>
      samplesIn(riff(chunk('fmt ', fmt(tag, 1, bits)), chunk('data', body)));
    expect(data(1, 32, [0, 0, 0, 0x80, 0, 0, 0, 0x20])).toEqual([[-1, 0.25]]);
    expect(data(3, 32, float32(0.25, -1.5))).toEqual([[0.25, -1.5]]);
    expect(data(3, 64, float64(0.1, -1e-9))).toEqual([[0.1, -1e-9]]);
  });

  test('the extensible form, also with fewer valid bits than it has room for', () => {
    const data = chunk('data', [0, 0, 0, 0x40]);
    expect(samplesIn(riff(chunk('fmt ', extensible(1, 1, 32, 24)), data))).toEqual([[0.5]]);
    const floats = chunk('data', float32(0.5, 0.25, 0.125));
    expect(samplesIn(riff(chunk('fmt ', extensible(3, 3, 32)), floats))).toEqual([
      [0.5],
      [0.25],
      [0.125],
    ]);
  });

  test('chunks it does not know are passed over, odd ones with their padding', () => {
    const bytes = riff(
      chunk('LIST', [1, 2, 3, 4, 5]),
      chunk('fmt ', [...fmt(1, 1, 16), 0, 0]),
      chunk('bext', [7]),
      chunk('data', [0, 0x40]),
      chunk('id3 ', [9, 9, 9]),
    );
    expect(samplesIn(bytes)).toEqual([[0.5]]);
  });

  test('what stands behind the length the file gives is not its own', () => {
    const bytes = riff(chunk('fmt ', fmt(1, 1, 16)), chunk('data', [0, 0x40]));
    expect(samplesIn(new Uint8Array([...bytes, 1, 2, 3, 4, 5, 6, 7, 8, 9]))).toEqual([[0.5]]);
  });

  test('a view into a larger buffer is read from its own beginning', () => {
    const bytes = riff(chunk('fmt ', fmt(1, 1, 16)), chunk('data', [0, 0x40]));
    const larger = new Uint8Array(bytes.length + 7);
    larger.set(bytes, 5);
    expect(samplesIn(larger.subarray(5, 5 + bytes.length))).toEqual([[0.5]]);
  });
});

describe('a broken WAV file is refused with where and what', () => {
  const good = chunk('fmt ', fmt(1, 1, 16));
  const data = chunk('data', [0, 0x40]);
  const withRiffSize = (bytes: Uint8Array, size: number) => {
    const copy = bytes.slice();
    copy.set(u32(size), 4);
    return copy;
  };
  test.each<[string, Uint8Array, RegExp]>([
    ['empty', new Uint8Array(), /^byte 0: the file is only 0 bytes long/],
    [
      'a text',
      new Uint8Array(ascii('0.1\n0.2\n0.3\n0.4')),
      /^byte 0: .*does not begin with "RIFF"/,
    ],
    ['the other way round', new Uint8Array(ascii('RIFX....WAVE')), /^byte 0: .*RIFX/],
    ['the long kind', new Uint8Array(ascii('RF64....WAVE')), /^byte 0: .*RF64/],
    [
      'a RIFF of pictures',
      new Uint8Array([...ascii('RIFF'), 4, 0, 0, 0, ...ascii('AVI ')]),
      /^byte 8: .*"AVI "/,
    ],
    [
      'longer by its own word',
      withRiffSize(riff(good, data), 5000),
      /^byte 4: .* 5008 bytes long, but there are only 46/,
    ],
    ['never finished', withRiffSize(riff(good, data), 0xffffffff), /^byte 4: .*never finished/],
    ['no format', riff(data), /^byte 12: there is no "fmt " chunk/],
    ['no sound', riff(good), /^byte 12: there is no "data" chunk/],
    ['sound before format', riff(data, good), /^byte 12: the "data" chunk stands before/],
    ['two formats', riff(good, good, data), /^byte 36: a second "fmt " chunk, after that at 12/],
    [
      'a chunk that lies',
      riff(good, chunk('data', [0, 0], 0xfffffff0)),
      /^byte 40: the "data" chunk says it holds 4294967280 bytes, but there are only 2/,
    ],
    ['half a chunk head', riff(good, data, ascii('LIST')), /^byte 46: 4 bytes are left/],
    ['no samples', riff(good, chunk('data', [])), /^byte 40: .*no sample/],
    ['half a sample', riff(good, chunk('data', [1, 2, 3])), /^byte 40: 3 bytes .* takes 2 bytes/],
    [
      'a short format',
      riff(chunk('fmt ', fmt(1, 1, 16).slice(0, 14)), data),
      /^byte 16: .*14 bytes long/,
    ],
    [
      '8 bits',
      riff(chunk('fmt ', fmt(1, 1, 8)), data),
      /^byte 34: samples of 8 bits as integers; read are 16, 24 and 32/,
    ],
    [
      'half floats',
      riff(chunk('fmt ', fmt(3, 1, 16)), data),
      /^byte 34: samples of 16 bits as floats/,
    ],
    [
      'compressed',
      riff(chunk('fmt ', fmt(0x55, 1, 16)), data),
      /^byte 20: samples stored as format 85/,
    ],
    ['no channel', riff(chunk('fmt ', fmt(1, 0, 16)), data), /^byte 22: 0 channels/],
    [
      'channels beyond belief',
      riff(chunk('fmt ', fmt(1, 4000, 16)), data),
      /^byte 22: 4000 channels/,
    ],
    ['no rate', riff(chunk('fmt ', fmt(1, 1, 16, 0)), data), /^byte 24: a sample rate of 0 Hz/],
    ['a rate beyond belief', riff(chunk('fmt ', fmt(1, 1, 16, 4e9)), data), /^byte 24: /],
    [
      'a block that does not fit',
      riff(chunk('fmt ', fmt(1, 1, 16).with(12, 4)), data),
      /^byte 32: .* 4 bytes where 1 channels of 16 bits take 2/,
    ],
    [
      'a short extensible form',
      riff(chunk('fmt ', extensible(1, 1, 16).slice(0, 24)), data),
      /^byte 16: .*needs 40/,
    ],
    [
      'a lying extension',
      riff(chunk('fmt ', extensible(1, 1, 16).with(16, 0)), data),
      /^byte 36: 0 bytes of extension/,
    ],
    [
      'too many valid bits',
      riff(chunk('fmt ', extensible(1, 1, 16, 24)), data),
      /^byte 38: 24 valid bits/,
    ],
    [
      'another sub-format',
      riff(chunk('fmt ', extensible(1, 1, 16).with(39, 1)), data),
      /^byte 44: the sub-format/,
    ],
    [
      'not a number',
      riff(chunk('fmt ', fmt(3, 1, 32)), chunk('data', float32(0, Number.NaN))),
      /^byte 48: sample 1 of channel 1 is NaN/,
    ],
  ])('%s', (_, bytes, message) => {
    expect(refusal(bytes)).toMatch(message);
  });

  test('cut off anywhere, it is refused and never thrown over', () => {
    const whole = writeWav(
      {
        sampleRateHz: 48000,
        channels: [
          [0.1, 0.2],
          [0.3, 0.4],
          [0, 0],
        ],
      },
      'int24',
    );
    for (let length = 0; length < whole.length; length++)
      expect(refusal(whole.subarray(0, length))).toMatch(/^byte \d+: /);
  });

  test('with any bytes changed, the answer is a sound or a sentence', () => {
    const whole = writeWav({ sampleRateHz: 48000, channels: [[0.1, 0.2, 0.3]] }, 'float32');
    const spot = fc.tuple(fc.nat(whole.length - 1), fc.nat(255));
    fc.assert(
      fc.property(fc.array(spot, { minLength: 1, maxLength: 6 }), (changes) => {
        const bytes = whole.slice();
        for (const [at, value] of changes) bytes[at] = value;
        const answer = readWav(bytes);
        if (answer.ok)
          expect(answer.channels.flatMap((c) => [...c]).every(Number.isFinite)).toBe(true);
        else expect(answer.message).toMatch(/^byte \d+: /);
      }),
      { numRuns: 500 },
    );
  });
});

describe('a WAV file is written', () => {
  test('as the 1991 document lays it out, for one channel of 16 bits', () => {
    expect([...writeWav({ sampleRateHz: 48000, channels: [[0.5, -1, 1]] }, 'int16')]).toEqual([
      ...riff(chunk('fmt ', fmt(1, 1, 16)), chunk('data', [0, 0x40, 0, 0x80, 0xff, 0x7f])),
    ]);
  });

  test('with the number of samples in a chunk of its own where it is not plain PCM', () => {
    expect([...writeWav({ sampleRateHz: 48000, channels: [[0.5]] }, 'float32')]).toEqual([
      ...riff(
        chunk('fmt ', [...fmt(3, 1, 32), 0, 0]),
        chunk('fact', u32(1)),
        chunk('data', float32(0.5)),
      ),
    ]);
  });

  test('in the extensible form from three channels on', () => {
    expect([...writeWav({ sampleRateHz: 48000, channels: [[0], [0.5], [0]] }, 'int16')]).toEqual([
      ...riff(
        chunk('fmt ', extensible(1, 3, 16)),
        chunk('fact', u32(1)),
        chunk('data', [0, 0, 0, 0x40, 0, 0]),
      ),
    ]);
  });

  test.each(['int16', 'int24', 'float32'] as const)(
    'as %s, it reads back within half a step, whatever the number of channels',
    (encoding) => {
      const half = { int16: 2 ** -16, int24: 2 ** -24, float32: 2 ** -25 }[encoding];
      const value = fc.double({ min: -1, max: 1, noNaN: true });
      fc.assert(
        fc.property(
          fc.integer({ min: 1, max: 5 }).chain((n) =>
            fc.array(fc.array(value, { minLength: n, maxLength: n }), {
              minLength: 1,
              maxLength: 9,
            }),
          ),
          (frames) => {
            const channels = (frames[0] ?? []).map((_, c) =>
              frames.map((frame) => frame[c] as number),
            );
            const bytes = writeWav({ sampleRateHz: 96000, channels }, encoding);
            expect(bytes.length % 2).toBe(0);
            const back = soundIn(readWav(bytes));
            expect(back.sampleRateHz).toBe(96000);
            expect(back.encoding).toBe(encoding);
            for (const [c, channel] of channels.entries())
              for (const [i, sample] of channel.entries()) {
                const top = encoding !== 'float32' && sample > 1 - 2 * half ? 2 * half : half;
                expect(Math.abs((back.channels[c]?.[i] ?? 9) - sample)).toBeLessThanOrEqual(top);
              }
          },
        ),
        { numRuns: 100 },
      );
    },
  );

  test('clipping, gaps and unequal channels are the caller’s mistake', () => {
    const write =
      (...channels: number[][]) =>
      () =>
        writeWav({ sampleRateHz: 48000, channels }, 'int16');
    expect(write([0, 1.01])).toThrow('sample 1 of channel 0 is 1.01, beyond full scale');
    expect(write([Number.NaN])).toThrow('NaN');
    expect(write([0, 0], [0])).toThrow('channel 1 has 1 samples where the first has 2');
    expect(write()).toThrow('expected 1 to 65535 channels, got 0');
    expect(() => writeWav({ sampleRateHz: 44.1, channels: [[0]] }, 'int16')).toThrow('44.1');
    expect(writeWav({ sampleRateHz: 1, channels: [[2]] }, 'float32').length).toBeGreaterThan(0);
  });

  test('a WAV is told from text by its first bytes', () => {
    expect(looksLikeWav(riff())).toBe(true);
    expect(looksLikeWav(new Uint8Array(ascii('0.1 0.2')))).toBe(false);
  });
});
