/** One option with its answer: what a study looks at, and what it looks up there. */
import type { CabinModel, Seat } from '../cabin/model';
import type { OptionInput, PlanInput, Side, SpeakerInput } from '../input';
import type { Arrival, OptionResult, PlacedSpeaker, SeatResult } from '../result';

export interface Stage {
  plan: PlanInput;
  cabin: CabinModel;
  /** Of `plan`. */
  option: OptionInput;
  /** What the evaluator answered for `option` of `plan`. */
  result: OptionResult;
}

export const SIDES: readonly Side[] = ['left', 'right'];

/** The answer for one seat. */
export const seatResultOf = ({ result }: Stage, seatId: string): SeatResult | null =>
  result.seats.find(({ id }) => id === seatId) ?? null;

/** The seat itself, with its ears. */
export const seatOf = ({ cabin }: Stage, seatId: string): Seat | null =>
  cabin.seats.find(({ id }) => id === seatId) ?? null;

export const speakerOf = ({ option }: Stage, id: string): SpeakerInput | null =>
  option.speakers.find((speaker) => speaker.id === id) ?? null;

export const placedOf = ({ result }: Stage, id: string): PlacedSpeaker | null =>
  result.placed.find(({ speaker }) => speaker === id) ?? null;

export const arrivalOf = (seat: SeatResult, speaker: string): Arrival | null =>
  seat.arrivals.find((arrival) => arrival.speaker === speaker) ?? null;

export const noSeat = (seatId: string): string => `there is no seat "${seatId}" in this plan`;

export const missingSide = (pair: string, side: Side): string =>
  `the ${side} speaker of the pair "${pair}" is missing`;
