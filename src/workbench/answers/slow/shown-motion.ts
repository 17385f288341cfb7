import { useMemo } from 'react';
import {
  type CarFromAbove,
  carFromAbove,
  type MotionDelays,
  type PlanWindow,
  type Seat,
  type SlowMotion,
  type Stage,
  slowMotion,
  windowOf,
} from '../../../geometry';
import { optionTitle } from '../../../plan/edits';
import type { PlanOption } from '../../../plan/types';

/** One option in slow motion, at the seat looked at. */
export interface ShownMotion {
  stage: Stage;
  title: string;
  seat: Seat;
  car: CarFromAbove;
  /** With the delays chosen, and both ways. */
  motion: SlowMotion;
  both: Readonly<Record<MotionDelays, SlowMotion>>;
}

export interface Shown {
  /** The option on the board, and the one beside it if there is one. */
  options: readonly ShownMotion[];
  /** One part of the car for all of them. */
  window: PlanWindow;
  /** When the last sound of all of them has arrived, ms. */
  end: number;
}

/** `null` where the seat is not in the plan. */
export function shownMotions(
  stages: readonly Stage[],
  seatId: string,
  delays: MotionDelays,
): Shown | null {
  const options = stages.flatMap((stage): ShownMotion[] => {
    const seat = stage.cabin.seats.find(({ id }) => id === seatId);
    if (!seat) return [];
    const both = {
      none: slowMotion(stage, seatId, 'none'),
      aligned: slowMotion(stage, seatId, 'aligned'),
    };
    const car = carFromAbove(stage.cabin, seat.head[2]);
    const title = optionTitle(stage.option as PlanOption);
    return [{ stage, title, seat, car, both, motion: both[delays] }];
  });
  const [first] = options;
  if (!first) return null;
  const motions = options.flatMap(({ both }) => Object.values(both));
  return {
    options,
    window: windowOf(first.car, first.seat, motions),
    end: Math.max(...options.map(({ motion }) => motion.end)),
  };
}

export function useShownMotions(
  stages: readonly (Stage | null)[],
  seat: string,
  delays: MotionDelays,
): Shown | null {
  const [first = null, second = null] = stages;
  return useMemo(
    () =>
      shownMotions(
        [first, second].filter((one) => one !== null),
        seat,
        delays,
      ),
    [first, second, seat, delays],
  );
}
