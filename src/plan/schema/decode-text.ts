/** From the bytes of a file to text that may be parsed. */
import type { Refusal } from '../../geometry';

/** Largest plan file read: a cabin scanned at full detail stays below. */
export const MAX_FILE_BYTES = 50_000_000;

export type TextAnswer = { ok: true; text: string } | { ok: false; error: Refusal };

const refuse = (message: string): TextAnswer => ({ ok: false, error: { path: '', message } });

/** @returns the text without a byte order mark, or why the file is none */
export function decodeText(input: string | Uint8Array): TextAnswer {
  const size = typeof input === 'string' ? input.length : input.byteLength;
  if (size > MAX_FILE_BYTES) {
    return refuse(
      `the file is ${Math.ceil(size / 1e6)} MB long; plans of more than ${MAX_FILE_BYTES / 1e6} MB are not read`,
    );
  }
  let text: string;
  if (typeof input === 'string') text = input.replace(/^\uFEFF/, '');
  else {
    if ((input[0] === 0xff && input[1] === 0xfe) || (input[0] === 0xfe && input[1] === 0xff)) {
      return refuse('the file is written in UTF-16, not in UTF-8');
    }
    try {
      text = new TextDecoder('utf-8', { fatal: true }).decode(input);
    } catch {
      return refuse('the file is not text in UTF-8');
    }
  }
  if (text.trim() === '') return refuse('the file is empty');
  if (text.includes('\0')) return refuse('the file is not a text file');
  return { ok: true, text };
}
