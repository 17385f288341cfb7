/** What holds for an option whatever the seat: does it fit, what it adds to the pillars, delays. */
import type { CabinModel } from '../cabin/model';
import type { StandingSpeaker } from '../fit/body';
import { createFitter } from '../fit/fitter';
import { pillarViews } from '../fit/pillar-view';
import type { FitProblem } from '../fit/problem';
import type { OptionInput } from '../input';
import type { PlacedSpeaker } from '../result';
import { channelSettings } from '../study/settings';
import type { Stage } from '../study/stage';
import { measureOf } from './measure';
import type { Put } from './measure-seat';

/** By speaker's id: everything that keeps it from fitting. */
export type Misfits = ReadonlyMap<string, readonly FitProblem[]>;

/** @param only only these are looked at anew; what others have is in `before` */
export function misfitsOf(
  { cabin, option, placed }: OptionPlaced,
  only?: string,
  before?: Misfits,
): Misfits {
  const standing = option.speakers.flatMap((speaker): StandingSpeaker[] => {
    const place = placed.find((one) => one.speaker === speaker.id);
    return place ? [{ speaker, placed: place }] : [];
  });
  const fitter = createFitter(cabin, standing, option);
  const problemsOf = ({ speaker, placed: place }: StandingSpeaker) => fitter(speaker, place);
  if (only === undefined || !before)
    return new Map(standing.map((one) => [one.speaker.id, problemsOf(one)]));
  const moved = standing.find(({ speaker }) => speaker.id === only);
  const own = moved ? problemsOf(moved) : [];
  const met = new Set(own.filter(({ kind }) => kind === 'speaker').map((problem) => problem.with));
  return new Map(
    standing.map(({ speaker: { id } }) => {
      if (id === only) return [id, own];
      // In a pocket the one that moved has its share of the room.
      const shares = option.pockets?.some(
        ({ speakers }) => speakers.includes(id) && speakers.includes(only),
      );
      const again = shares && standing.find(({ speaker }) => speaker.id === id);
      if (again) return [id, problemsOf(again)];
      // Two bodies that meet keep each other from fitting.
      const rest = (before.get(id) ?? []).filter(
        (problem) => problem.kind !== 'speaker' || problem.with !== only,
      );
      const together = own.filter((problem) => met.has(id) && problem.with === id);
      return [id, [...rest, ...together.map((problem) => ({ ...problem, with: only }))]];
    }),
  );
}

interface OptionPlaced {
  cabin: CabinModel;
  option: OptionInput;
  placed: readonly PlacedSpeaker[];
}

export function measureFit(misfits: Misfits, put: Put): void {
  for (const [kind, hard] of [
    ['misfits', false],
    ['keepClear', true],
  ] as const) {
    const problems = [...misfits].flatMap(([speaker, found]) =>
      found
        .filter((problem) => problem.hard === hard)
        .map(({ sentence }) => ({ speaker, sentence, hard })),
    );
    const value = new Set(problems.map(({ speaker }) => speaker)).size;
    put(measureOf(kind, null), { value, ...(problems.length > 0 && { problems }) });
  }
}

export function measurePillars({ cabin, option, result }: Stage, put: Put): void {
  for (const { side, addedDeg, reason, unknown } of pillarViews({
    cabin,
    option,
    placed: result.placed,
  })) {
    const bodies = unknown.map((id) => `the body of the speaker "${id}" is not known`)[0];
    const why = reason ?? bodies;
    put(
      measureOf('pillarAddedDeg', null, { side }),
      why === undefined ? { value: addedDeg } : { value: null, reason: why },
    );
  }
}

export function measureDelay(stage: Stage, put: Put): void {
  const { channels, problem } = channelSettings(stage);
  put(
    measureOf('longestDelay', null),
    channels.length === 0 || problem !== undefined
      ? { value: null, reason: problem ?? 'no speaker stands in this option' }
      : { value: Math.max(...channels.map(({ delay }) => delay)) },
  );
}
