import { describe, expect, it } from 'vitest';
import { createSlowMotionStore } from '../../src/store/slow-motion/slow-motion-store';

/** A clock turned by hand: every `watch` is one frame later. */
function made(end = 4) {
  let now = 5000;
  let due: (() => void) | null = null;
  let frames = 0;
  const store = createSlowMotionStore({
    now: () => now,
    nextFrame(act) {
      due = act;
      return ++frames;
    },
    cancel: () => {
      due = null;
    },
  });
  store.endAt(end);
  return {
    store,
    watch(ms: number) {
      now += ms;
      const act = due;
      due = null;
      act?.();
    },
    waiting: () => due !== null,
    time: () => store.getState().time,
    playing: () => store.getState().playing,
  };
}

describe('the clock of the slow motion', () => {
  it('takes a second of watching for a millisecond of sound, however frames fall', () => {
    const { store, watch, time } = made();
    store.play();
    watch(16);
    expect(Math.abs(time() - 0.016)).toBeLessThan(1e-9);
    watch(484);
    expect(Math.abs(time() - 0.5)).toBeLessThan(1e-9);
    // A slow machine draws seldom, and its clock is not late for it.
    watch(2600);
    expect(Math.abs(time() - 3.1)).toBeLessThan(1e-9);
  });

  it('stops at the end by itself and asks for no frame after it', () => {
    const { store, watch, time, playing, waiting } = made();
    store.play();
    watch(3999);
    expect(playing()).toBe(true);
    watch(500);
    expect([time(), playing(), waiting()]).toEqual([4, false, false]);
  });

  it('stands where it is paused, goes on from there, and begins anew at the end', () => {
    const { store, watch, time, playing, waiting } = made();
    store.play();
    watch(1500);
    store.pause();
    expect([playing(), waiting()]).toEqual([false, false]);
    watch(9000);
    expect(Math.abs(time() - 1.5)).toBeLessThan(1e-9);
    store.play();
    watch(250);
    expect(Math.abs(time() - 1.75)).toBeLessThan(1e-9);
    store.goTo(4);
    store.play();
    expect([time(), playing()]).toEqual([0, true]);
  });

  it('does not move before it is told to, nor with nothing to show', () => {
    const { store, watch, time, playing } = made(0);
    store.open();
    watch(1000);
    store.play();
    watch(1000);
    expect([time(), playing()]).toEqual([0, false]);
  });

  it('steps from one tenth to the next, whatever lies between, and never beyond the ends', () => {
    const { store, time } = made(0.35);
    const times: number[] = [];
    for (let i = 0; i < 5; i++) {
      store.step(1);
      times.push(time());
    }
    expect(times).toEqual([0.1, 0.2, 0.3, 0.35, 0.35]);
    store.step(-1);
    expect(time()).toBe(0.3);
    store.goTo(0.234);
    store.step(-1);
    expect(time()).toBe(0.2);
    store.step(-10);
    expect(time()).toBe(0);
    store.goTo(0.234);
    store.step(1);
    expect(time()).toBe(0.3);
  });

  it('stands still after a step made while it played', () => {
    const { store, watch, time, playing } = made();
    store.play();
    watch(1234);
    store.step(1);
    watch(500);
    expect([time(), playing()]).toEqual([1.3, false]);
  });

  it('keeps its moment when delays or the end change, and is not left beyond the end', () => {
    const { store, time } = made();
    store.goTo(3);
    store.delayBy('aligned');
    store.endAt(5);
    expect(time()).toBe(3);
    store.endAt(2);
    expect(time()).toBe(2);
  });

  it('goes on to the new end where that changes while it plays', () => {
    const { store, watch, time, playing } = made();
    store.play();
    watch(3000);
    store.endAt(5);
    watch(1500);
    expect([time(), playing()]).toEqual([4.5, true]);
    store.endAt(4);
    expect([time(), playing()]).toEqual([4, false]);
  });

  it('is at the beginning again, and still, once it has been closed', () => {
    const { store, watch, time, playing } = made();
    store.open();
    store.play();
    watch(1000);
    store.close();
    watch(1000);
    expect([time(), playing(), store.getState().open]).toEqual([0, false, false]);
  });
});
