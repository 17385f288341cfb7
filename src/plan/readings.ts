/** Readings of the plan as the engine's survey takes them. */
import {
  type CabinModel,
  type DistanceReading,
  type PlacedSpeaker,
  TAPE_SD,
  USUAL_DOUBTS,
  type Vec3,
} from '../geometry';
import { sameEnd } from './same-end';
import type { Reading, ReadingEnd } from './types';

type Known = {
  cabin: Pick<CabinModel, 'references' | 'seats'>;
  placed: readonly PlacedSpeaker[];
};

/** Where an end is in the model; `null` where the car has no such point now. */
export function pointOfEnd(end: ReadingEnd, { cabin, placed }: Known): Vec3 | null {
  switch (end.kind) {
    case 'speaker':
      return placed.find(({ speaker }) => speaker === end.speaker)?.position ?? null;
    case 'reference':
      return cabin.references.find(({ id }) => id === end.reference)?.point ?? null;
    case 'head':
      return cabin.seats.find(({ id }) => id === end.seat)?.head ?? null;
    case 'ear':
      return cabin.seats.find(({ id }) => id === end.seat)?.ears[end.side] ?? null;
  }
}

/** How sure the model's own place of an end is, along the reading, mm. */
const doubtOf: Readonly<Record<ReadingEnd['kind'], number>> = {
  // A named point is what the model is fitted to.
  reference: 0,
  speaker: USUAL_DOUBTS.spot,
  head: USUAL_DOUBTS.seat,
  ear: USUAL_DOUBTS.seat,
};

/**
 * The readings that end at `what`, each with its other end as the known point. Named by their place
 * in the list. Those whose other end the car does not have are passed over.
 */
export function distancesTo(
  what: ReadingEnd,
  readings: readonly Reading[],
  known: Known,
): DistanceReading[] {
  return readings.flatMap(({ from, to, distance, sd = TAPE_SD }, i): DistanceReading[] => {
    const other = sameEnd(from, what) ? to : sameEnd(to, what) ? from : null;
    const anchor = other && pointOfEnd(other, known);
    if (!other || !anchor) return [];
    const whole = Math.sqrt(sd ** 2 + doubtOf[other.kind] ** 2);
    return [{ id: String(i), anchor, distance, sd: whole }];
  });
}
