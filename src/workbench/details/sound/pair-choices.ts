import type { SpeakerInput } from '../../../geometry';
import { pairName, speakerName } from '../../../plan/names';
import type { Choice } from '../../parts/select-field';

/** Stands for a speaker without a pair; no id can be empty. */
export const NO_PAIR = '';

/**
 * The pairs a speaker can belong to: its own, those of its role, one of its own where it is not
 * alone in the one it has, and none.
 */
export function pairChoices(speaker: SpeakerInput, among: readonly SpeakerInput[]): Choice[] {
  const pairs = new Set<string>();
  for (const { role, pair } of among) if (pair && role === speaker.role) pairs.add(pair);
  if (speaker.pair) pairs.add(speaker.pair);
  const alone = !among.some(({ id, pair }) => id !== speaker.id && pair === speaker.pair);
  const founded = freePair(speaker, among);
  return [
    ...[...pairs].map((pair) => ({ value: pair, label: pairName(pair, among) })),
    ...(speaker.pair && alone ? [] : [{ value: founded, label: 'a pair of its own' }]),
    { value: NO_PAIR, label: 'none: it stands alone' },
  ];
}

/** A pair's id named after the role, that no pair has yet. */
function freePair({ role }: SpeakerInput, among: readonly SpeakerInput[]): string {
  const taken = new Set(among.map(({ pair }) => pair));
  let n = 1;
  while (taken.has(n === 1 ? role : `${role}-${n}`)) n++;
  return n === 1 ? role : `${role}-${n}`;
}

/** What choosing another pair or side would do to others, in a sentence; `null`: nothing. */
export function pairWarning(speaker: SpeakerInput, among: readonly SpeakerInput[]): string | null {
  const full = pairsOfRole(speaker, among).filter(({ members }) => members.length > 1);
  if (full.length === 0) return null;
  return 'In a pair that is full, the one on its side leaves the pair.';
}

function pairsOfRole(speaker: SpeakerInput, among: readonly SpeakerInput[]) {
  const pairs = new Map<string, SpeakerInput[]>();
  for (const one of among) {
    if (!one.pair || one.role !== speaker.role || one.pair === speaker.pair) continue;
    pairs.set(one.pair, [...(pairs.get(one.pair) ?? []), one]);
  }
  return [...pairs].map(([pair, members]) => ({ pair, members }));
}

/** Whom a change of sides takes along: the twin, by name. */
export function twinName(speaker: SpeakerInput, among: readonly SpeakerInput[]): string | null {
  const twin =
    speaker.pair && speaker.side
      ? among.find((one) => one.id !== speaker.id && one.pair === speaker.pair && one.side)
      : undefined;
  return twin ? speakerName(twin, among) : null;
}
