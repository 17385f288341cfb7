/** JSON that is safe to hold: not too deep, no key that reaches into prototypes. */
import type { Refusal } from '../../geometry';
import { quoted } from '../quoted';
import { jsonPath, type PathStep } from './json-path';
import { locateJsonError } from './locate-json-error';

/** Deepest nesting read; the contract itself needs 8. */
export const MAX_DEPTH = 64;

const FORBIDDEN_KEYS = new Set(['__proto__', 'constructor', 'prototype']);

export type JsonAnswer = { ok: true; value: unknown } | { ok: false; error: Refusal };

/** Checks depth on the text itself, so that nothing deep is ever built. */
export function parseJson(text: string): JsonAnswer {
  const tooDeep = depthExceeds(text, MAX_DEPTH);
  if (tooDeep) {
    const message = `the file is nested more than ${MAX_DEPTH} levels deep`;
    return { ok: false, error: { path: '', message } };
  }
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    // Every browser words its own error; ours names the field as well.
    return { ok: false, error: locateJsonError(text) };
  }
  const forbidden = forbiddenKey(value, []);
  if (forbidden) {
    const message = `the name ${quoted(String(forbidden.at(-1)))} is not allowed for a field`;
    return { ok: false, error: { path: jsonPath(forbidden), message } };
  }
  return { ok: true, value };
}

function depthExceeds(text: string, limit: number): boolean {
  let depth = 0;
  for (let i = 0; i < text.length; i++) {
    switch (text.charCodeAt(i)) {
      case 34: // "
        for (i++; i < text.length && text.charCodeAt(i) !== 34; i++) {
          if (text.charCodeAt(i) === 92) i++; // a backslash takes the next character along
        }
        break;
      case 91: // [
      case 123: // {
        if (++depth > limit) return true;
        break;
      case 93: // ]
      case 125: // }
        depth--;
    }
  }
  return false;
}

function forbiddenKey(value: unknown, path: readonly PathStep[]): PathStep[] | null {
  if (typeof value !== 'object' || value === null) return null;
  if (Array.isArray(value)) {
    for (const [i, item] of value.entries()) {
      if (typeof item !== 'object') continue;
      const found = forbiddenKey(item, [...path, i]);
      if (found) return found;
    }
    return null;
  }
  for (const key of Object.keys(value)) {
    if (FORBIDDEN_KEYS.has(key)) return [...path, key];
    const found = forbiddenKey((value as Record<string, unknown>)[key], [...path, key]);
    if (found) return found;
  }
  return null;
}
