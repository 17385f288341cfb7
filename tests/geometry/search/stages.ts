/** Plans to search, and what `evaluatePlan` says of a pair put on a spot: nothing of the search. */
import {
  type Arrival,
  evaluatePlan,
  type FoundPlace,
  type FoundSpot,
  type MakeFitter,
  type PlanInput,
  type SearchAnswer,
  type SearchRequest,
  type Side,
  type SpeakerInput,
  type SpotMeasures,
  searchSpots,
} from '../../../src/geometry';

/** The middle of this band is 1000 Hz, an octave centre: `bands` tells the loss there. */
const BAND = [500, 2000] as const;
const MIDDLE_HZ = 1000;

export const OTHER = { left: 'right', right: 'left' } as const;

/** An estate with mids, to be searched for, and tweeters that stay. */
export function carPlan(wheelSide: Side = 'left', template = 'estate'): PlanInput {
  const pair = (role: 'midrange' | 'tweeter', panel: string): SpeakerInput[] =>
    (['left', 'right'] as const).map((side) => ({
      id: `${role}-${side}`,
      role,
      pair: role,
      side,
      mount: { panel: `${panel}-${side}`, u: 0.4, v: 0.4, standoff: 20 },
      aim: { kind: 'seat', seat: `front-${wheelSide}` },
      bandHz: BAND,
      diaphragm: 58,
      body: { flange: 84, cutout: 75, depth: 42 },
    }));
  return {
    air: { temperatureC: 20, relativeHumidityPercent: 50, pressureKPa: 101.325 },
    cabin: { template, wheelSide },
    seats: [],
    options: [
      { id: 'a', speakers: [...pair('midrange', 'kick'), ...pair('tweeter', 'mirror-corner')] },
    ],
    alignment: { seat: `front-${wheelSide}`, sampleRateHz: 48000 },
  };
}

/** The same with its mids on rings so wide, mm, level with their panel: no wedge is too steep. */
export const onRings = (plan: PlanInput, outer: number): PlanInput => ({
  ...plan,
  options: plan.options.map((option) => ({
    ...option,
    speakers: option.speakers.map((speaker) =>
      speaker.role === 'midrange'
        ? { ...speaker, aim: { kind: 'normal' }, ring: { outer } }
        : speaker,
    ),
  })),
});

/** A coarse grid over the dash top and the pillars, everything told. */
export const smallRequest = (change: Partial<SearchRequest> = {}): SearchRequest => ({
  option: 'a',
  pair: 'midrange',
  panels: ['dash-top-left', 'pillar-left', 'dash-top-center'],
  step: 90,
  seats: [{ id: 'front-left', weight: 1 }],
  require: { fits: false },
  answers: 3,
  apart: 120,
  all: true,
  ...change,
});

/** Everything fits everywhere. */
export const noFitter: MakeFitter = () =>
  Object.assign(() => [], { fits: () => true, isKeptClear: () => false });

export function searched(
  plan: PlanInput,
  request: SearchRequest,
  makeFitter?: MakeFitter,
): SearchAnswer {
  const found = searchSpots(plan, request, makeFitter);
  if (!found.ok) throw new Error(`${found.error.path}: ${found.error.message}`);
  return found.answer;
}

/** The plan with the pair's two speakers on a spot found. */
export function taken(plan: PlanInput, pair: string, spot: FoundSpot): PlanInput {
  const put = (speaker: SpeakerInput, { panel, u, v, standoff, aim }: FoundPlace) => ({
    ...speaker,
    mount: { panel, u, v, standoff },
    ...(aim && { aim }),
  });
  return {
    ...plan,
    options: plan.options.map((option) => ({
      ...option,
      speakers: option.speakers.map((speaker) =>
        speaker.pair !== pair
          ? speaker
          : put(speaker, speaker.side === 'left' ? spot : spot.partner),
      ),
    })),
  };
}

export interface Evaluated {
  measures: SpotMeasures;
  /** Every arrival of the two speakers at the seats. */
  arrivals: Arrival[];
}

/** Worst over the seats and over the two, from what `evaluatePlan` answers for the pair there. */
export function evaluated(
  plan: PlanInput,
  pair: string,
  spot: FoundSpot,
  seatIds: readonly string[] = ['front-left'],
): Evaluated {
  const answer = evaluatePlan(taken(plan, pair, spot));
  if (!answer.ok) throw new Error(answer.error.message);
  const seats = (answer.options[0]?.seats ?? []).filter(({ id }) => seatIds.includes(id));
  const arrivals = seats.flatMap((seat) =>
    seat.arrivals.filter(({ speaker }) => speaker.startsWith(pair)),
  );
  const losses = arrivals.map(
    ({ bands }) =>
      bands.find(({ frequencyHz }) => frequencyHz === MIDDLE_HZ)?.obstructionDb ?? null,
  );
  const angles = arrivals.map(({ offAxisDeg }) => offAxisDeg);
  const times = arrivals.flatMap(({ reflections: [first] }) => (first ? [first.extraTime] : []));
  const differences = seats.map(
    ({ pairs }) => pairs.find((one) => one.pair === pair)?.difference ?? Number.NaN,
  );
  const largest = (all: readonly (number | null)[]) =>
    all.includes(null) ? null : Math.max(...(all as number[]));
  return {
    measures: {
      difference: Math.max(...differences.map(Math.abs)),
      offAxisDeg: largest(angles),
      obstructionDb: largest(losses),
      firstReflectionTime: times.length > 0 ? Math.min(...times) : null,
    },
    arrivals,
  };
}

/** What the search wants, so turned that smaller is better. */
export function costsOf({ measures }: FoundSpot): number[] {
  return [
    measures.difference ?? Number.NaN,
    measures.offAxisDeg ?? Infinity,
    measures.obstructionDb ?? Infinity,
    measures.firstReflectionTime === null ? -Infinity : -measures.firstReflectionTime,
  ];
}
