/** The places on the panels sound comes back from, and words at the strongest. */
import { formatLevel, formatTime } from '../../plan/units';
import type { LabelWant } from '../labels';
import type { ShownReflection } from '../parts/reflections-part';
import { nameOf, placeOf, type WordsFrame } from './want';

/** Words stand at this many of one speaker's reflections, the strongest. */
const WORDED = 3;

export function reflectionWants(
  frame: WordsFrame,
  reflections: readonly ShownReflection[],
): LabelWant[] {
  return reflections.flatMap(({ speaker, reflection, rank, first }): LabelWant[] => {
    const { panel, second, point, extraTime, levelDb } = reflection;
    const id = `${speaker}:${panel}:${second?.panel ?? ''}`;
    const here = placeOf(frame, point);
    const mark: LabelWant = {
      id: `bounce:${id}`,
      kind: 'bounce',
      text: '',
      ...here,
      gap: 0,
      weight: 204,
      strong: first,
      data: { bounce: panel },
    };
    if (rank >= WORDED) return [mark];
    return [
      mark,
      {
        id: `reflection:${id}`,
        kind: 'reflection',
        text: `${nameOf(frame, panel)}, ${formatTime(extraTime)}, ${formatLevel(levelDb)}`,
        ...here,
        gap: 10,
        weight: 68 - rank,
        strong: first,
        data: { reflection: panel },
      },
    ];
  });
}
