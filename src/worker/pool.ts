import { proxy, type Remote, wrap } from 'comlink';
import {
  joinMaps,
  type MapAnswer,
  type MapProgress,
  type MapRequest,
  type PlanInput,
  type SearchProgress,
  type SearchRequest,
  type SearchResult,
} from '../geometry';
import type { Asked } from './client';
import type { EngineService, OnMapProgress, OnSearchProgress, Outcome, Served } from './protocol';
import { createEngineService } from './service';

type Service = EngineService | Remote<EngineService>;

/**
 * Maps and searches over all cores: the spots are dealt out to several workers and put together
 * again. Asking again supersedes the earlier question of the same kind.
 */
export interface EnginePool {
  map(plan: PlanInput, request: MapRequest, onProgress?: OnMapProgress): Asked<MapAnswer>;
  search(
    plan: PlanInput,
    request: SearchRequest,
    onProgress?: OnSearchProgress,
  ): Asked<SearchResult>;
  /** Another service in the place of one that is gone; what it had to do is put to the new one. */
  replace(index: number, service: Service): void;
}

type Kind = 'map' | 'search';

interface Task {
  slot: number;
  request: number;
  send(): void;
}

interface Open {
  tasks: Set<Task>;
  finish(outcome: { kind: 'superseded' } | { kind: 'cancelled' }): void;
}

/** @param first one service for each share of the work, one at least */
export function createEnginePool(first: readonly Service[]): EnginePool {
  if (first.length === 0) throw new RangeError('createEnginePool: expected a service, got none');
  const services = [...first];
  const open = new Map<Kind, Open>();
  let last = 0;

  function drop(kind: Kind, why: 'superseded' | 'cancelled'): void {
    const dropped = open.get(kind);
    if (!dropped) return;
    open.delete(kind);
    for (const { slot, request } of dropped.tasks) void services[slot]?.cancel(request);
    dropped.finish({ kind: why });
  }

  /** `work` asks its shares by `put`; whatever it does after the question was dropped is in vain. */
  function ask<T>(
    kind: Kind,
    work: (put: Put, isOpen: () => boolean) => Promise<Served<T>>,
  ): Asked<T> {
    drop(kind, 'superseded');
    const tasks = new Set<Task>();
    let mine: Open | null = null;
    const isOpen = () => mine !== null && open.get(kind) === mine;
    const outcome = new Promise<Outcome<T>>((resolve, reject) => {
      mine = { tasks, finish: resolve };
      open.set(kind, mine);
      const put: Put = (slot, go) =>
        new Promise((answer, fail) => {
          const send = () => {
            last += 1;
            task.request = last;
            const service = services[slot] as Service;
            const ended = (then: () => void) => () => {
              // A service that was replaced meanwhile may still answer: too late.
              if (services[slot] !== service) return;
              tasks.delete(task);
              then();
            };
            go(service, task.request).then(
              (served) => ended(() => answer(served))(),
              (reason: unknown) => ended(() => fail(reason))(),
            );
          };
          const task: Task = { slot, request: 0, send };
          tasks.add(task);
          send();
        });
      const close = () => {
        if (isOpen()) open.delete(kind);
      };
      work(put, isOpen).then(
        (served) => {
          close();
          resolve(served.stopped ? { kind: 'cancelled' } : { kind: 'answer', value: served.value });
        },
        (reason: unknown) => {
          close();
          reject(reason);
        },
      );
    });
    return {
      outcome,
      cancel() {
        if (isOpen()) drop(kind, 'cancelled');
      },
    };
  }

  const shares = () => services.map((_, index) => ({ index, of: services.length }));

  return {
    map: (plan, request, onProgress) =>
      ask('map', async (put, isOpen) => {
        const latest: (MapProgress | undefined)[] = services.map(() => undefined);
        const answers = await Promise.all(
          shares().map((share) =>
            put(share.index, (service, number) => {
              const heard = onProgress
                ? proxy<OnMapProgress>((progress) => {
                    latest[share.index] = progress;
                    const known = latest.filter((one) => one !== undefined);
                    if (isOpen())
                      onProgress({ ...sumOf(known), map: joinMaps(known.map(({ map }) => map)) });
                  })
                : null;
              return service.map(number, plan, request, share, heard);
            }),
          ),
        );
        return joined(answers, (maps: MapAnswer[]) => {
          const bad = maps.find((one) => !one.ok);
          if (bad) return bad;
          return { ok: true, map: joinMaps(maps.flatMap((one) => (one.ok ? [one.map] : []))) };
        });
      }),
    search: (plan, request, onProgress) =>
      ask<SearchResult>('search', async (put, isOpen) => {
        const latest: (SearchProgress | undefined)[] = services.map(() => undefined);
        const answers = await Promise.all(
          shares().map((share) =>
            put(share.index, (service, number) => {
              const heard = onProgress
                ? proxy<OnSearchProgress>((progress) => {
                    latest[share.index] = progress;
                    if (isOpen()) onProgress(sumOf(latest.filter((one) => one !== undefined)));
                  })
                : null;
              return service.hearGrid(number, plan, request, share, heard);
            }),
          ),
        );
        const grid = joined(answers, (heard) => heard);
        if (grid.stopped) return grid;
        const refused = grid.value.find((one) => !one.ok);
        if (refused && !refused.ok) return { stopped: false, value: refused };
        const parts = grid.value.flatMap((one) => (one.ok ? [one.heard] : []));
        return put(0, (service, number) => service.finishSearch(number, plan, request, parts));
      }),
    replace(index, service) {
      services[index] = service;
      for (const { tasks } of open.values())
        for (const task of tasks) if (task.slot === index) task.send();
    },
  };
}

type Put = <T>(
  slot: number,
  go: (service: Service, request: number) => Promise<Served<T>>,
) => Promise<Served<T>>;

function joined<T, U>(answers: readonly Served<T>[], join: (values: T[]) => U): Served<U> {
  const values: T[] = [];
  for (const answer of answers) {
    if (answer.stopped) return answer;
    values.push(answer.value);
  }
  return { stopped: false, value: join(values) };
}

const sumOf = (all: readonly { done: number; total: number }[]) => ({
  done: all.reduce((sum, { done }) => sum + done, 0),
  total: all.reduce((sum, { total }) => sum + total, 0),
});

/** More workers than this gain little and cost memory: choice of ours, no source. */
const MOST_WORKERS = 8;

/**
 * The page's pool: a worker for each core, or the page itself where no worker can be had. Opened
 * when first needed.
 */
export function openEnginePool(cores = navigator.hardwareConcurrency || 1): EnginePool {
  const count = Math.max(1, Math.min(MOST_WORKERS, cores));
  try {
    const workers = Array.from(
      { length: count },
      () => new Worker(new URL('./engine.worker.ts', import.meta.url), { type: 'module' }),
    );
    const pool = createEnginePool(workers.map((worker) => wrap<EngineService>(worker)));
    workers.forEach((worker, index) => {
      worker.addEventListener('error', () => {
        worker.terminate();
        pool.replace(index, createEngineService());
      });
    });
    return pool;
  } catch {
    return createEnginePool([createEngineService()]);
  }
}
