/** Opening a plan file. Answers, never throws; what is refused is refused in one sentence. */
import * as v from 'valibot';
import type { Refusal } from '../../geometry';
import { MIGRATIONS, type Migration, migrate } from '../migrations';
import type { Plan } from '../types';
import { checkNames, checkReferences } from './check-plan';
import { decodeText } from './decode-text';
import { formatRefusal, jsonPath, type PathStep, shownValue } from './json-path';
import { unknownFields } from './known-fields';
import { parseJson } from './parse-json';
import { CURRENT_VERSION, FORMAT, planSchema } from './plan-schema';

export interface ReadPlan {
  ok: true;
  plan: Plan;
  /** Sentences to be shown: unknown fields, what was brought up to date. */
  warnings: string[];
  /** Made by a newer version: to be looked at only, never overwritten. */
  newer: boolean;
}

export interface RefusedPlan {
  ok: false;
  error: Refusal;
  /** The text as it was read, to be offered back; null where the file is no text. */
  raw: string | null;
  /** The plan without its bad speakers, to be opened only if the user agrees. */
  withoutBad?: Omit<ReadPlan, 'ok'> & {
    /** One sentence for each speaker left out. */
    dropped: string[];
  };
  /**
   * The plan whole, where every field is right but the engine refuses what they say together
   * (dimensions that disagree, a panel the body style does not have): it can be opened to be
   * mended, if the user agrees.
   */
  asItIs?: Omit<ReadPlan, 'ok'>;
}

export type ReadPlanAnswer = ReadPlan | RefusedPlan;

export interface ReadOptions {
  /**
   * False: names that lead nowhere are let through. For plans the page kept itself, which may be
   * in the middle of being changed.
   */
  references?: boolean;
  migrations?: readonly Migration[];
  currentVersion?: number;
}

/** Reads a plan from the text or the bytes of a file. */
export function readPlan(input: string | Uint8Array, options: ReadOptions = {}): ReadPlanAnswer {
  const decoded = decodeText(input);
  if (!decoded.ok) return { ok: false, error: decoded.error, raw: null };
  const { text: raw } = decoded;
  const refuse = (error: Refusal): RefusedPlan => ({ ok: false, error, raw });
  const parsed = parseJson(raw);
  if (!parsed.ok) return refuse(parsed.error);
  const answer = readPlanData(parsed.value, options);
  return answer.ok ? answer : { ...answer, raw };
}

/** The same for JSON already parsed (and free of the keys that reach into prototypes). */
export function readPlanData(data: unknown, options: ReadOptions = {}): ReadPlanAnswer {
  const { references = true, migrations = MIGRATIONS, currentVersion = CURRENT_VERSION } = options;
  const refuse = (path: string, message: string): RefusedPlan => ({
    ok: false,
    error: { path, message },
    raw: null,
  });
  if (typeof data !== 'object' || data === null || Array.isArray(data)) {
    return refuse('', `the file holds ${shownValue(data)}, not a plan`);
  }
  const { format, version } = data as Record<string, unknown>;
  if (format !== FORMAT) return refuse('format', `must be "${FORMAT}", got ${shownValue(format)}`);
  if (!Number.isSafeInteger(version) || (version as number) < 0) {
    return refuse('version', `must be a whole number, got ${shownValue(version)}`);
  }
  const newer = (version as number) > currentVersion;
  const migrated = migrate(data as Record<string, unknown>, migrations, currentVersion);
  if (!migrated.ok) return refuse(migrated.error.path, migrated.error.message);

  const checked = check(migrated.plan, references);
  if (checked.ok) {
    const warnings = [
      ...(newer ? [`made by a newer version (${version}): opened to look at only`] : []),
      ...migrated.steps.map((step) => `brought up to date: ${step}`),
      ...unknownWarnings(checked.plan),
    ];
    return { ok: true, plan: checked.plan, warnings, newer };
  }
  const [first] = checked.refusals as [Refusal];
  if (newer) {
    return refuse(
      first.path,
      `the plan was made by a newer version (${version}) that this one cannot show: ${first.message}`,
    );
  }
  const refused: RefusedPlan = { ok: false, error: first, raw: null };
  const rest = withoutBadSpeakers(migrated.plan, references);
  if (rest) refused.withoutBad = { ...rest, warnings: unknownWarnings(rest.plan), newer };
  const whole = references ? check(migrated.plan, false) : checked;
  if (whole.ok) {
    refused.asItIs = { plan: whole.plan, warnings: unknownWarnings(whole.plan), newer };
  }
  return refused;
}

type Checked = { ok: true; plan: Plan } | { ok: false; refusals: Refusal[] };

function check(data: unknown, references: boolean): Checked {
  const parsed = v.safeParse(planSchema, data);
  if (!parsed.success) {
    return {
      ok: false,
      refusals: parsed.issues.map((issue) => ({
        path: jsonPath((issue.path ?? []).map((item) => item.key as PathStep)),
        message: issue.message,
      })),
    };
  }
  const plan = parsed.output as unknown as Plan;
  const names = checkNames(plan);
  const refusals = names.length > 0 || !references ? names : checkReferences(plan);
  return refusals.length > 0 ? { ok: false, refusals } : { ok: true, plan };
}

const BAD_SPEAKER = /^options\[(\d+)\]\.speakers\[(\d+)\]/;

/** Each round drops what one kind of check has found; there are three kinds. */
const ROUNDS = 4;

/** Leaves out every speaker a refusal is about; null where something else is wrong as well. */
function withoutBadSpeakers(data: Record<string, unknown>, references: boolean) {
  let rest = data;
  const dropped: string[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const checked = check(rest, references);
    if (checked.ok) return dropped.length > 0 ? { plan: checked.plan, dropped } : null;
    const bad = new Map<string, string>();
    for (const refusal of checked.refusals) {
      const [key] = BAD_SPEAKER.exec(refusal.path) ?? [];
      if (!key) return null;
      // Places shift once speakers are gone, so a later round's sentence stands without a path.
      if (!bad.has(key)) bad.set(key, round === 0 ? formatRefusal(refusal) : refusal.message);
    }
    dropped.push(...bad.values());
    rest = {
      ...rest,
      options: (rest.options as { speakers?: unknown[] }[]).map((option, o) => ({
        ...option,
        ...(option.speakers && {
          speakers: option.speakers.filter((_, s) => !bad.has(`options[${o}].speakers[${s}]`)),
        }),
      })),
    };
  }
  return null;
}

/** More unknown fields than this are counted, not listed. */
const LISTED = 20;

function unknownWarnings(plan: Plan): string[] {
  const unknown = unknownFields(planSchema, plan);
  const listed = unknown
    .slice(0, LISTED)
    .map((path) => `the field ${path} is not known here; it is kept, but not used`);
  const more = unknown.length - listed.length;
  return more > 0 ? [...listed, `${more} more fields are not known here; they are kept`] : listed;
}
