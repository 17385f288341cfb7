import type { AlignmentInput } from '../input';
import type { OptionResult } from '../result';
import { DEFAULT_SAMPLE_RATE_HZ } from '../stage/evaluate';
import { pairsOf } from '../stage/pairs';
import { compromiseOver } from './compromise';
import { type Stage, seatResultOf } from './stage';

/** What each channel is set to. */
export interface ChannelSetting {
  speaker: string;
  /** As the processor can hold it: a whole number of samples, ms. */
  delay: number;
  gainDb: number;
}

export interface ChannelSettings {
  by: 'seat' | 'seats';
  /** The seat aligned for; `null` for a compromise, or when there is no seat. */
  seat: string | null;
  /** In the order of the option's speakers; all at nothing where there is a problem. */
  channels: ChannelSetting[];
  /** Why no delays can be told. */
  problem?: string;
}

const kept = new WeakMap<OptionResult, { alignment: AlignmentInput; settings: ChannelSettings }>();

/**
 * What the alignment says: delays and gains for one seat (the one named, else the first), or the
 * best compromise over several (those listed, else all alike). Delays as rounded to whole samples,
 * since those are what is heard.
 */
export function channelSettings(stage: Stage): ChannelSettings {
  const known = kept.get(stage.result);
  if (known && known.alignment === stage.plan.alignment) return known.settings;
  const settings =
    stage.plan.alignment?.by === 'seats' ? overSeats(stage) : atSeat(stage, alignedSeat(stage));
  kept.set(stage.result, { alignment: stage.plan.alignment, settings });
  return settings;
}

function alignedSeat({ plan, result }: Stage): string | null {
  return plan.alignment?.seat ?? result.seats[0]?.id ?? null;
}

function atSeat(stage: Stage, id: string | null): ChannelSettings {
  const seat = id === null ? null : seatResultOf(stage, id);
  if (!seat)
    return {
      ...untouched(stage),
      by: 'seat',
      problem: id === null ? 'the plan has no seat' : `there is no seat "${id}" in this plan`,
    };
  const channels = seat.delays.map(({ speaker, roundedDelay, gainDb }) => ({
    speaker,
    delay: roundedDelay,
    gainDb,
  }));
  return { by: 'seat', seat: seat.id, channels };
}

function overSeats(stage: Stage): ChannelSettings {
  const { plan, option, result } = stage;
  const { seats, sampleRateHz } = plan.alignment;
  const weights = seats?.length ? seats : result.seats.map(({ id }) => ({ id, weight: 1 }));
  const rate = sampleRateHz ?? DEFAULT_SAMPLE_RATE_HZ;
  const answer = compromiseOver(result, pairsOf(option.speakers), weights, rate);
  if ('problem' in answer) return { ...untouched(stage), by: 'seats', problem: answer.problem };
  const channels = answer.channels.map(({ speaker, roundedDelay, gainDb }) => ({
    speaker,
    delay: roundedDelay,
    gainDb,
  }));
  return { by: 'seats', seat: null, channels };
}

const untouched = ({ option }: Stage): { seat: null; channels: ChannelSetting[] } => ({
  seat: null,
  channels: option.speakers.map(({ id }) => ({ speaker: id, delay: 0, gainDb: 0 })),
});

/** One speaker's setting; nothing where the settings do not name it. */
export const settingOf = ({ channels }: ChannelSettings, speaker: string): ChannelSetting =>
  channels.find((channel) => channel.speaker === speaker) ?? { speaker, delay: 0, gainDb: 0 };
