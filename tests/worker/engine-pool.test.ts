import { expose, releaseProxy, wrap } from 'comlink';
import { afterEach, describe, expect, test } from 'vitest';
import {
  type MapProgress,
  type MapRequest,
  mapSpots,
  type PlanInput,
  type SearchProgress,
  type StageRequest,
  searchSpots,
  searchStage,
} from '../../src/geometry';
import { createEnginePool, createEngineService, type EngineService } from '../../src/worker';
import { carPlan, smallRequest } from '../geometry/search/stages';

const ports: MessagePort[] = [];
afterEach(() => {
  for (const port of ports.splice(0)) port.close();
});

/** A service on the other side of structured cloning, as a worker's is. */
function away(service: EngineService = createEngineService()) {
  const { port1, port2 } = new MessageChannel();
  ports.push(port1, port2);
  expose(service, port1);
  return wrap<EngineService>(port2);
}

const plan = carPlan();
const request = smallRequest();
const asked: MapRequest = {
  option: 'a',
  speaker: 'midrange-left',
  quantities: ['difference', 'offAxisDeg'],
  panels: ['dash-top-left', 'door-lower-left'],
  step: 40,
};

describe('maps and searches over several workers', () => {
  test.each([1, 2, 3])('%i of them find exactly what a direct search does', async (count) => {
    const pool = createEnginePool(Array.from({ length: count }, () => away()));
    const heard: SearchProgress[] = [];
    const found = await pool.search(plan, request, (progress) => heard.push(progress)).outcome;
    expect(found).toEqual({ kind: 'answer', value: searchSpots(plan, request) });
    expect(heard.length).toBeGreaterThan(0);
    expect(heard.every(({ done, total }) => done >= 0 && done <= total)).toBe(true);
    // All spots first, then the choices; neither ever goes back.
    const steps = heard.map(({ phase }) => phase);
    expect(steps).toEqual([...steps].sort().reverse());
    expect(steps).toContain('spots');
    const choices = heard.filter(({ phase }) => phase === 'choices').map(({ done }) => done);
    expect(choices).toEqual([...choices].sort((a, b) => a - b));
  });

  test('a map is the direct one, and is seen growing before it is done', {
    timeout: 90_000,
  }, async () => {
    const pool = createEnginePool([away(), away()]);
    const seen: MapProgress[] = [];
    const fine = { ...asked, step: 12 };
    const outcome = await pool.map(plan, fine, (progress) => seen.push(progress)).outcome;
    expect(outcome).toEqual({ kind: 'answer', value: mapSpots(plan, fine) });
    expect(seen.length).toBeGreaterThan(0);
    const first = seen[0] as MapProgress;
    const painted = first.map.done.reduce((sum, done) => sum + done, 0);
    expect(painted).toBeGreaterThan(0);
    expect(painted).toBeLessThan(first.map.done.length);
  });

  test('what the plan does not have is refused as by the direct search', async () => {
    const pool = createEnginePool([away(), away()]);
    const bad = { ...request, pair: 'z' };
    expect(await pool.search(plan, bad).outcome).toEqual({
      kind: 'answer',
      value: searchSpots(plan, bad),
    });
    expect(await pool.map(plan, { ...asked, speaker: 'z' }).outcome).toEqual({
      kind: 'answer',
      value: mapSpots(plan, { ...asked, speaker: 'z' }),
    });
  });

  test('a newer search supersedes the one before, a cancel stops it, and both leave the workers free', {
    timeout: 90_000,
  }, async () => {
    const pool = createEnginePool([away(), away()]);
    const slow = { ...request, step: 8 };
    const first = pool.search(plan, slow);
    const second = pool.search(plan, slow, () => second.cancel());
    expect(await first.outcome).toEqual({ kind: 'superseded' });
    expect(await second.outcome).toEqual({ kind: 'cancelled' });
    expect((await pool.search(plan, request).outcome).kind).toBe('answer');
  });

  test('a map and a search do not disturb each other', async () => {
    const pool = createEnginePool([away(), away()]);
    const [map, found] = [pool.map(plan, asked), pool.search(plan, request)];
    expect((await map.outcome).kind).toBe('answer');
    expect((await found.outcome).kind).toBe('answer');
  });

  test('when a worker is gone its share is worked out by another', async () => {
    const dead = { hearGrid: () => new Promise(() => {}), cancel: () => {} };
    const pool = createEnginePool([away(), dead as unknown as EngineService]);
    const found = pool.search(plan, request);
    pool.replace(1, createEngineService());
    expect(await found.outcome).toEqual({ kind: 'answer', value: searchSpots(plan, request) });
  });

  const stage: StageRequest = {
    option: 'a',
    answers: 2,
    pairs: ['midrange', 'tweeter'].map((pair) => ({
      pair,
      panels: ['dash-top-left', 'pillar-left'],
      step: 110,
      require: { fits: false },
    })),
  };

  test.each([1, 3])('%i of them find the stage a direct search finds', async (count) => {
    const pool = createEnginePool(Array.from({ length: count }, () => away()));
    const heard: SearchProgress[] = [];
    const found = await pool.searchStage(plan, stage, (step) => heard.push(step)).outcome;
    expect(found).toEqual({ kind: 'answer', value: searchStage(plan, stage) });
    const phases = heard.map(({ phase }) => phase);
    expect(phases).toEqual([...phases].sort().reverse());
    expect(phases).toContain('spots');
    expect(heard.every(({ done, total }) => done >= 0 && done <= total)).toBe(true);
  });

  test('a stage is superseded by a search for one pair, cancelled and refused like one', async () => {
    const pool = createEnginePool([away(), away()]);
    const first = pool.searchStage(plan, stage);
    const second = pool.search(plan, request);
    expect(await first.outcome).toEqual({ kind: 'superseded' });
    expect((await second.outcome).kind).toBe('answer');
    const third = pool.searchStage(plan, stage, () => third.cancel());
    expect(await third.outcome).toEqual({ kind: 'cancelled' });
    const bad = { ...stage, pairs: [{ pair: 'midrange' }, { pair: 'z' }] };
    expect(await pool.searchStage(plan, bad).outcome).toEqual({
      kind: 'answer',
      value: searchStage(plan, bad),
    });
  });

  test('a worker lost in the middle of a stage leaves its share to another', async () => {
    const dead = { hearStage: () => new Promise(() => {}), cancel: () => {} };
    const pool = createEnginePool([dead as unknown as EngineService, away()]);
    const found = pool.searchStage(plan, stage);
    pool.replace(0, away());
    expect(await found.outcome).toEqual({ kind: 'answer', value: searchStage(plan, stage) });
  });

  test('a share that fails is told as an error, stops the others and leaves the pool of use', async () => {
    const stopped: number[] = [];
    const failing = {
      ...createEngineService(),
      hearStage: () => Promise.reject(new Error('out of memory')),
    };
    const waiting = {
      ...createEngineService(),
      hearStage: () => new Promise<never>(() => {}),
      cancel: (number: number) => void stopped.push(number),
    };
    const pool = createEnginePool([failing, waiting]);
    await expect(pool.searchStage(plan, stage).outcome).rejects.toThrow('out of memory');
    expect(stopped.length).toBe(1);
    expect((await pool.search(plan, request).outcome).kind).toBe('answer');
  });
});

describe('what the page lends a worker', () => {
  /** A callback as it arrives in a worker: the port behind it is closed by the last of these. */
  function lent<T>(heard: (value: T) => void = () => {}) {
    let released = 0;
    const callback = Object.assign((value: T) => heard(value), {
      [releaseProxy]: () => {
        released += 1;
      },
    });
    return { callback, released: () => released };
  }
  const share = { index: 0, of: 1 };

  test('is given back when the work is done, when it is refused and when it is stopped', async () => {
    const service = createEngineService();
    const done = lent<SearchProgress>();
    await service.hearGrid(1, plan, request, share, done.callback);
    expect(done.released()).toBe(1);
    const refused = lent<SearchProgress>();
    await service.hearGrid(2, plan, { ...request, pair: 'z' }, share, refused.callback);
    expect(refused.released()).toBe(1);
    const stopped = lent<SearchProgress>(() => service.cancel(3));
    expect(
      await service.hearGrid(3, plan, { ...request, step: 30 }, share, stopped.callback),
    ).toEqual({
      stopped: true,
    });
    expect(stopped.released()).toBe(1);
  });

  test('is given back too when the work breaks', async () => {
    const broken = lent<SearchProgress>();
    const bad = { ...plan, options: null } as unknown as PlanInput;
    await expect(
      createEngineService().hearGrid(1, bad, request, share, broken.callback),
    ).rejects.toThrow();
    expect(broken.released()).toBe(1);
  });
});
