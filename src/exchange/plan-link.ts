/**
 * A plan within a link: in the part of an address behind the #, which a browser never sends to the
 * server. As zlib data (RFC 1950) in base64 for addresses (RFC 4648, section 5).
 */
import { Unzlib, zlibSync } from 'fflate';
import { writePlan } from '../plan/schema';
import type { Plan } from '../plan/types';

/** How such a fragment begins; the number is that of the packing, not of the plan. */
const MARK = '#plan=1.';
const ANY_MARK = /^#plan=/;

/** A longer link is not made: mail and messages cut long lines. Choice of ours. */
export const LONGEST_LINK = 16_000;
/** No link unpacks to more than this, bytes: a small one can hold gigabytes of nothing. */
const MOST_UNPACKED = 4_000_000;
/** Bytes unpacked at a time, so that the limit is felt before memory is gone. */
const BITE = 1024;

export type PlanLink =
  | { ok: true; fragment: string }
  /** It would be too long; how long, and how long one may be, in characters. */
  | { ok: false; length: number; most: number };

/**
 * The fragment that carries a plan, from its # on.
 * @throws RangeError naming the field, when a number of the plan is not finite
 */
export function planToFragment(plan: Plan): PlanLink {
  const text = JSON.stringify(JSON.parse(writePlan(plan)));
  const packed = zlibSync(new TextEncoder().encode(text), { level: 9 });
  const fragment = MARK + toBase64(packed);
  return fragment.length <= LONGEST_LINK
    ? { ok: true, fragment }
    : { ok: false, length: fragment.length, most: LONGEST_LINK };
}

export type FragmentAnswer =
  /** The bytes of the plan's file, to be read as any file is. */
  { ok: true; bytes: Uint8Array } | { ok: false; message: string };

/** Whether a fragment, its # included, is meant to carry a plan. */
export const holdsPlan = (fragment: string): boolean => ANY_MARK.test(fragment);

const damaged = (how: string): FragmentAnswer => ({
  ok: false,
  message: `the link is damaged: ${how}; ask for it once more, or for the plan as a file`,
});

/** Unpacks the plan a fragment carries. Answers, never throws. */
export function planOfFragment(fragment: string): FragmentAnswer {
  if (!fragment.startsWith(MARK))
    return {
      ok: false,
      message: holdsPlan(fragment)
        ? 'the link was made by a newer version of this program, or is damaged at its start'
        : 'the link holds no plan',
    };
  // A full stop or bracket behind a link in a sentence is often taken along.
  const letters = fragment.slice(MARK.length).replace(/(%20|[\s.,;:!?)\]>"'])+$/, '');
  const packed = fromBase64(letters);
  if (!packed) return damaged('it holds a sign that no link has');
  const bytes = unpack(packed);
  if (bytes === 'too much')
    return {
      ok: false,
      message: `the plan in the link is longer than ${MOST_UNPACKED / 1e6} MB and is not read`,
    };
  if (!bytes || bytes.length === 0) return damaged('a part of it is missing or changed');
  return { ok: true, bytes };
}

function unpack(packed: Uint8Array): Uint8Array | 'too much' | null {
  const parts: Uint8Array[] = [];
  let size = 0;
  let ended = false;
  const reader = new Unzlib((part, final) => {
    parts.push(part);
    size += part.length;
    ended = final;
  });
  try {
    for (let at = 0; at < packed.length; at += BITE) {
      reader.push(packed.subarray(at, at + BITE), at + BITE >= packed.length);
      if (size > MOST_UNPACKED) return 'too much';
    }
  } catch {
    return null;
  }
  if (!ended || packed.length < 6) return null;
  const bytes = new Uint8Array(size);
  let at = 0;
  for (const part of parts) {
    bytes.set(part, at);
    at += part.length;
  }
  const told = new DataView(packed.buffer, packed.byteOffset).getUint32(packed.length - 4);
  return told === adler32(bytes) ? bytes : null;
}

/** The check sum at the end of zlib data, which the unpacker does not look at (RFC 1950, section 8.2). */
function adler32(bytes: Uint8Array): number {
  let a = 1;
  let b = 0;
  for (const byte of bytes) {
    a = (a + byte) % 65521;
    b = (b + a) % 65521;
  }
  return b * 65536 + a;
}

function toBase64(bytes: Uint8Array): string {
  let text = '';
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

function fromBase64(letters: string): Uint8Array | null {
  if (!/^[\w-]+$/.test(letters)) return null;
  try {
    const text = atob(letters.replaceAll('-', '+').replaceAll('_', '/'));
    return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
  } catch {
    return null;
  }
}
