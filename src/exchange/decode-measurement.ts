/** From the bytes of a measured text file to its text. */

/** Larger files are refused unread: some 100,000 lines in any encoding stay far below. */
export const MAX_MEASUREMENT_BYTES = 20_000_000;

export type MeasurementText = { ok: true; text: string } | { ok: false; message: string };

/**
 * UTF-8, UTF-16 with its mark, or else the western European single-byte code that older measuring
 * programs write (its only use here is "°" in a heading).
 */
export function decodeMeasurement(bytes: Uint8Array): MeasurementText {
  if (bytes.length > MAX_MEASUREMENT_BYTES)
    return {
      ok: false,
      message: `it is ${Math.ceil(bytes.length / 1e6)} MB long; no more than ${MAX_MEASUREMENT_BYTES / 1e6} MB are read`,
    };
  const text = decoded(bytes);
  return text.includes('\0') ? { ok: false, message: 'it is no text file' } : { ok: true, text };
}

function decoded(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}
