import {
  BYTES_PER_SAMPLE,
  EXTENSIBLE,
  IEEE_FLOAT,
  PCM,
  type Sound,
  SUBFORMAT_TAIL,
  type WavEncoding,
} from './format';

/** RIFF's own size field has 32 bits; kept under 2³¹, which every reader copes with. */
const MOST_BYTES = 2 ** 31 - 1;

export type WrittenEncoding = Extract<WavEncoding, 'int16' | 'int24' | 'float32'>;

/**
 * Sound as a RIFF WAV file. Integers are rounded to the nearest step, full scale ±1 being 2^(n−1)
 * steps of which the uppermost is not there: +1 becomes the largest, as is usual. No dither: the
 * same sound gives the same bytes. More than two channels are written in the extensible form, with
 * no places named for them, as Microsoft asks.
 * @throws RangeError where there is no channel, lengths differ, the rate is no whole number above
 *   0, a sample is no number or (as an integer) beyond full scale, or the file would pass 2 GiB
 */
export function writeWav({ sampleRateHz, channels }: Sound, encoding: WrittenEncoding): Uint8Array {
  const frames = channels[0]?.length ?? 0;
  if (channels.length < 1 || channels.length > 65535)
    throw new RangeError(`writeWav: expected 1 to 65535 channels, got ${channels.length}`);
  const other = channels.findIndex((channel) => channel.length !== frames);
  if (other > 0)
    throw new RangeError(
      `writeWav: channel ${other} has ${channels[other]?.length} samples where the first has ${frames}`,
    );
  if (!Number.isInteger(sampleRateHz) || sampleRateHz < 1 || sampleRateHz > 0xffffffff)
    throw new RangeError(`writeWav: expected a whole sample rate above 0, got ${sampleRateHz}`);
  const width = BYTES_PER_SAMPLE[encoding];
  const dataSize = frames * channels.length * width;
  if (dataSize > MOST_BYTES - 200)
    throw new RangeError(`writeWav: ${dataSize} bytes of sound are more than a WAV file holds`);

  const format = formatChunk(sampleRateHz, channels.length, encoding);
  // A fact chunk belongs to every format but plain PCM (1991, "FACT Chunk").
  const fact = format.tag === PCM ? 0 : 12;
  const dataAt = 12 + 8 + format.bytes.length + fact;
  const size = dataAt + 8 + dataSize + (dataSize % 2);
  const bytes = new Uint8Array(size);
  const view = new DataView(bytes.buffer);
  const head = (at: number, id: string, length: number) => {
    for (let i = 0; i < 4; i++) bytes[at + i] = id.charCodeAt(i);
    view.setUint32(at + 4, length, true);
  };
  head(0, 'RIFF', size - 8);
  for (let i = 0; i < 4; i++) bytes[8 + i] = 'WAVE'.charCodeAt(i);
  head(12, 'fmt ', format.bytes.length);
  bytes.set(format.bytes, 20);
  if (fact) {
    head(dataAt - 12, 'fact', 4);
    view.setUint32(dataAt - 4, frames, true);
  }
  head(dataAt, 'data', dataSize);
  const put = writerOf(view, encoding);
  for (const [c, channel] of channels.entries()) {
    for (let i = 0; i < frames; i++) {
      const value = channel[i] as number;
      if (!Number.isFinite(value) || (encoding !== 'float32' && Math.abs(value) > 1))
        throw new RangeError(
          `writeWav: sample ${i} of channel ${c} is ${value}, beyond full scale`,
        );
      put(dataAt + 8 + (i * channels.length + c) * width, value);
    }
  }
  return bytes;
}

function formatChunk(sampleRateHz: number, channels: number, encoding: WrittenEncoding) {
  const kind = encoding === 'float32' ? IEEE_FLOAT : PCM;
  const tag = channels > 2 ? EXTENSIBLE : kind;
  const width = BYTES_PER_SAMPLE[encoding];
  const bytes = new Uint8Array(tag === PCM ? 16 : tag === IEEE_FLOAT ? 18 : 40);
  const view = new DataView(bytes.buffer);
  view.setUint16(0, tag, true);
  view.setUint16(2, channels, true);
  view.setUint32(4, sampleRateHz, true);
  // Bytes in a second wrap round where the field cannot hold them.
  view.setUint32(8, (sampleRateHz * channels * width) % 2 ** 32, true);
  view.setUint16(12, channels * width, true);
  view.setUint16(14, 8 * width, true);
  if (tag === EXTENSIBLE) {
    view.setUint16(16, 22, true);
    view.setUint16(18, 8 * width, true);
    view.setUint16(24, kind, true);
    bytes.set(SUBFORMAT_TAIL, 26);
  }
  return { tag, bytes };
}

function writerOf(view: DataView, encoding: WrittenEncoding): (at: number, value: number) => void {
  if (encoding === 'float32') return (at, value) => view.setFloat32(at, value, true);
  if (encoding === 'int16') return (at, value) => view.setInt16(at, step(value, 2 ** 15), true);
  return (at, value) => {
    const whole = step(value, 2 ** 23);
    view.setUint16(at, whole & 0xffff, true);
    view.setInt8(at + 2, whole >> 16);
  };
}

const step = (value: number, scale: number): number =>
  Math.min(scale - 1, Math.round(value * scale));
