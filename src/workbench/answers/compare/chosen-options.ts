/** More columns than this no one reads. */
export const MOST_OPTIONS = 6;
export const FEWEST_OPTIONS = 2;

/**
 * Which options are compared, in the plan's order: those chosen that are still there, with the one
 * on the board; where fewer than two are left, as many as there is room for.
 */
export function chosenOptions(
  all: readonly string[],
  chosen: readonly string[] | null,
  board: string | null,
): string[] {
  const asked = chosen ? all.filter((id) => chosen.includes(id) || id === board) : [];
  const ids = asked.length >= FEWEST_OPTIONS ? asked : all;
  if (ids.length <= MOST_OPTIONS) return [...ids];
  const first = ids.filter((id) => id !== board).slice(0, board ? MOST_OPTIONS - 1 : MOST_OPTIONS);
  return ids.filter((id) => id === board || first.includes(id));
}

/** The one that all others are told against. */
export const baselineOf = (chosen: readonly string[], asked: string | null): string =>
  asked !== null && chosen.includes(asked) ? asked : (chosen[0] ?? '');

/**
 * What the option on the board is told against: the baseline, or, where that is itself, the best by
 * weights of the others.
 */
export function rivalOf(
  option: string,
  baseline: string,
  verdicts: readonly { option: string; score: number | null }[],
): string | null {
  if (option !== baseline) return baseline;
  const others = verdicts.filter((one) => one.option !== option);
  const best = others.reduce<(typeof others)[number] | null>(
    (most, one) => (most && (most.score ?? Infinity) <= (one.score ?? Infinity) ? most : one),
    null,
  );
  return best?.option ?? null;
}
