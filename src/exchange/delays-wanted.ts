import { compromiseOver, type OptionResult, pairsOf, type SeatResult } from '../geometry';
import { seatName } from '../plan/names';
import type { ExportedFor, ExportedSeat, ExportedStage, NoDelays } from './delay-types';

/** The delays a seat or a compromise asks for, before any rounding. */
export interface WantedDelays {
  seats: { result: SeatResult; told: Omit<ExportedSeat, 'largestErrorSetMs'> }[];
  /** By speaker. */
  channels: ReadonlyMap<string, { delay: number; gainDb: number }>;
}

/** Whom the plan's alignment serves: its seat, else the first, or all those it lists, else all alike. */
export function exportedFor({ plan, result }: Pick<ExportedStage, 'plan' | 'result'>): ExportedFor {
  const { by, seat, seats } = plan.alignment;
  if (by !== 'seats') return { by: 'seat', seat: seat ?? result.seats[0]?.id ?? '' };
  return { by, seats: seats?.length ? seats : allAlike(result) };
}

/** Every seat of a result, each counting as much as the others. */
export const allAlike = (result: OptionResult) => result.seats.map(({ id }) => ({ id, weight: 1 }));

/**
 * The engine's delays and gains for that seat, or the best compromise over those seats.
 * @throws RangeError for a single seat the result does not have: a mistake of the caller
 */
export function delaysWanted(
  { plan, option, result }: ExportedStage,
  whom: ExportedFor,
): WantedDelays | NoDelays {
  if (whom.by === 'seat') {
    const seat = result.seats.find(({ id }) => id === whom.seat);
    if (!seat) throw new RangeError(`delayExport: no seat "${whom.seat}" in the result`);
    const told = { id: seat.id, name: seatName(seat.id), weight: null, largestErrorMs: 0 };
    return {
      seats: [{ result: seat, told }],
      channels: new Map(seat.delays.map((delay) => [delay.speaker, delay])),
    };
  }
  const { sampleRateHz } = plan.alignment;
  const answer = compromiseOver(result, pairsOf(option.speakers), whom.seats, sampleRateHz);
  if ('problem' in answer) return answer;
  return {
    seats: answer.seats.flatMap(({ id, weight, largestError }) => {
      const seat = result.seats.find((one) => one.id === id);
      const told = { id, name: seatName(id), weight, largestErrorMs: largestError };
      return seat ? [{ result: seat, told }] : [];
    }),
    channels: new Map(answer.channels.map((channel) => [channel.speaker, channel])),
  };
}
