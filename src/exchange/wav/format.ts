/**
 * RIFF WAVE as in IBM and Microsoft, Multimedia Programming Interface and Data Specifications 1.0
 * (August 1991), chapter "Resource Interchange File Format", and Microsoft's documentation of
 * WAVEFORMATEXTENSIBLE (mmreg.h). All numbers little-endian; chunks padded to even lengths.
 */

/** How samples are stored. */
export type WavEncoding = 'int16' | 'int24' | 'int32' | 'float32' | 'float64';

export const BYTES_PER_SAMPLE: Readonly<Record<WavEncoding, number>> = {
  int16: 2,
  int24: 3,
  int32: 4,
  float32: 4,
  float64: 8,
};

/** Format tags: WAVE_FORMAT_PCM, WAVE_FORMAT_IEEE_FLOAT, WAVE_FORMAT_EXTENSIBLE (mmreg.h). */
export const PCM = 1;
export const IEEE_FLOAT = 3;
export const EXTENSIBLE = 0xfffe;

/**
 * What follows the format tag in the extensible form's sub-format: the rest of
 * xxxxxxxx-0000-0010-8000-00AA00389B71, the tag in its first two bytes (mmreg.h).
 */
export const SUBFORMAT_TAIL = [
  0x00, 0x00, 0x00, 0x00, 0x10, 0x00, 0x80, 0x00, 0x00, 0xaa, 0x00, 0x38, 0x9b, 0x71,
] as const;

/** Sound as plain numbers: full scale is ±1, one array of the same length for each channel. */
export interface Sound {
  sampleRateHz: number;
  channels: readonly ArrayLike<number>[];
}
