import { expose, wrap } from 'comlink';
import { afterEach, describe, expect, test } from 'vitest';
import {
  evaluatePlan,
  type PlanInput,
  type RankProgress,
  rankDimensions,
} from '../../src/geometry';
import { createEngineClient, createEngineService, type EngineService } from '../../src/worker';
import { samplePlan } from '../exchange/sample';

const ports: MessagePort[] = [];
afterEach(() => {
  for (const port of ports.splice(0)) port.close();
});

/** A client whose every word goes through structured cloning, as to a worker. */
function overThePort(service: EngineService = createEngineService()) {
  const { port1, port2 } = new MessageChannel();
  ports.push(port1, port2);
  expose(service, port1);
  return createEngineClient(wrap<EngineService>(port2));
}

const carPlan = (): PlanInput => ({
  ...samplePlan([1]),
  cabin: { template: 'estate', wheelSide: 'left' },
  seats: [],
  options: [
    {
      id: 'a',
      speakers: (['left', 'right'] as const).map((side) => ({
        id: `mid-${side}`,
        role: 'midrange' as const,
        pair: 'mid',
        side,
        mount: { panel: `door-upper-${side}`, u: 0.3, v: 0.5 },
      })),
    },
  ],
});

describe('the engine behind the worker protocol', () => {
  test('answers exactly as the direct call does', async () => {
    const plan = carPlan();
    const direct = evaluatePlan(plan);
    expect(direct).toMatchObject({ ok: true });
    expect(await overThePort().evaluate(plan).outcome).toEqual({ kind: 'answer', value: direct });
  });

  test('refuses exactly as the direct call does', async () => {
    const plan = { ...carPlan(), cabin: { template: 'tractor', wheelSide: 'left' as const } };
    const direct = evaluatePlan(plan);
    expect(direct.ok).toBe(false);
    expect(await overThePort().evaluate(plan).outcome).toEqual({ kind: 'answer', value: direct });
  });

  test('ranks dimensions exactly as the direct call does, and tells how far it is', async () => {
    const plan = carPlan();
    const heard: RankProgress[] = [];
    const asked = overThePort().rankDimensions(plan, {}, (progress) => heard.push(progress));
    const direct = rankDimensions(plan);
    expect(await asked.outcome).toEqual({ kind: 'answer', value: direct });
    const total = direct.ok ? direct.ranks.length : 0;
    expect(total).toBeGreaterThan(30);
    expect(heard[0]).toEqual({ done: 1, total });
    expect(heard.map(({ done }) => done)).toEqual([...heard.keys()].map((i) => i + 1));
  });

  test('a question asked again supersedes the earlier one, whose answer is dropped', async () => {
    const client = overThePort();
    const first = client.evaluate(samplePlan([1000, 1400]));
    const plan = samplePlan([1000, 1200]);
    const second = client.evaluate(plan);
    expect(await first.outcome).toEqual({ kind: 'superseded' });
    expect(await second.outcome).toEqual({ kind: 'answer', value: evaluatePlan(plan) });
  });

  test('a late answer from a service that knows no cancel is dropped all the same', async () => {
    const answers: ((value: unknown) => void)[] = [];
    const slow = {
      evaluate: () => new Promise((resolve) => answers.push(resolve)),
      cancel: () => {},
    } as unknown as EngineService;
    const client = createEngineClient(slow);
    const first = client.evaluate(samplePlan([1]));
    const second = client.evaluate(samplePlan([2]));
    answers[1]?.({ stopped: false, value: 'second' });
    answers[0]?.({ stopped: false, value: 'first' });
    expect(await second.outcome).toEqual({ kind: 'answer', value: 'second' });
    expect(await first.outcome).toEqual({ kind: 'superseded' });
  });

  test('a cancel stops the work, and no progress is heard after it', async () => {
    let worked = 0;
    const service = createEngineService();
    const counted: EngineService = {
      ...service,
      rankDimensions: (request, plan, settings, onProgress) =>
        service.rankDimensions(request, plan, settings, (progress) => {
          worked = progress.done;
          onProgress?.(progress);
        }),
    };
    const client = overThePort(counted);
    const plan = carPlan();
    const total = (() => {
      const direct = rankDimensions(plan);
      return direct.ok ? direct.ranks.length : 0;
    })();
    let heardAfter = 0;
    let cancelled = false;
    const asked = client.rankDimensions(plan, {}, () => {
      if (cancelled) heardAfter += 1;
      cancelled = true;
      asked.cancel();
    });
    expect(await asked.outcome).toEqual({ kind: 'cancelled' });
    // A question put afterwards is answered, so the worker is not still busy with the old one.
    expect((await client.evaluate(plan).outcome).kind).toBe('answer');
    expect(worked).toBeLessThan(total);
    expect(heardAfter).toBe(0);
  });

  test('questions of different kinds do not disturb each other', async () => {
    const client = overThePort();
    const plan = carPlan();
    const [ranked, evaluated] = await Promise.all([
      client.rankDimensions(plan).outcome,
      client.evaluate(plan).outcome,
    ]);
    expect(ranked.kind).toBe('answer');
    expect(evaluated.kind).toBe('answer');
  });

  test('when the worker is gone its open question is put to the page’s own engine', async () => {
    const dead = { evaluate: () => new Promise(() => {}), cancel: () => {} };
    const client = createEngineClient(dead as unknown as EngineService);
    const plan = samplePlan([1000, 1200]);
    const asked = client.evaluate(plan);
    client.moveTo(createEngineService());
    expect(await asked.outcome).toEqual({ kind: 'answer', value: evaluatePlan(plan) });
    expect((await client.rankDimensions(plan).outcome).kind).toBe('answer');
  });
});
