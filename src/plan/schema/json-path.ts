import type { Refusal } from '../../geometry';
import { quoted } from '../quoted';

/** One step into a document: a field or the place in a list. */
export type PathStep = string | number;

/** "options[0].speakers[2].mount.u"; a field with other characters stands in quotes. */
export function jsonPath(steps: readonly PathStep[]): string {
  let path = '';
  for (const step of steps) {
    if (typeof step === 'number') path += `[${step}]`;
    else if (/^[A-Za-z_$][\w$]*$/.test(step)) path += path === '' ? step : `.${step}`;
    else path += `[${JSON.stringify(step)}]`;
  }
  return path;
}

/** One sentence: "options[0].speakers[2].mount.u: must be between 0 and 1, got 1.4". */
export const formatRefusal = ({ path, message }: Refusal): string =>
  path === '' ? message : `${path}: ${message}`;

/** A value as it may stand in a sentence. */
export function shownValue(value: unknown): string {
  if (typeof value === 'string') return `the text ${quoted(value)}`;
  if (value === undefined) return 'nothing';
  if (value === null) return 'null';
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'object') return 'an object';
  if (value === Infinity || value === -Infinity) return 'a number too large to hold';
  return String(value);
}
