/** What was measured in the car: first arrivals, and distances by tape or sound. */
import { castDraft } from 'immer';
import type { MeasuredArrival, MicrophonePlace, Vec3 } from '../../geometry';
import type { Reading } from '../types';
import { tiePair } from './change-speaker';
import { placeSpeakerAt } from './move-speaker';
import { assign, findOption, isTied, type PlanRecipe, plain, same } from './recipe';

const samePlace = (a: MeasuredArrival, b: MeasuredArrival): boolean =>
  a.speaker === b.speaker && a.seat === b.seat && a.at === b.at;

/** Keeps first arrivals; those of the same speaker at the same place are replaced. */
export function keepMeasured(optionId: string, arrivals: readonly MeasuredArrival[]): PlanRecipe {
  return (draft) => {
    const option = findOption(draft, optionId);
    if (!option || arrivals.length === 0) return;
    const before = (plain(option.measured ?? []) as MeasuredArrival[]).filter(
      (one) => !arrivals.some((other) => samePlace(one, other)),
    );
    assign(option, { measured: castDraft([...before, ...arrivals]) });
  };
}

/** Forgets what was measured at one place. */
export function forgetMeasured(optionId: string, seat: string, at: MicrophonePlace): PlanRecipe {
  return (draft) => {
    const option = findOption(draft, optionId);
    if (!option?.measured) return;
    const left = option.measured.filter((one) => one.seat !== seat || one.at !== at);
    if (left.length === 0) delete option.measured;
    else if (left.length !== option.measured.length) option.measured = left;
  };
}

/**
 * Adds readings of distances. One by sound takes the place of an earlier one by sound between the
 * same points; tapes are all kept, since a second one is another reading.
 */
export function addReadings(optionId: string, readings: readonly Reading[]): PlanRecipe {
  return (draft) => {
    const option = findOption(draft, optionId);
    if (!option || readings.length === 0) return;
    const before = (plain(option.readings ?? []) as Reading[]).filter(
      (one) =>
        one.by !== 'sound' ||
        !readings.some(
          (other) => other.by === 'sound' && same(one.from, other.from) && same(one.to, other.to),
        ),
    );
    assign(option, { readings: castDraft([...before, ...readings]) });
  };
}

/** Takes one reading away, by its place in the list. */
export function removeReading(optionId: string, index: number): PlanRecipe {
  return (draft) => {
    const option = findOption(draft, optionId);
    if (!option?.readings?.[index]) return;
    if (option.readings.length === 1) delete option.readings;
    else option.readings.splice(index, 1);
  };
}

/**
 * Puts a speaker where readings found it, as a free point. Its pair is untied: the other side was not
 * found at the mirror image, and stays.
 */
export function standWhereFixed(optionId: string, speakerId: string, position: Vec3): PlanRecipe {
  return (draft) => {
    const option = findOption(draft, optionId);
    const speaker = option?.speakers.find(({ id }) => id === speakerId);
    if (!option || !speaker) return;
    if (speaker.pair && isTied(option, speaker.pair)) tiePair(optionId, speaker.pair, false)(draft);
    placeSpeakerAt(optionId, speakerId, position)(draft);
  };
}
