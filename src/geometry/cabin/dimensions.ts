/** Every dimension of the cabin, and how a template's values and a plan's overrides become one set. */
import { DASH_AND_FOOT } from './dimensions/dash-and-foot';
import { GLASS_AND_SIDES } from './dimensions/glass-and-sides';
import { REAR } from './dimensions/rear';
import { SEAT_AND_WHEEL } from './dimensions/seat-and-wheel';
import type { DimensionInfo } from './dimensions/types';
import type { Refusal } from './model';

export type { DimensionGroup, DimensionInfo } from './dimensions/types';

export type DimensionId =
  | (typeof SEAT_AND_WHEEL)[number]['id']
  | (typeof GLASS_AND_SIDES)[number]['id']
  | (typeof DASH_AND_FOOT)[number]['id']
  | (typeof REAR)[number]['id'];

/** Every dimension with its value, mm or degrees. */
export type Dimensions = Readonly<Record<DimensionId, number>>;

/** In the order an installer walks round the car. */
export const DIMENSIONS: readonly DimensionInfo<DimensionId>[] = [
  ...SEAT_AND_WHEEL,
  ...GLASS_AND_SIDES,
  ...DASH_AND_FOOT,
  ...REAR,
];

const BY_ID: ReadonlyMap<string, DimensionInfo<DimensionId>> = new Map(
  DIMENSIONS.map((d) => [d.id, d]),
);

/** What is known about one dimension, or `null` when there is none of that name. */
export function dimensionInfo(id: string): DimensionInfo<DimensionId> | null {
  return BY_ID.get(id) ?? null;
}

export type DimensionsAnswer = { ok: true; dimensions: Dimensions } | { ok: false; error: Refusal };

/**
 * The template's dimensions with the overrides put in. An unknown name, a value that is no number
 * or one outside the dimension's range is refused with one sentence and its plan path.
 */
export function resolveDimensions(
  template: { readonly dimensions: Dimensions },
  overrides: Readonly<Record<string, unknown>> = {},
): DimensionsAnswer {
  const dimensions: Record<DimensionId, number> = { ...template.dimensions };
  for (const id of Object.keys(overrides)) {
    const info = dimensionInfo(id);
    const value = overrides[id];
    const path = `cabin.dimensions.${id}`;
    if (!info) return refuse(path, `there is no dimension called "${id}"`);
    if (typeof value !== 'number' || !Number.isFinite(value)) {
      return refuse(path, `must be a number (${unitWord(info)}), got ${shown(value)}`);
    }
    if (value < info.min || value > info.max) {
      return refuse(
        path,
        `must be between ${info.min} and ${info.max} ${unitWord(info)}, got ${value}`,
      );
    }
    dimensions[info.id] = value;
  }
  return { ok: true, dimensions };
}

const unitWord = (info: DimensionInfo) => (info.unit === 'deg' ? 'degrees' : 'mm');

function shown(value: unknown): string {
  if (typeof value === 'string') return `"${value.slice(0, 40)}"`;
  return value === null || typeof value !== 'object' ? String(value) : 'something else';
}

function refuse(path: string, message: string): DimensionsAnswer {
  return { ok: false, error: { path, message } };
}
