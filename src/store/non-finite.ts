import type { Patch } from 'immer';

/**
 * Where a change would put a number that is not finite, or null. Such a number cannot be written
 * to a file, so it never gets into a plan.
 */
export function nonFinitePath(patches: readonly Patch[]): string | null {
  for (const { path, value } of patches) {
    const found = search(value);
    if (found !== null) return [...path, ...found].join('.');
  }
  return null;
}

function search(value: unknown): (string | number)[] | null {
  if (typeof value === 'number') return Number.isFinite(value) ? null : [];
  if (typeof value !== 'object' || value === null) return null;
  for (const [key, part] of Object.entries(value)) {
    const found = search(part);
    if (found !== null) return [key, ...found];
  }
  return null;
}
