/** At each front pillar what it hides, and how much of that is new. */
import { formatNumber } from '../../plan/units';
import type { LabelWant } from '../labels';
import type { ShownPillar } from '../parts/pillar-part';
import { placeOf, type WordsFrame } from './want';

/** Less than is shown is nothing, degrees. */
const SHOWN = 0.05;

export function pillarWants(frame: WordsFrame, pillars: readonly ShownPillar[]): LabelWant[] {
  return pillars.flatMap(({ view, at }): LabelWant[] => {
    const { side, afterDeg, addedDeg, overLimit } = view;
    if (afterDeg === null || addedDeg === null) return [];
    const added = addedDeg < SHOWN ? '' : `, ${formatNumber(addedDeg, 1)}° of it new`;
    const text = `hides ${formatNumber(afterDeg, 1)}°${added}${overLimit ? ': too much' : ''}`;
    const place = placeOf(frame, at);
    const data = { pillar: side };
    return [
      {
        id: `pillar:${side}`,
        kind: 'pillar',
        text,
        ...place,
        gap: 22,
        weight: 90,
        strong: true,
        data,
      },
    ];
  });
}
