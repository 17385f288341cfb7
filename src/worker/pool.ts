import { proxy, wrap } from 'comlink';
import {
  type GridHeard,
  joinMaps,
  type MapAnswer,
  type MapProgress,
  type MapRequest,
  type PlanInput,
  type SearchRequest,
  type SearchResult,
  type StageRequest,
  type StageSearchResult,
} from '../geometry';
import type { Asked } from './client';
import { inTwoHalves, joined, type Put, type Service, sumOf } from './in-shares';
import type { EngineService, OnMapProgress, OnSearchProgress, Outcome, Served } from './protocol';
import { createEngineService } from './service';

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
  /** Several pairs together; a search of either kind supersedes the other. */
  searchStage(
    plan: PlanInput,
    request: StageRequest,
    onProgress?: OnSearchProgress,
  ): Asked<StageSearchResult>;
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

  function stop(tasks: Iterable<Task>): void {
    for (const { slot, request } of tasks) void services[slot]?.cancel(request);
  }

  function drop(kind: Kind, why: 'superseded' | 'cancelled'): void {
    const dropped = open.get(kind);
    if (!dropped) return;
    open.delete(kind);
    stop(dropped.tasks);
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
          // One share has failed: the others would be worked out for nobody.
          if (isOpen()) stop(tasks);
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
      ask<SearchResult>('search', (put, isOpen) =>
        inTwoHalves(
          put,
          shares(),
          onProgress && ((progress) => isOpen() && onProgress(progress)),
          (service, number, share, heard) => service.hearGrid(number, plan, request, share, heard),
          (service, number, parts: GridHeard[], heard) =>
            service.finishSearch(number, plan, request, parts, heard),
        ),
      ),
    searchStage: (plan, request, onProgress) =>
      ask<StageSearchResult>('search', (put, isOpen) =>
        inTwoHalves(
          put,
          shares(),
          onProgress && ((progress) => isOpen() && onProgress(progress)),
          (service, number, share, heard) => service.hearStage(number, plan, request, share, heard),
          (service, number, parts: (readonly GridHeard[])[], heard) =>
            service.finishStage(number, plan, request, parts, heard),
        ),
      ),
    replace(index, service) {
      services[index] = service;
      for (const { tasks } of open.values())
        for (const task of tasks) if (task.slot === index) task.send();
    },
  };
}

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
