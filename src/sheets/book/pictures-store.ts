import { useStore } from 'zustand';
import { keepingStore, planStore } from '../../store';
import { followPictures } from '../../store/follow-pictures';
import { listPlans } from '../../store/keeping';
import { idbPictureShelf } from '../../store/keeping/picture-shelf';
import { createPlanPictures, type PicturesState } from '../../store/plan-pictures';

export const planPictures = createPlanPictures(
  idbPictureShelf(),
  () => planStore.getState().readOnly !== null,
);

if (typeof indexedDB !== 'undefined') {
  followPictures(planPictures, planStore, keepingStore);
  void listPlans()
    .then((plans) => planPictures.tidy(plans.map((plan) => plan.planId)))
    // A browser that keeps nothing has nothing to tidy.
    .catch(() => undefined);
}

export function usePictures<T>(select: (state: PicturesState) => T): T {
  return useStore(planPictures, select);
}
