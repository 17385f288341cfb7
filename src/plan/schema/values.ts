/** The small pieces plan fields are made of, each refusing in words of its own. */
import * as v from 'valibot';
import type { Vec3 } from '../../geometry';
import { shownValue } from './json-path';

type Received = { readonly input: unknown };

const missing = ({ input }: Received) => input === undefined;

/** "must be a number, got the text "12"", or "must be given: a number". */
export const mustBe =
  (what: string) =>
  (issue: Received): string =>
    missing(issue) ? `must be given: ${what}` : `must be ${what}, got ${shownValue(issue.input)}`;

/** A finite number from `low` to `high`, ends included. */
export const number = (low: number, high: number) =>
  v.pipe(
    v.number(mustBe('a number')),
    v.check(
      (n) => n >= low && n <= high,
      ({ input }) => `must be between ${low} and ${high}, got ${shownValue(input)}`,
    ),
  );

/** More than 0 and at most `high`. */
export const positive = (high: number) =>
  v.pipe(
    v.number(mustBe('a number')),
    v.check(
      (n) => n > 0 && n <= high,
      ({ input }) => `must be more than 0 and at most ${high}, got ${shownValue(input)}`,
    ),
  );

/** Nothing in or round a car is farther from it than this, mm. */
export const FAR = 100_000;

export const coordinate = number(-FAR, FAR);

export const vec3 = v.strictTuple(
  [coordinate, coordinate, coordinate],
  mustBe('three numbers [x, y, z]'),
);

/** Angles in degrees, a turn either way. */
export const angle = number(-360, 360);

export const text = v.string(mustBe('a text'));

/** A name others refer to: any text but an empty one. */
export const id = v.pipe(
  text,
  v.check((s) => s !== '', 'must not be empty'),
);

export const yesOrNo = v.boolean(mustBe('true or false'));

export const list = <const S extends v.GenericSchema>(item: S) => v.array(item, mustBe('a list'));

export const oneOf = <const T extends readonly string[]>(words: T) =>
  v.picklist(words, mustBe(`one of ${words.map((word) => `"${word}"`).join(', ')}`));

/** Fields known by name; unknown ones are let through, to be kept on saving. */
export const fields = <const E extends v.ObjectEntries>(entries: E) =>
  v.looseObject(entries, (issue) =>
    missing(issue) ? 'must be given' : mustBe('an object with fields')(issue),
  );

/** Like {@link fields}, refusing a list, which JavaScript takes for an object. */
export const object = <const E extends v.ObjectEntries>(entries: E) =>
  v.pipe(
    v.custom<Record<string, unknown>>(
      (value) => typeof value === 'object' && value !== null && !Array.isArray(value),
      mustBe('an object with fields'),
    ),
    fields(entries),
  );

/** Values by names of the user's own. */
export const byName = <const S extends v.GenericSchema>(value: S, what: string) =>
  v.pipe(
    v.custom<Record<string, v.InferInput<S>>>(
      (input) => typeof input === 'object' && input !== null && !Array.isArray(input),
      mustBe(what),
    ),
    v.record(v.string(), value),
  );

/**
 * A long list of triples, checked in one loop: a scan has hundreds of thousands, and one schema
 * each would cost seconds.
 * @param sentence what is wrong with a number, or null
 */
export const triples = (what: string, sentence: (n: unknown) => string | null) =>
  v.pipe(
    v.custom<readonly Vec3[]>((value) => Array.isArray(value), mustBe(`a list of ${what}`)),
    v.rawCheck(({ dataset, addIssue }) => {
      if (!dataset.typed) return;
      const input = dataset.value as readonly unknown[];
      for (const [i, triple] of input.entries()) {
        const whole = Array.isArray(triple) && triple.length === 3;
        const wrong = whole ? triple.findIndex((n) => sentence(n) !== null) : -1;
        if (whole && wrong < 0) continue;
        const step = (key: number, value: unknown, of: readonly unknown[]) =>
          ({ type: 'array', origin: 'value', input: of as unknown[], key, value }) as const;
        addIssue({
          message: whole
            ? (sentence(triple[wrong]) as string)
            : mustBe('three numbers')({ input: triple }),
          path: whole
            ? [step(i, triple, input), step(wrong, triple[wrong], triple)]
            : [step(i, triple, input)],
        });
        return;
      }
    }),
  );
