import { proxy, type Remote, wrap } from 'comlink';
import type { EvaluateAnswer, PlanInput, RankAnswer, RankSettings } from '../geometry';
import type { EngineService, OnProgress, Outcome, Served } from './protocol';
import { createEngineService } from './service';

/** A question that has been asked. */
export interface Asked<T> {
  outcome: Promise<Outcome<T>>;
  /** Takes the question back; its outcome is then `cancelled`. */
  cancel(): void;
}

/** The engine behind a worker. Asking again supersedes the earlier question of the same kind. */
export interface EngineClient {
  evaluate(plan: PlanInput): Asked<EvaluateAnswer>;
  rankDimensions(
    plan: PlanInput,
    settings?: RankSettings,
    onProgress?: OnProgress,
  ): Asked<RankAnswer>;
  /** Puts open and later questions to another service: the first one is gone. */
  moveTo(service: EngineService): void;
}

type Kind = 'evaluate' | 'rankDimensions';

interface Open {
  request: number;
  finish(outcome: { kind: 'superseded' } | { kind: 'cancelled' }): void;
  send(): void;
}

/** A client of a service on the other side of a message port or worker, or of one right here. */
export function createEngineClient(first: EngineService | Remote<EngineService>): EngineClient {
  const open = new Map<Kind, Open>();
  let service = first;
  let last = 0;

  function ask<T>(kind: Kind, put: (request: number) => Promise<Served<T>>): Asked<T> {
    drop(kind, 'superseded');
    last += 1;
    const request = last;
    const isOpen = () => open.get(kind)?.request === request;
    const outcome = new Promise<Outcome<T>>((resolve, reject) => {
      const send = () => {
        // A late answer settles nothing: the promise was settled when the question was dropped.
        put(request).then(
          (served) => {
            if (isOpen()) open.delete(kind);
            resolve(
              served.stopped ? { kind: 'cancelled' } : { kind: 'answer', value: served.value },
            );
          },
          (reason: unknown) => {
            if (isOpen()) open.delete(kind);
            reject(reason);
          },
        );
      };
      open.set(kind, { request, finish: resolve, send });
      send();
    });
    return {
      outcome,
      cancel() {
        if (isOpen()) drop(kind, 'cancelled');
      },
    };
  }

  function drop(kind: Kind, why: 'superseded' | 'cancelled'): void {
    const dropped = open.get(kind);
    if (!dropped) return;
    open.delete(kind);
    dropped.finish({ kind: why });
    void service.cancel(dropped.request);
  }

  return {
    evaluate: (plan) => ask('evaluate', (request) => service.evaluate(request, plan)),
    rankDimensions(plan, settings = {}, onProgress) {
      let asked: number | null = null;
      const heard = onProgress
        ? proxy<OnProgress>((progress) => {
            if (open.get('rankDimensions')?.request === asked) onProgress(progress);
          })
        : null;
      return ask('rankDimensions', (request) => {
        asked = request;
        return service.rankDimensions(request, plan, settings, heard);
      });
    },
    moveTo(next) {
      service = next;
      for (const question of open.values()) question.send();
    },
  };
}

/**
 * The page's engine: in a worker, or in the page itself where no worker can be had (a page opened
 * from a file, a worker that will not load).
 */
export function openEngine(): EngineClient {
  try {
    const worker = new Worker(new URL('./engine.worker.ts', import.meta.url), { type: 'module' });
    const client = createEngineClient(wrap<EngineService>(worker));
    worker.addEventListener('error', () => {
      worker.terminate();
      client.moveTo(createEngineService());
    });
    return client;
  } catch {
    return createEngineClient(createEngineService());
  }
}
