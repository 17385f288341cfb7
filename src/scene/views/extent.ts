/** What must be on the sheet. */
import type { CabinModel, Vec3 } from '../../geometry';

export interface Extent {
  /** The cabin and the car's silhouette round it: what an elevation holds. */
  car: readonly Vec3[];
  /** From the toe board to a little behind the front row or the listener: what the free view holds. */
  stage: readonly Vec3[];
  /** Car X just behind them, mm. */
  back: number;
}

/** Room behind a head that still belongs to the stage, mm. By eye. */
const BEHIND_HEAD = 420;

/** Heads no farther apart than this along the car sit in one row, mm. By eye. */
const ONE_ROW = 300;

/**
 * Points the views are fitted to. The stage reaches to the front row, or to the `listener` (a seat's
 * id) where that one sits farther back.
 */
export function extentOf(cabin: CabinModel, listener: string | null = null): Extent {
  const car = cabin.bodyLines.flatMap((line) => [...line.points]);
  const stage: Vec3[] = [];
  // What matters in the free view is the stage and who listens to it, not the boot.
  const rearmost = (xs: readonly number[], none: number) =>
    xs.length > 0 ? Math.max(...xs) : none;
  const tail = rearmost(
    cabin.panels.flatMap((panel) => panel.patch.control.map((p) => p[0])),
    3000,
  );
  const heads = cabin.seats.map(({ head }) => head[0]);
  const back = rearmost(
    heads
      .filter((x, i) => x <= Math.min(...heads) + ONE_ROW || cabin.seats[i]?.id === listener)
      .map((x) => x + BEHIND_HEAD),
    tail,
  );
  const cut = back + 0.15 * Math.max(0, tail - back);
  for (const panel of cabin.panels) {
    car.push(...panel.patch.control);
    stage.push(...panel.patch.control.filter((p) => p[0] <= cut));
  }
  if (car.length === 0) {
    for (const seat of cabin.seats) {
      const [x, y, z] = seat.head;
      car.push([x - 1500, y - 900, z - 1100], [x + 700, y + 900, z + 300]);
    }
  }
  return { car, stage: stage.length > 0 ? stage : car, back };
}
