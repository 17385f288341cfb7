/** A plan as the text of a file, and a name for that file. */
import type { Plan } from '../types';
import { inOrder } from './known-fields';
import { planSchema } from './plan-schema';

/**
 * JSON with two spaces, known fields in the contract's order, unknown ones after them, lists of
 * numbers on one line.
 * @throws RangeError naming the field, when a number is not finite: JSON would lose it
 */
export function writePlan(plan: Plan): string {
  return `${write(inOrder(planSchema, plan), '', '')}\n`;
}

function write(value: unknown, indent: string, path: string): string {
  if (typeof value === 'number' && !Number.isFinite(value)) {
    throw new RangeError(`writePlan: expected a finite number at ${path}, got ${value}`);
  }
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const inner = `${indent}  `;
  if (Array.isArray(value)) {
    if (value.length === 0) return '[]';
    const items = value.map((item, i) => write(item ?? null, inner, `${path}[${i}]`));
    return value.every((item) => typeof item !== 'object')
      ? `[${items.join(', ')}]`
      : `[\n${items.map((item) => inner + item).join(',\n')}\n${indent}]`;
  }
  const lines = Object.entries(value)
    .filter(([, item]) => item !== undefined)
    .map(([key, item]) => `${JSON.stringify(key)}: ${write(item, inner, `${path}.${key}`)}`);
  return lines.length === 0
    ? '{}'
    : `{\n${lines.map((line) => inner + line).join(',\n')}\n${indent}}`;
}

/** Longest stem of a file name, characters: every file system takes 255 bytes, 4 each at most. */
const LONGEST_NAME = 60;

/** Names that mean a device to Windows, whatever the ending. */
const DEVICE = /^(?:con|prn|aux|nul|com\d|lpt\d)$/i;

/**
 * A file name any system takes, made from a title: no path, no control or direction marks, no
 * leading dot, never empty. The ending is left to the caller.
 */
export function safeFileName(title: string): string {
  const cleaned = [...title.normalize('NFC')]
    // Controls, format marks (right-to-left overrides among them), lone surrogates, private use.
    .filter((character) => !/\p{C}/u.test(character))
    .join('')
    .replace(/[\\/:*?"<>|]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  const stem = [...cleaned]
    .slice(0, LONGEST_NAME)
    .join('')
    .replace(/^[.\s]+|[.\s]+$/g, '');
  if (stem === '') return 'plan';
  return DEVICE.test(stem) ? `${stem} plan` : stem;
}
