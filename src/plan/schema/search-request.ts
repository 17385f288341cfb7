/** A search request as a file: what may stand in it, and a sentence with the path for what may not. */
import * as v from 'valibot';
import type { Refusal, SearchRequest, StageRequest } from '../../geometry';
import { quoted } from '../quoted';
import { decodeText } from './decode-text';
import { jsonPath, type PathStep, shownValue } from './json-path';
import { unknownFields } from './known-fields';
import { parseJson } from './parse-json';
import { FAR, fields, id, list, mustBe, number, object, positive, vec3, yesOrNo } from './values';

const optional = v.optional;

/** Unlike elsewhere an unknown field is refused: passing over a demand would change the answer. */
const only = <const E extends v.ObjectEntries>(entries: E) =>
  v.pipe(
    object(entries),
    v.rawCheck(({ dataset, addIssue }) => {
      if (!dataset.typed) return;
      const input = dataset.value as Record<string, unknown>;
      const known = Object.keys(entries);
      const key = Object.keys(input).find((name) => !known.includes(name));
      if (key === undefined) return;
      addIssue({
        message: `is not known; there are ${known.map(quoted).join(', ')}`,
        path: [{ type: 'object', origin: 'key', input, key, value: input[key] }],
      });
    }),
  );

/** A finer grid than this tells nothing the refinement does not, mm. */
const FINEST_STEP = 1;
const LARGEST_STEP = 1000;
const MOST_ANSWERS = 100;
const MOST_WEIGHT = 1000;

const whole = (low: number, high: number) =>
  v.pipe(
    number(low, high),
    v.check(
      (n) => Number.isInteger(n),
      ({ input }) => `must be a whole number, got ${shownValue(input)}`,
    ),
  );

const someOf = <const S extends v.GenericSchema>(item: S, what: string) =>
  v.pipe(
    list(item),
    v.check((items) => items.length > 0, `must name at least one ${what}`),
  );

const withinDeg = optional(number(0, 180));

const aim = v.variant(
  'kind',
  [
    fields({
      kind: v.literal('direction'),
      direction: v.pipe(
        vec3,
        v.check(([x, y, z]) => x !== 0 || y !== 0 || z !== 0, 'must have a length, got [0, 0, 0]'),
      ),
      withinDeg,
    }),
    fields({ kind: v.literal('point'), point: vec3, withinDeg }),
    fields({ kind: v.literal('seat'), seat: id, withinDeg }),
    fields({ kind: v.literal('between'), seats: optional(someOf(id, 'seat')), withinDeg }),
    fields({ kind: v.literal('normal'), withinDeg }),
  ],
  mustBe('one of "direction", "point", "seat", "between", "normal"'),
);

const weight = optional(number(0, MOST_WEIGHT));

const ofPair = {
  mirrored: optional(yesOrNo),
  panels: optional(someOf(id, 'panel')),
  step: optional(number(FINEST_STEP, LARGEST_STEP)),
  aim: optional(aim),
  standoff: optional(number(0, 1000)),
  require: optional(
    only({
      fits: optional(yesOrNo),
      free: optional(yesOrNo),
      maxOffAxisDeg: optional(number(0, 180)),
      maxPillarViewDeg: optional(number(0, 180)),
      maxAddedPillarViewDeg: optional(number(0, 180)),
    }),
  ),
  want: optional(
    only({
      difference: weight,
      offAxisDeg: weight,
      obstructionDb: weight,
      firstReflectionTime: weight,
    }),
  ),
};

const shared = {
  option: id,
  seats: optional(someOf(object({ id, weight: optional(positive(MOST_WEIGHT), 1) }), 'seat')),
  answers: optional(whole(0, MOST_ANSWERS)),
  apart: optional(number(0, FAR)),
};

const searchSchema = object({ ...shared, pair: id, ...ofPair, all: optional(yesOrNo) });

const stageSchema = object({
  ...shared,
  pairs: someOf(object({ pair: id, ...ofPair }), 'pair'),
  want: optional(only({ pathSpread: weight })),
});

export type ReadRequestAnswer =
  | { ok: true; request: SearchRequest | StageRequest; warnings: string[] }
  | { ok: false; error: Refusal };

/** Reads a request from the text or the bytes of a file. Never throws. */
export function readSearchRequest(input: string | Uint8Array): ReadRequestAnswer {
  const decoded = decodeText(input);
  if (!decoded.ok) return decoded;
  const parsed = parseJson(decoded.text);
  return parsed.ok ? checkSearchRequest(parsed.value) : parsed;
}

/** The same for JSON already parsed. One with `pairs` is for several pairs together. */
export function checkSearchRequest(data: unknown): ReadRequestAnswer {
  const isStage = typeof data === 'object' && data !== null && 'pairs' in data;
  const schema = isStage ? stageSchema : searchSchema;
  const checked = v.safeParse(schema as v.GenericSchema, data);
  if (!checked.success) {
    const [issue] = checked.issues;
    const path = jsonPath((issue.path ?? []).map((item) => item.key as PathStep));
    const message = path === '' ? `the request ${issue.message}` : issue.message;
    return { ok: false, error: { path, message } };
  }
  const request = checked.output as SearchRequest | StageRequest;
  const warnings = unknownFields(schema, request).map(
    (path) => `the field ${path} is not known here and not used`,
  );
  return { ok: true, request, warnings };
}
