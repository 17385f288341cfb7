import { useStore } from 'zustand';
import { keepingStore, planStore } from '../../store';
import { listPlans } from '../../store/keeping';
import { idbPictureShelf } from '../../store/keeping/picture-shelf';
import { createPlanPictures, type PicturesState } from '../../store/plan-pictures';

export const planPictures = createPlanPictures(idbPictureShelf());

let opened = planStore.getState().openedAs;
let shown = keepingStore.getState().planId;

/** Follows which plan is open, and under which id it is kept. */
function follow(): void {
  const { openedAs } = planStore.getState();
  const { planId } = keepingStore.getState();
  if (openedAs === opened && planId === shown) return;
  const firstKept = openedAs === opened && shown === null && planId !== null;
  [opened, shown] = [openedAs, planId];
  void (firstKept ? planPictures.adopt(planId) : planPictures.show(planId));
}

if (typeof indexedDB !== 'undefined') {
  void planPictures.show(shown);
  planStore.subscribe(follow);
  keepingStore.subscribe(follow);
  void listPlans()
    .then((plans) => planPictures.tidy(plans.map((plan) => plan.planId)))
    // A browser that keeps nothing has nothing to tidy.
    .catch(() => undefined);
}

export function usePictures<T>(select: (state: PicturesState) => T): T {
  return useStore(planPictures, select);
}
