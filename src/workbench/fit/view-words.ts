/** What a front pillar hides, in words. */
import { PILLAR_LIMIT_DEG, type PillarView } from '../../geometry';
import { formatNumber } from '../../plan/units';

/** "5.2°", one digit as the limit's own comparison wants it. */
export const viewDegrees = (deg: number | null): string =>
  deg === null ? formatNumber(null) : `${formatNumber(deg, 1)}°`;

/** Less than is shown is nothing, degrees. */
const SHOWN = 0.05;

/** "the pod", "the pods": what of the speakers on the pillar is known and counted. */
function pods({ speakers, unknown }: PillarView): 'none' | 'one' | 'more' {
  const counted = speakers.length - unknown.length;
  return counted === 0 ? 'none' : counted === 1 ? 'one' : 'more';
}

/**
 * "The pod on the left A-pillar hides 1.4° more: 5.2° before, 6.6° after. UN R125 allows 6°." The
 * word for the pods is plain: whatever stands on the pillar before its panel.
 */
export function viewSentence(view: PillarView): string {
  const { side, beforeDeg, afterDeg, addedDeg, unknown } = view;
  const pillar = `the ${side} A-pillar`;
  if (beforeDeg === null || afterDeg === null || addedDeg === null)
    return `What ${pillar} hides is not known: ${view.reason ?? 'no reason was given'}.`;
  const limit = `UN R125 allows ${PILLAR_LIMIT_DEG}°${view.overLimit ? ': this is over it' : ''}.`;
  const left = unknown.length > 0 ? ` ${unknownSentence(unknown.length)}` : '';
  const count = pods(view);
  if (count === 'none') {
    const alone =
      unknown.length > 0
        ? `Without what stands on it, ${pillar} hides`
        : `Nothing stands on ${pillar}; by itself it hides`;
    return `${alone} ${viewDegrees(beforeDeg)}. ${limit}${left}`;
  }
  const [subject, hides] = count === 'one' ? ['The pod', 'hides'] : ['The pods', 'hide'];
  const more =
    addedDeg < SHOWN
      ? `${hides} nothing more: ${viewDegrees(beforeDeg)} before and after.`
      : `${hides} ${viewDegrees(addedDeg)} more: ${viewDegrees(beforeDeg)} before, ` +
        `${viewDegrees(afterDeg)} after.`;
  return `${subject} on ${pillar} ${more} ${limit}${left}`;
}

const unknownSentence = (count: number): string =>
  count === 1
    ? 'One speaker there has no body entered and counts as nothing.'
    : `${count} speakers there have no body entered and count as nothing.`;

/** The two pillars against each other; `null` where one of them is not known. */
export function viewsCompared(views: readonly PillarView[]): string | null {
  const [a, b] = views;
  if (!a || !b || a.afterDeg === null || b.afterDeg === null) return null;
  if (Math.abs(a.afterDeg - b.afterDeg) < SHOWN)
    return `Both pillars hide ${viewDegrees(a.afterDeg)}.`;
  const [more, less] = a.afterDeg > b.afterDeg ? [a, b] : [b, a];
  const wheel = more.driver ? ', at the wheel’s side,' : '';
  return (
    `The ${more.side} one${wheel} hides more than the ${less.side} one: ` +
    `${viewDegrees(more.afterDeg)} against ${viewDegrees(less.afterDeg)}.`
  );
}
