/** The page's one slow motion, and how components follow it. */
import { useEffect } from 'react';
import { useStore } from 'zustand';
import { createSlowMotionStore, type SlowMotionState } from './slow-motion-store';

export { SLOWER, type SlowMotionState, STEP } from './slow-motion-store';

export const slowMotionStore = createSlowMotionStore({
  now: () => performance.now(),
  nextFrame: (act) => requestAnimationFrame(act),
  cancel: (frame) => cancelAnimationFrame(frame),
});

/** Reads the slow motion; select what changes seldom, or a component is rendered for every frame. */
export function useSlowMotion<T>(select: (state: SlowMotionState) => T): T {
  return useStore(slowMotionStore, select);
}

/** Calls `draw` now, and whenever the clock has moved; for what is changed in place. */
export function useEachMoment(draw: (time: number) => void): void {
  useEffect(() => {
    let last = Number.NaN;
    const follow = ({ time }: SlowMotionState) => {
      if (time === last) return;
      last = time;
      draw(time);
    };
    follow(slowMotionStore.getState());
    return slowMotionStore.subscribe(follow);
  }, [draw]);
}
