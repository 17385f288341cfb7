import { useCallback, useEffect, useRef, useState } from 'react';
import type { DimensionRank } from '../../geometry';
import type { Plan } from '../../plan/types';
import { type Asked, type EngineClient, openEngine } from '../../worker';

export type Ranking =
  | { kind: 'working'; done: number; total: number; slow: boolean }
  | { kind: 'ranked'; ranks: readonly DimensionRank[] }
  | { kind: 'stopped' }
  | { kind: 'failed'; message: string };

/** Work that takes longer shows how far it is, ms. */
const SLOW = 200;

let engine: EngineClient | null = null;

/** Ranks the dimensions of a plan in the worker; a plan changed or let go stops the work. */
export function useRanking(plan: Plan): { ranking: Ranking; stop: () => void; again: () => void } {
  const [ranking, setRanking] = useState<Ranking>(START);
  const [round, setRound] = useState(0);
  const asked = useRef<Asked<unknown> | null>(null);

  // biome-ignore lint/correctness/useExhaustiveDependencies: a new round asks the same again
  useEffect(() => {
    let current = true;
    const show = (next: Ranking | ((before: Ranking) => Ranking)) => current && setRanking(next);
    show(START);
    engine ??= openEngine();
    const question = engine.rankDimensions(plan, {}, ({ done, total }) =>
      show((before) => (before.kind === 'working' ? { ...before, done, total } : before)),
    );
    asked.current = question;
    const timer = setTimeout(
      () => show((before) => (before.kind === 'working' ? { ...before, slow: true } : before)),
      SLOW,
    );
    question.outcome.then(
      (outcome) => {
        if (outcome.kind !== 'answer') show({ kind: 'stopped' });
        else if (outcome.value.ok) show({ kind: 'ranked', ranks: outcome.value.ranks });
        else show({ kind: 'failed', message: outcome.value.error.message });
      },
      (error: Error) => {
        // A worker that will not start may start next time.
        engine = null;
        show({ kind: 'failed', message: error.message });
      },
    );
    return () => {
      current = false;
      clearTimeout(timer);
      question.cancel();
    };
  }, [plan, round]);

  return {
    ranking,
    stop: useCallback(() => asked.current?.cancel(), []),
    again: useCallback(() => setRound((n) => n + 1), []),
  };
}

const START: Ranking = { kind: 'working', done: 0, total: 1, slow: false };
