/** The numbers of places where a speaker could stand. */
import type { SpotMark } from '../../store';
import type { LabelWant } from '../labels';
import { RING } from '../parts/spot-marks-part';
import { placeOf, radiusOnSheet, type WordsFrame } from './want';

export const spotWants = (frame: WordsFrame, marks: readonly SpotMark[]): LabelWant[] =>
  marks.map(({ label, position, chosen }) => ({
    id: `place:${label}`,
    kind: 'place',
    text: label,
    ...placeOf(frame, position),
    gap: 4 + radiusOnSheet(frame, position, RING),
    // A number says nothing where it stands off; it would rather hide another word.
    weight: chosen ? 206 : 90,
    strong: chosen,
    data: { place: label },
  }));
