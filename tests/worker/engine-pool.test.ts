import { expose, wrap } from 'comlink';
import { afterEach, describe, expect, test } from 'vitest';
import {
  type MapProgress,
  type MapRequest,
  mapSpots,
  type SearchProgress,
  searchSpots,
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

  test('a map is the direct one, and is seen growing before it is done', async () => {
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

  test('a newer search supersedes the one before, a cancel stops it, and both leave the workers free', async () => {
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
});
