import type { KeepingStore } from './keeping/keeping-store';
import type { PlanPictures } from './plan-pictures';
import type { PlanStore } from './plan-store';

/**
 * Keeps the pictures to the open plan: those of the plan shown, under the id it is kept by. A plan
 * that is first kept and one opened from the shelf look alike from here (an opening, then an id), so
 * `adopt` serves both.
 * @returns stops doing so
 */
export function followPictures(
  pictures: Pick<PlanPictures, 'show' | 'adopt'>,
  planStore: PlanStore,
  keepingStore: KeepingStore,
): () => void {
  let opened = planStore.getState().openedAs;
  let shown = keepingStore.getState().planId;
  const follow = () => {
    const { openedAs } = planStore.getState();
    const { planId } = keepingStore.getState();
    if (openedAs === opened && planId === shown) return;
    const getsId = openedAs === opened && shown === null && planId !== null;
    [opened, shown] = [openedAs, planId];
    void (getsId ? pictures.adopt(planId) : pictures.show(planId));
  };
  void pictures.show(shown);
  const stops = [planStore.subscribe(follow), keepingStore.subscribe(follow)];
  return () => {
    for (const stop of stops) stop();
  };
}
