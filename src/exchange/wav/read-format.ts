import { type Chunk, WavRefused } from './chunks';
import {
  BYTES_PER_SAMPLE,
  EXTENSIBLE,
  IEEE_FLOAT,
  PCM,
  SUBFORMAT_TAIL,
  type WavEncoding,
} from './format';

export interface WavFormat {
  encoding: WavEncoding;
  channelCount: number;
  sampleRateHz: number;
}

/** More channels than any measuring set or processor has: limits of ours, no source. */
const MOST_CHANNELS = 256;
const HIGHEST_RATE_HZ = 1_000_000;
/** Up to the sub-format's end. */
const EXTENSIBLE_SIZE = 40;

const ENCODINGS: Readonly<Record<string, WavEncoding>> = {
  [`${PCM} 16`]: 'int16',
  [`${PCM} 24`]: 'int24',
  [`${PCM} 32`]: 'int32',
  [`${IEEE_FLOAT} 32`]: 'float32',
  [`${IEEE_FLOAT} 64`]: 'float64',
};

/** How samples are stored, from the "fmt " chunk. @throws WavRefused */
export function readFormat(view: DataView, fmt: Chunk): WavFormat {
  const { start, size } = fmt;
  if (size < 16)
    throw new WavRefused(fmt.at + 4, `the "fmt " chunk is ${size} bytes long; 16 are the least`);
  const u16 = (offset: number) => view.getUint16(start + offset, true);
  const [tag, bits] = [u16(0), u16(14)];
  const kind = tag === EXTENSIBLE ? subFormat(view, fmt) : tag;
  const encoding = ENCODINGS[`${kind} ${bits}`];
  if (!encoding) {
    const known = kind === PCM || kind === IEEE_FLOAT;
    throw known
      ? new WavRefused(
          start + 14,
          `samples of ${bits} bits as ${kind === PCM ? 'integers' : 'floats'}; read are ${kind === PCM ? '16, 24 and 32' : '32 and 64'}`,
        )
      : new WavRefused(
          tag === EXTENSIBLE ? start + 24 : start,
          `samples stored as format ${kind}; read are integers (1) and floats (3), uncompressed`,
        );
  }
  const channelCount = u16(2);
  if (channelCount < 1 || channelCount > MOST_CHANNELS)
    throw new WavRefused(start + 2, `${channelCount} channels; read are 1 to ${MOST_CHANNELS}`);
  const sampleRateHz = view.getUint32(start + 4, true);
  if (sampleRateHz < 1 || sampleRateHz > HIGHEST_RATE_HZ)
    throw new WavRefused(
      start + 4,
      `a sample rate of ${sampleRateHz} Hz; read are 1 to ${HIGHEST_RATE_HZ}`,
    );
  const block = channelCount * BYTES_PER_SAMPLE[encoding];
  if (u16(12) !== block)
    throw new WavRefused(
      start + 12,
      `a sample over all channels is said to take ${u16(12)} bytes where ${channelCount} channels of ${bits} bits take ${block}`,
    );
  return { encoding, channelCount, sampleRateHz };
}

/**
 * The format inside the extensible form. Fewer valid bits than the container holds stand at its
 * upper end (Microsoft), so the scale is the container's all the same.
 */
function subFormat(view: DataView, { at, start, size }: Chunk): number {
  if (size < EXTENSIBLE_SIZE)
    throw new WavRefused(
      at + 4,
      `the "fmt " chunk is ${size} bytes long; the extensible form needs ${EXTENSIBLE_SIZE}`,
    );
  const extra = view.getUint16(start + 16, true);
  if (extra < 22)
    throw new WavRefused(start + 16, `${extra} bytes of extension; the extensible form needs 22`);
  const [bits, valid] = [view.getUint16(start + 14, true), view.getUint16(start + 18, true)];
  if (valid > bits)
    throw new WavRefused(start + 18, `${valid} valid bits in samples of ${bits} bits`);
  if (SUBFORMAT_TAIL.some((byte, i) => view.getUint8(start + 26 + i) !== byte))
    throw new WavRefused(start + 24, 'the sub-format is none of those for plain sound');
  return view.getUint16(start + 24, true);
}
