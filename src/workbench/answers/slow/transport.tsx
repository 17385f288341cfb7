import { useCallback, useRef } from 'react';
import type { SlowMotion } from '../../../geometry';
import { formatNumber } from '../../../plan/units';
import { slowMotionStore, useEachMoment, useSlowMotion } from '../../../store/slow-motion';
import { nextArrival } from './slow-words';

/** Goes to the next arrival, or from the last one back to the start; stands still there. */
export function toNextArrival(motions: readonly SlowMotion[]): void {
  slowMotionStore.goTo(nextArrival(motions, slowMotionStore.getState().time) ?? 0);
}

export function playOrPause(): void {
  if (slowMotionStore.getState().playing) slowMotionStore.pause();
  else slowMotionStore.play();
}

interface TransportProps {
  motions: readonly SlowMotion[];
  /** The system asks for less motion: nothing invites to play. */
  calm: boolean;
}

/** Play and stop, and step by step. */
export function Transport({ motions, calm }: TransportProps) {
  const playing = useSlowMotion((state) => state.playing);
  const end = useSlowMotion((state) => state.end);
  const atStart = useSlowMotion(({ time }) => time <= 0);
  const atEnd = useSlowMotion(({ time, end }) => time >= end);
  return (
    <div className="slow-transport">
      <button
        type="button"
        className={calm ? undefined : 'primary'}
        disabled={end <= 0}
        onClick={playOrPause}
      >
        <Sign d={playing ? 'M2 1h4v12H2zM9 1h4v12H9z' : 'M2 0l12 7-12 7z'} />
        {playing ? 'Pause' : calm ? 'Play all the same' : 'Play'}
      </button>
      <button
        type="button"
        aria-label="Back to the start"
        title="Back to the start"
        disabled={atStart}
        onClick={() => slowMotionStore.goTo(0)}
      >
        <Sign d="M1 1h2.5v12H1zM14 1v12L4 7z" />
      </button>
      <button
        type="button"
        aria-label="0.1 ms back"
        title="0.1 ms back"
        disabled={atStart}
        onClick={() => slowMotionStore.step(-1)}
      >
        <Sign d="M10 1v12L2 7z" />
      </button>
      <button
        type="button"
        aria-label="0.1 ms on"
        title="0.1 ms on"
        disabled={atEnd}
        onClick={() => slowMotionStore.step(1)}
      >
        <Sign d="M4 1l8 6-8 6z" />
      </button>
      <button
        type="button"
        className={calm ? 'primary' : undefined}
        disabled={end <= 0}
        onClick={() => toNextArrival(motions)}
      >
        Next arrival
      </button>
    </div>
  );
}

const Sign = ({ d }: { d: string }) => (
  <svg width="14" height="14" viewBox="0 0 15 14" aria-hidden="true">
    <path d={d} fill="currentColor" />
  </svg>
);

/** Changed in place: many times a second while it plays. */
export function Clock() {
  const digits = useRef<HTMLSpanElement>(null);
  const draw = useCallback((time: number) => {
    if (digits.current) digits.current.textContent = formatNumber(time, 2);
  }, []);
  useEachMoment(draw);
  return (
    <p className="slow-clock">
      <span className="unseen">The clock: </span>
      <span ref={digits} data-clock="">
        0.00
      </span>{' '}
      ms <span className="slow-slower">1 ms takes a second to watch</span>
    </p>
  );
}
