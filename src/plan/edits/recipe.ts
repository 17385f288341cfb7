/** What an edit is, and the small things all edits share. */
import { castDraft, current, type Draft, isDraft } from 'immer';
import type { Role, Side, SpeakerInput, Vec3 } from '../../geometry';
import type { Plan, PlanOption } from '../types';

/**
 * A change of the plan, applied to a draft of it. An edit that names something the plan does not
 * have changes nothing.
 */
export type PlanRecipe = (draft: Draft<Plan>) => void;

export const findOption = (draft: Draft<Plan>, optionId: string): Draft<PlanOption> | undefined =>
  draft.options.find((option) => option.id === optionId);

export function findSpeaker(draft: Draft<Plan>, optionId: string, speakerId: string) {
  const option = findOption(draft, optionId);
  const speaker = option?.speakers.find(({ id }) => id === speakerId);
  return option && speaker ? { option, speaker } : null;
}

/** The other speaker of the pair; null where there is none. */
export function twinOf(
  option: Draft<PlanOption>,
  speaker: Draft<SpeakerInput>,
): Draft<SpeakerInput> | null {
  if (!speaker.pair || !speaker.side) return null;
  const twin = option.speakers.find(
    (s) => s.pair === speaker.pair && s.side !== undefined && s.side !== speaker.side,
  );
  return twin ?? null;
}

/** True when the pair moves as mirror images, which is the rule. */
export const isTied = (option: Pick<PlanOption, 'untied'>, pair: string | undefined): boolean =>
  pair !== undefined && !(option.untied ?? []).includes(pair);

/** The twin that moves along, or null. */
export function tiedTwin(option: Draft<PlanOption>, speaker: Draft<SpeakerInput>) {
  return isTied(option, speaker.pair) ? twinOf(option, speaker) : null;
}

/** `stem`, or the first of `stem`-2, `stem`-3, … that is free. */
export function freeId(stem: string, taken: Iterable<string>): string {
  const used = new Set(taken);
  if (!used.has(stem)) return stem;
  let n = 2;
  while (used.has(`${stem}-${n}`)) n++;
  return `${stem}-${n}`;
}

/** A pair id for the role, free for the pair and for both of its speakers. */
export function freePairId(option: Pick<PlanOption, 'speakers'>, role: Role): string {
  const taken = new Set<string>();
  for (const { id, pair } of option.speakers) {
    taken.add(id);
    if (pair) taken.add(pair);
  }
  let n = 1;
  for (;;) {
    const pair = n === 1 ? role : `${role}-${n}`;
    if (![pair, `${pair}-left`, `${pair}-right`].some((id) => taken.has(id))) return pair;
    n++;
  }
}

/** A plain copy of a draft or of plain data. */
export const plain = <T>(value: T): T =>
  isDraft(value) ? (current(value as object) as T) : structuredClone(value);

/** Sets the fields given; `undefined` and `null` take a field away. */
export function assign<T extends object>(
  target: T,
  fields: { [K in keyof T]?: T[K] | null | undefined },
): void {
  for (const key of Object.keys(fields) as (keyof T)[]) {
    const value = fields[key];
    if (value === undefined || value === null) delete target[key];
    else if (!same(target[key], value)) target[key] = castDraft(value) as T[keyof T];
  }
}

/** Equal as JSON data: an edit that sets what is already there is no edit. */
export const same = (a: unknown, b: unknown): boolean =>
  a === b || JSON.stringify(plain(a)) === JSON.stringify(plain(b));

/** JSON has no minus zero, so the plan has none: what is read back equals what was written. */
export const positiveZeros = ([x, y, z]: Vec3): Vec3 => [x + 0, y + 0, z + 0];

export const SIDES: readonly Side[] = ['left', 'right'];
