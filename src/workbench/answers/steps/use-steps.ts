import { useEffect, useRef, useState } from 'react';

export interface Progress {
  done: number;
  total: number;
}

export type Work<T> =
  | { state: 'working'; progress: Progress | null }
  | { state: 'stopped' }
  | { state: 'done'; value: T };

/** Sooner than this nothing is said of progress, ms. */
const PATIENCE = 200;

/**
 * Works through a generator one step at a time, letting the page breathe in between. A new `start`
 * (or `again`) drops what is under way. Progress is told only once it has taken long.
 */
export function useSteps<T>(start: (() => Generator<Progress, T>) | null): {
  work: Work<T>;
  stop: () => void;
  again: () => void;
} {
  const [kept, keep] = useState<{ of: unknown; work: Work<T> } | null>(null);
  const [round, setRound] = useState(0);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new round is the same work once more
  useEffect(() => {
    if (!start) return;
    const steps = start();
    const begun = performance.now();
    const tell = (work: Work<T>) => keep({ of: start, work });
    const next = () => {
      const step = steps.next();
      if (step.done) {
        tell({ state: 'done', value: step.value });
        return;
      }
      if (performance.now() - begun > PATIENCE) tell({ state: 'working', progress: step.value });
      timer.current = setTimeout(next);
    };
    timer.current = setTimeout(next);
    return () => clearTimeout(timer.current);
  }, [start, round]);

  const work: Work<T> =
    kept && kept.of === start ? kept.work : { state: 'working', progress: null };
  return {
    work,
    stop: () => {
      clearTimeout(timer.current);
      keep({ of: start, work: { state: 'stopped' } });
    },
    again: () => {
      keep(null);
      setRound(round + 1);
    },
  };
}
