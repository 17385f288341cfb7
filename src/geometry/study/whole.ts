import type { SeatWeight } from '../input';
import { DEFAULT_SAMPLE_RATE_HZ } from '../stage/evaluate';
import { pairsOf } from '../stage/pairs';
import { type Compromise, compromiseOver } from './compromise';
import { createImageStudy, type SeatImage } from './image';
import { levelsAt, type PairLevels } from './levels';
import { type PocketsStudy, pocketsOf } from './pockets';
import { type PairSensitivity, sensitivityOf } from './sensitivity';
import { type ChannelSettings, channelSettings } from './settings';
import type { Stage } from './stage';
import { type SideSum, sumsAt } from './sums';

export interface SeatStudy {
  id: string;
  levels: PairLevels[];
  /** Without their curves, which a program draws from `sumsAt`. */
  sums: SideSum[];
  image: SeatImage;
  sensitivity: PairSensitivity[];
}

export interface OptionStudy {
  settings: ChannelSettings;
  seats: SeatStudy[];
  /** Over the seats the plan lists; over all, alike, where it lists none. */
  compromise: Compromise | { problem: string };
  pockets: PocketsStudy;
}

/** Every study of one option at every seat: what a page shows one at a time. */
export function studyOption(stage: Stage): OptionStudy {
  const { plan, option, result } = stage;
  const image = createImageStudy();
  return {
    settings: channelSettings(stage),
    seats: result.seats.map(({ id }) => ({
      id,
      levels: levelsAt(stage, id),
      sums: sumsAt(stage, id).map((sum) =>
        sum.result ? { ...sum, result: { ...sum.result, curve: [] } } : sum,
      ),
      image: image(stage, id),
      sensitivity: sensitivityOf(stage, id),
    })),
    compromise: compromiseOver(
      result,
      pairsOf(option.speakers),
      weightsOf(stage),
      plan.alignment?.sampleRateHz ?? DEFAULT_SAMPLE_RATE_HZ,
    ),
    pockets: pocketsOf(stage),
  };
}

/** The seats a compromise is over: those the plan lists, else all of them alike. */
export function weightsOf({ plan, result }: Stage): readonly SeatWeight[] {
  const { seats } = plan.alignment ?? {};
  return seats?.length ? seats : result.seats.map(({ id }) => ({ id, weight: 1 }));
}
