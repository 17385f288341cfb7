import { releaseProxy } from 'comlink';
import {
  createEvaluator,
  finishSearchInSteps,
  finishStageInSteps,
  hearGridInSteps,
  hearStageInSteps,
  joinShares,
  joinStageShares,
  mapInSteps,
  prepareSearch,
  prepareStage,
  rankDimensionsInSteps,
} from '../geometry';
import type { EngineService, HeardAnswer, Served, StageHeardAnswer } from './protocol';

/** At most this long the worker works without looking for messages, ms: a cancel is felt at once. */
const TURN = 12;

/** A map so far is shown this seldom, ms: each time all of it is sent. */
const SHOWN_EVERY = 120;

/**
 * Lets go of a callback that came from another thread: the port behind it would stay open on both
 * sides until the collector happens to find it. One of this thread is only forgotten.
 */
function release(callback: unknown): void {
  (callback as { [releaseProxy]?: () => void } | null)?.[releaseProxy]?.();
}

/**
 * Lets waiting messages in: a message to itself comes behind those. A timer would do, but browsers
 * make it wait 4 ms after each turn, a quarter of the time.
 */
function nextTurn(): Promise<void> {
  return new Promise((resume) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resume();
    };
    port2.postMessage(null);
  });
}

/**
 * The engine as a service: the same functions the page calls directly, in turns short enough that
 * a cancel gets through. Knows nothing of workers, so it runs in one, in Node or in the page.
 */
export function createEngineService(): EngineService {
  const evaluator = createEvaluator();
  const cancelled = new Set<number>();
  /** Requests are numbered upward; a cancel for an answered one must not be kept for ever. */
  const open = new Set<number>();

  /**
   * @param callback the page's, let go of at the end
   * @param onTurn hears the latest step before messages are let in
   */
  async function serve<T, P>(
    request: number,
    work: () => Generator<P, T>,
    callback: unknown = null,
    onTurn?: (latest: P) => void,
  ): Promise<Served<T>> {
    open.add(request);
    try {
      // A cancel sent right behind the request is seen before any work is done for it.
      await nextTurn();
      const steps = work();
      let since = performance.now();
      for (;;) {
        if (cancelled.has(request)) return { stopped: true };
        const step = steps.next();
        if (step.done) return { stopped: false, value: step.value };
        if (performance.now() - since < TURN) continue;
        onTurn?.(step.value);
        await nextTurn();
        since = performance.now();
      }
    } finally {
      open.delete(request);
      cancelled.delete(request);
      release(callback);
    }
  }

  return {
    evaluate: (request, plan) =>
      serve(request, function* () {
        yield;
        return evaluator(plan);
      }),
    rankDimensions: (request, plan, settings, onProgress) =>
      serve(
        request,
        function* () {
          const steps = rankDimensionsInSteps(plan, settings);
          for (;;) {
            const step = steps.next();
            if (step.done) return step.value;
            onProgress?.(step.value);
            yield;
          }
        },
        onProgress,
      ),
    map(request, plan, asked, share, onProgress) {
      let shown = performance.now();
      return serve(
        request,
        () => mapInSteps(plan, asked, share),
        onProgress,
        (progress) => {
          if (!onProgress || performance.now() - shown < SHOWN_EVERY) return;
          onProgress(progress);
          shown = performance.now();
        },
      );
    },
    hearGrid: (request, plan, asked, share, onProgress) =>
      serve(
        request,
        function* () {
          const prepared = prepareSearch(plan, asked);
          if (!prepared.ok) return prepared;
          const heard = yield* hearGridInSteps(prepared.ready, share);
          return { ok: true, heard } satisfies HeardAnswer;
        },
        onProgress,
        (progress) => onProgress?.(progress),
      ),
    finishSearch: (request, plan, asked, shares, onProgress) =>
      serve(
        request,
        function* () {
          const prepared = prepareSearch(plan, asked);
          if (!prepared.ok) return prepared;
          const answer = yield* finishSearchInSteps(prepared.ready, joinShares(shares));
          return { ok: true as const, answer };
        },
        onProgress,
        (progress) => onProgress?.(progress),
      ),
    hearStage: (request, plan, asked, share, onProgress) =>
      serve(
        request,
        function* () {
          const prepared = prepareStage(plan, asked);
          if (!prepared.ok) return prepared;
          const heard = yield* hearStageInSteps(prepared.ready, share);
          return { ok: true, heard } satisfies StageHeardAnswer;
        },
        onProgress,
        (progress) => onProgress?.(progress),
      ),
    finishStage: (request, plan, asked, shares, onProgress) =>
      serve(
        request,
        function* () {
          const prepared = prepareStage(plan, asked);
          if (!prepared.ok) return prepared;
          const answer = yield* finishStageInSteps(prepared.ready, joinStageShares(shares));
          return { ok: true as const, answer };
        },
        onProgress,
        (progress) => onProgress?.(progress),
      ),
    cancel(request) {
      if (open.has(request)) cancelled.add(request);
    },
  };
}
