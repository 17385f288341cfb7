/** How the whole stage holds together at one seat: the sums at hand-overs, and the image. */
import type { Side } from '../input';
import type { ImageBand } from '../sound/image';
import type { SeatImage } from '../study/image';
import type { Stage } from '../study/stage';
import { type SideSum, sumsAt } from '../study/sums';
import { whoIn } from './groups';
import { measureOf, type Value, type Who } from './measure';
import type { Put } from './measure-seat';

/** Octaves that tell where a stage stands, Hz: a choice of ours. */
export const IMAGE_TOLD_HZ = [250, 4000] as const;

/** Half an octave to either side of a hand-over is the octave that counts. */
const HALF_OCTAVE = Math.SQRT2;

export function measureStage(
  stage: Stage,
  seat: string,
  imageAt: (stage: Stage, seat: string) => SeatImage,
  put: Put,
): void {
  measureCrossings(stage, seat, put);
  const image = imageAt(stage, seat);
  const told = image.on.filter(
    ({ frequencyHz }) => frequencyHz >= IMAGE_TOLD_HZ[0] && frequencyHz <= IMAGE_TOLD_HZ[1],
  );
  const angles = told.flatMap(({ lateralDeg }) => (lateralDeg === null ? [] : [lateralDeg]));
  const reason = told.find((band) => band.reason)?.reason ?? 'no octave has an angle';
  const atLimit = told.some((band) => band.atLimit) && { atLimit: true as const };
  put(
    measureOf('imageDeg', seat),
    angles.length === 0
      ? { value: null, reason }
      : { value: angles.reduce((sum, one) => sum + one, 0) / angles.length, ...atLimit },
  );
  put(
    measureOf('imageSpreadDeg', seat),
    angles.length < 2
      ? { value: null, reason: angles.length === 0 ? reason : 'only one octave has an angle' }
      : { value: Math.max(...angles) - Math.min(...angles), ...atLimit },
  );
  for (const band of image.on)
    put(measureOf('imageOctaveDeg', seat, { octaveHz: band.frequencyHz }), octave(band));
}

const octave = ({ lateralDeg, atLimit, reason }: ImageBand): Value => ({
  value: lateralDeg,
  ...(atLimit && { atLimit }),
  ...(reason !== undefined && { reason }),
});

/** The worse side of each hand-over: the level at it, and the deepest dip in its octave. */
function measureCrossings(stage: Stage, seat: string, put: Put): void {
  const whoOf = new Map(
    whoIn(stage.option.speakers).flatMap(({ pair, who }) =>
      pair === null ? [] : [[pair, who] as const],
    ),
  );
  const sums = sumsAt(stage, seat);
  const done = new Set<SideSum['crossing']>();
  for (const { crossing } of sums) {
    const below = whoOf.get(crossing.crossover.below);
    const above = whoOf.get(crossing.crossover.above);
    if (done.has(crossing) || !below || !above) continue;
    done.add(crossing);
    const both = sums.filter((sum) => sum.crossing === crossing);
    tellCrossing(both, { below, above }, seat, put);
  }
}

function tellCrossing(
  both: readonly SideSum[],
  crossing: { below: Who; above: Who },
  seat: string,
  put: Put,
): void {
  const at: { value: number; side: Side }[] = [];
  const dips: { value: number; side: Side }[] = [];
  const unknown = both.find(({ result }) => !result);
  for (const { side, result, crossing: of } of both) {
    if (!result) continue;
    const centre = of.crossover.frequencyHz;
    at.push({ value: result.atCrossover.deviationDb, side });
    const octaveDb = result.curve
      .filter(
        ({ frequencyHz }) =>
          frequencyHz >= centre / HALF_OCTAVE && frequencyHz <= centre * HALF_OCTAVE,
      )
      .map(({ deviationDb }) => deviationDb);
    const nulls = result.nulls
      .filter(
        ({ frequencyHz }) =>
          frequencyHz >= centre / HALF_OCTAVE && frequencyHz <= centre * HALF_OCTAVE,
      )
      .map(({ deviationDb }) => deviationDb);
    dips.push({ value: Math.min(0, ...octaveDb, ...nulls), side });
  }
  const reason = unknown?.reasons?.[0] ?? 'no sum is known';
  const [farthest] = at.sort((a, b) => Math.abs(b.value) - Math.abs(a.value));
  const [deepest] = dips.sort((a, b) => a.value - b.value);
  const whole = both.length > 0 && !unknown;
  put(
    measureOf('crossoverDb', seat, { crossing }),
    whole && farthest ? farthest : { value: null, reason },
  );
  put(
    measureOf('crossoverDipDb', seat, { crossing }),
    whole && deepest ? deepest : { value: null, reason },
  );
}
