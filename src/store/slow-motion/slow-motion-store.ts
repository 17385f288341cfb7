/**
 * The clock of the slow motion: what is shown now, and the hand that moves it. Kept apart from the
 * session, since while it plays it changes with every frame: whoever draws follows it by
 * `subscribe`, and no component is rendered for it.
 */
import { createStore } from 'zustand/vanilla';
import type { MotionDelays } from '../../geometry';

export interface SlowMotionState {
  /** True while it is looked at: the waves are drawn in the car too. */
  open: boolean;
  delays: MotionDelays;
  /** Since the first channel's signal, ms of sound. */
  time: number;
  /** Where it ends, ms of sound. */
  end: number;
  playing: boolean;
}

/** So many times slower than sound is: a millisecond of sound takes a second to watch. */
export const SLOWER = 1000;

/** One step, ms of sound. */
export const STEP = 0.1;

/** What the clock goes by; in tests a hand-turned one. */
export interface Beat {
  /** ms of watching, from any beginning. */
  now(): number;
  /** Calls back once, when the next picture is drawn. */
  nextFrame(act: () => void): number;
  cancel(frame: number): void;
}

/** Steps are counted, not added up: 0.1 + 0.2 is not 0.3. A time within this of a step is on it. */
const ON_STEP = 1e-6;

export function createSlowMotionStore({ now, nextFrame, cancel }: Beat) {
  const store = createStore<SlowMotionState>(() => ({
    open: false,
    delays: 'none',
    time: 0,
    end: 0,
    playing: false,
  }));
  const { getState, setState } = store;
  /** From which times it has been running. */
  let from = { watched: 0, time: 0 };
  let frame = 0;

  const within = (time: number): number => Math.min(Math.max(time, 0), getState().end);

  function run(): void {
    const { end } = getState();
    const time = within(from.time + (now() - from.watched) / SLOWER);
    if (time < end) frame = nextFrame(run);
    setState({ time, playing: time < end });
  }

  function halt(): void {
    if (!getState().playing) return;
    cancel(frame);
    setState({ playing: false });
  }

  function start(): void {
    from = { watched: now(), time: getState().time };
    frame = nextFrame(run);
  }

  return {
    ...store,
    /** From where it stands; from the beginning where it stands at the end. */
    play(): void {
      const { playing, time, end } = getState();
      if (playing || end <= 0) return;
      setState({ playing: true, time: time >= end ? 0 : time });
      start();
    },
    pause: halt,
    /** Stands still at `time`. */
    goTo(time: number): void {
      halt();
      setState({ time: within(time) });
    },
    /** By whole steps of {@link STEP}, from one full step to another; stands still there. */
    step(count: number): void {
      const at = getState().time / STEP;
      const whole = count > 0 ? Math.floor(at + ON_STEP) : Math.ceil(at - ON_STEP);
      this.goTo((whole + count) / Math.round(1 / STEP));
    },
    /** What is looked at has changed: another end, another moment to stop at. */
    endAt(end: number): void {
      if (end === getState().end) return;
      setState({ end, time: Math.min(getState().time, end) });
      if (getState().playing && getState().time >= end) halt();
    },
    /** With the same moment on the clock: what differs is what the eye compares. */
    delayBy(delays: MotionDelays): void {
      if (delays !== getState().delays) setState({ delays });
    },
    open(): void {
      setState({ open: true });
    },
    close(): void {
      halt();
      setState({ open: false, time: 0 });
    },
  };
}

export type SlowMotionStore = ReturnType<typeof createSlowMotionStore>;
