import type { CrossoverInput, OptionInput, Role, SpeakerInput } from '../input';
import { crossoverProblem, usuallyInverted } from '../sound/crossover';
import { type PairMembers, pairsOf } from '../stage/pairs';

/** Where one pair hands over to another. */
export interface Crossing {
  crossover: CrossoverInput;
  /** True where the plan does not list it and the speakers' bands suggest it. */
  proposed: boolean;
}

/** Roles that share the front stage's range among them; the others play beside it. */
const SHARING: ReadonlySet<Role> = new Set([
  'subwoofer',
  'midbass',
  'midrange',
  'wideband',
  'tweeter',
]);

/** Bands whose ends leave a wider gap than this do not meet, octaves: a choice of ours. */
const WIDEST_GAP_OCTAVES = 1;

/** Filters proposed where the plan names none: common practice, no source. */
const USUAL = { family: 'linkwitz-riley', order: 4 } as const;

/**
 * The hand-overs of an option, from low to high: those listed, and one proposed between each two
 * pairs that follow one another in frequency and whose bands meet, at the geometric mean of the
 * lower one's upper end and the upper one's lower end (common practice, no source).
 */
export function crossingsOf(option: OptionInput): Crossing[] {
  const listed = (option.crossovers ?? []).map((crossover) => ({ crossover, proposed: false }));
  const isListed = (a: string, b: string) =>
    listed.some(({ crossover: { below, above } }) =>
      below === a ? above === b : below === b && above === a,
    );
  const bands = pairsOf(option.speakers)
    .flatMap((members) => {
      const bandHz = bandOf(option.speakers, members);
      return bandHz ? [{ pair: members.pair, low: bandHz[0], high: bandHz[1] }] : [];
    })
    .sort((a, b) => a.low * a.high - b.low * b.high);
  const proposed = bands.flatMap((below, i): Crossing[] => {
    const above = bands[i + 1];
    if (!above || isListed(below.pair, above.pair)) return [];
    // One band inside the other, or two alike: nothing is handed over.
    if (!(below.low < above.low && below.high <= above.high)) return [];
    if (above.low > below.high * 2 ** WIDEST_GAP_OCTAVES) return [];
    const frequencyHz = Math.sqrt(below.high * above.low);
    const crossover = { below: below.pair, above: above.pair, ...USUAL, frequencyHz };
    return [{ crossover, proposed: true }];
  });
  return [...listed, ...proposed].sort((a, b) => a.crossover.frequencyHz - b.crossover.frequencyHz);
}

/** What both speakers of a pair cover, or the one that has a band; none for other roles. */
function bandOf(
  speakers: readonly SpeakerInput[],
  { left, right }: PairMembers,
): readonly [number, number] | null {
  const bands = speakers.flatMap(({ id, role, bandHz }) =>
    (id === left || id === right) && bandHz && SHARING.has(role) ? [bandHz] : [],
  );
  if (bands.length === 0) return null;
  const low = Math.max(...bands.map((band) => band[0]));
  const high = Math.min(...bands.map((band) => band[1]));
  return low < high ? [low, high] : null;
}

/** What is wrong with a listed hand-over, in one sentence; `null` when nothing is. */
export function crossingProblem({ below, above, ...crossover }: CrossoverInput): string | null {
  if (below === above) return `the pair "${below}" cannot hand over to itself`;
  return crossoverProblem(crossover);
}

/**
 * Which speakers play with their poles swapped: as the plan says, else as usual for the crossovers
 * of their pair. Usual poles are counted from the lowest pair up, each hand-over of order 2 or 6
 * swapping those of the pair above it against the pair below.
 */
export function polaritiesOf(option: OptionInput): ReadonlyMap<string, boolean> {
  const usual = new Map<string, boolean>();
  for (const { crossover } of crossingsOf(option)) {
    const { below, above } = crossover;
    if (crossingProblem(crossover) || usual.has(above)) continue;
    usual.set(above, (usual.get(below) ?? false) !== usuallyInverted(crossover));
  }
  return new Map(
    option.speakers.map(({ id, pair, inverted }) => [
      id,
      inverted ?? (pair !== undefined && (usual.get(pair) ?? false)),
    ]),
  );
}
