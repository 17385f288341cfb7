/** What came of a search, in words. */
import { formatAngle } from '../../../plan/units';
import type { Found } from './found';
import { REASONS, type Reason, type Tally } from './tally';

const many = (n: number): string => String(n);

/** "3414 spots tried for the tweeters, 968 allowed." */
export function countSentence(found: Found, pairName: (pair: string) => string): string {
  const counts = found.pairs.map(
    ({ pair, tried, feasible }) =>
      `${many(tried)} ${found.pairs.length > 1 ? `for the ${pairName(pair)}` : 'spots tried'}, ${many(feasible)} allowed`,
  );
  if (found.pairs.length < 2) return `${counts.join('')}.`;
  return `Spots tried: ${counts.join('; ')}. ${many(found.tried)} combinations of the allowed ones.`;
}

/** Why allowed spots of several pairs may come to no answer; empty where they come to one. */
export const togetherSentence = ({
  pairs,
  feasible,
  complete,
  answers,
}: Pick<Found, 'pairs' | 'feasible' | 'complete' | 'answers'>): string =>
  pairs.length > 1 && feasible > 0 && complete && answers.length === 0
    ? ' In none of them can all stand together: the speakers would run into each other, or hide too much of the view past a pillar. Tick more panels, take a smaller step, or ease a demand.'
    : '';

/** What the front is, in a sentence or two, and how much of it was looked at. */
export function frontSentence(found: Found, length: (mm: number) => string): string {
  const { front, frontOf, pairs } = found;
  if (front.length === 0) return '';
  const what = pairs.length > 1 ? 'combinations' : 'spots of the grid';
  const beaten =
    front.length === 1
      ? `One of the ${what} is as good as any other in each aim and better in one.`
      : `${many(front.length)} ${what} are beaten by no other in every aim: whatever is better at one thing is worse at another.`;
  if (!frontOf) return beaten;
  const among =
    frontOf.spacing > 0
      ? ` Among ${many(frontOf.combinations)} combinations of spots at least ${length(frontOf.spacing)} apart.`
      : ` Among all ${many(frontOf.combinations)} combinations.`;
  const thinned = frontOf.within > 0 ? ' Of those much alike, one stands for the others.' : '';
  return beaten + among + thinned;
}

const REASON_WORDS: Readonly<Record<Reason, string>> = {
  keepClear: 'they reach into a keep-clear zone',
  fit: 'the speaker does not fit',
  free: 'something stands in the line to a listener',
  angle: 'a listener is too far off the axis',
  view: 'the view past the pillar suffers too much',
};

/** One line for each reason: how many it rules out, and how many it alone does. */
export function tallyLines({ by, alone }: Tally): { reason: Reason; text: string }[] {
  return REASONS.filter((reason) => by[reason] > 0)
    .sort((a, b) => by[b] - by[a])
    .map((reason) => ({
      reason,
      text: `${many(by[reason])} because ${REASON_WORDS[reason]}${
        alone[reason] > 0 ? `, ${many(alone[reason])} of them for nothing else` : ''
      }`,
    }));
}

/** What would have to give, where nothing is allowed. */
export function whatWouldHaveToGive({ alone, leastAngleDeg }: Tally): string {
  if (alone.angle > 0 && leastAngleDeg !== null)
    return `Allow ${formatAngle(Math.ceil(leastAngleDeg))} off the axis, or aim otherwise, and the first spot comes free.`;
  if (alone.free > 0)
    return `Give up the free line and ${spots(alone.free)} allowed; the sound then goes round what is in the way.`;
  if (alone.view > 0) return `Allow more in the view and ${spots(alone.view)} allowed.`;
  if (alone.fit > 0)
    return `${spots(alone.fit, true)} only too tight: a smaller speaker, another stand-off or a pod may do, or untick “Must fit” to see them.`;
  if (alone.keepClear > 0)
    return `${spots(alone.keepClear, true)} ruled out by keep-clear zones alone, and those are never given up: tick other panels.`;
  return 'Each spot is ruled out by more than one thing: tick other panels, or ease several demands.';
}

const spots = (n: number, start = false): string =>
  n === 1 ? `${start ? 'One spot is' : 'one spot is'}` : `${many(n)} spots are`;
