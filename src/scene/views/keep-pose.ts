/** Which pose the camera should hold, and when to take it up anew. */
import { Vector3 } from 'three';
import type { CabinModel, Seat, Vec3 } from '../../geometry';
import { planStore, sessionStore, type ViewName } from '../../store';
import { toThree } from '../axes';
import { type Extent, extentOf } from './extent';
import { ballAround } from './fit';
import { poseFor } from './poses';
import type { Rig } from './rig';

export interface PoseKeeper {
  /** Another cabin: measures it. */
  measure(cabin: CabinModel): void;
  /** Fits anew for another car or view; follows the eye of a seat that moved. */
  keep(cabin: CabinModel, seat: Seat | null): void;
  /** Fits anew for another sheet, unless the user has turned the view themselves. */
  refit(): void;
  view(): ViewName;
  /** Car X where the wash begins to run out and where it has: behind the last listener. */
  vignette(): readonly [number, number];
}

const WHOLE = [1e6, 2e6] as const;

export function createPoseKeeper(rig: Rig, size: { width: number; height: number }): PoseKeeper {
  let extent: Extent = { car: [], stage: [], back: 0 };
  let posed = '';
  let view = sessionStore.getState().view;
  let car: CabinModel | null = null;
  let from: Seat | null = null;
  let eye: Vec3 | null = null;

  function pose(travel: boolean): void {
    const aspect = size.width / Math.max(1, size.height);
    const wheelSide = car?.wheelSide ?? 'left';
    const calm = window.matchMedia('(prefers-reduced-motion: reduce)').matches;
    rig.go(view, poseFor(view, { ...extent, aspect, seat: from, wheelSide }), travel && !calm);
    eye = from?.eye ?? null;
  }

  return {
    measure(cabin) {
      extent = extentOf(cabin, from?.id);
      const { middle, radius } = ballAround(extent.car);
      rig.hold(toThree(middle, new Vector3()), radius);
    },
    keep(cabin, seat) {
      car = cabin;
      const another = (seat?.id ?? null) !== (from?.id ?? null);
      from = seat;
      if (another) extent = extentOf(cabin, seat?.id);
      const key = `${planStore.getState().openedAs}|${cabin.template}|${cabin.wheelSide}`;
      const next = sessionStore.getState().view;
      const full = `${key}|${next}|${next === 'seat' ? (seat?.id ?? '') : ''}`;
      if (full !== posed) {
        // From view to view of one car the eye travels; to another car it jumps.
        const sameCar = posed.startsWith(`${key}|`);
        posed = full;
        view = next;
        pose(sameCar);
        return;
      }
      if (another && view === 'free' && rig.untouched()) pose(true);
      if (view !== 'seat' || !seat || !eye || seat.eye === eye) return;
      const by = toThree(seat.eye, new Vector3()).sub(toThree(eye, new Vector3()));
      if (by.lengthSq() > 0) rig.shift(by);
      eye = seat.eye;
    },
    refit() {
      if (car && rig.untouched()) pose(false);
    },
    view: () => view,
    vignette: () => (view === 'free' ? [extent.back - 150, extent.back + 900] : WHOLE),
  };
}
