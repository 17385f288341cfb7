/** What must be on the sheet. */
import type { CabinModel, Vec3 } from '../../geometry';

export interface Extent {
  /** The cabin and the car's silhouette round it: what an elevation holds. */
  car: readonly Vec3[];
  /** From the toe board to a little behind the last listener: what the free view holds. */
  stage: readonly Vec3[];
  /** Car X just behind the last listener, mm. */
  back: number;
}

/** Room behind the last head that still belongs to the stage, mm. By eye. */
const BEHIND_HEAD = 420;

/** Points the views are fitted to. */
export function extentOf(cabin: CabinModel): Extent {
  const car = cabin.bodyLines.flatMap((line) => [...line.points]);
  const stage: Vec3[] = [];
  // What matters in the free view is the stage and who listens to it, not the boot.
  const rearmost = (xs: readonly number[], none: number) =>
    xs.length > 0 ? Math.max(...xs) : none;
  const tail = rearmost(
    cabin.panels.flatMap((panel) => panel.patch.control.map((p) => p[0])),
    3000,
  );
  const back = rearmost(
    cabin.seats.map(({ head }) => head[0] + BEHIND_HEAD),
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
