import { describe, expect, test } from 'vitest';
import {
  evaluatePlan,
  gridSpot,
  joinMaps,
  type MapRequest,
  mapInSteps,
  mapSpots,
  type PlanInput,
  penalty,
  type SpotMap,
} from '../../../src/geometry';
import { carPlan } from '../search/stages';

const MIDDLE_HZ = 1000;

const request = (change: Partial<MapRequest> = {}): MapRequest => ({
  option: 'a',
  speaker: 'midrange-left',
  quantities: ['difference', 'offAxisDeg', 'obstructionDb', 'firstReflectionTime', 'pathSpread'],
  step: 120,
  panels: ['dash-top-left', 'dash-top-center', 'pillar-left', 'kick-left', 'door-lower-left'],
  seats: ['front-left', 'front-right'],
  ...change,
});

function mapped(plan: PlanInput, asked: MapRequest): SpotMap {
  const answer = mapSpots(plan, asked);
  if (!answer.ok) throw new Error(`${answer.error.path}: ${answer.error.message}`);
  return answer.map;
}

const mirrored = (id: string) => id.replace(/left|right/, (s) => (s === 'left' ? 'right' : 'left'));
const orNull = (x: number | undefined) => (x === undefined || Number.isNaN(x) ? null : x);

/** What evaluation says with the mids at a spot and at its mirror image, worst over two seats. */
function evaluatedAt(plan: PlanInput, spot: { panel: string; u: number; v: number }) {
  const isRight = spot.panel.includes('right') || (spot.panel.includes('center') && spot.u > 0.5);
  const twin =
    mirrored(spot.panel) === spot.panel
      ? { ...spot, u: 1 - spot.u }
      : { ...spot, panel: mirrored(spot.panel) };
  const at = (side: 'left' | 'right') => (isRight === (side === 'right') ? spot : twin);
  const answer = evaluatePlan({
    ...plan,
    options: plan.options.map((option) => ({
      ...option,
      speakers: option.speakers.map((speaker) =>
        speaker.pair === 'midrange' && speaker.side
          ? { ...speaker, mount: { ...at(speaker.side), standoff: 20 } }
          : speaker,
      ),
    })),
  });
  if (!answer.ok) throw new Error(answer.error.message);
  const seats = (answer.options[0]?.seats ?? []).filter(({ id }) => id.startsWith('front'));
  const own = isRight ? 'right' : 'left';
  const arrivals = seats.map((seat) => {
    const found = seat.arrivals.find(({ speaker }) => speaker === `midrange-${own}`);
    if (!found) throw new Error('no arrival');
    return found;
  });
  const others = seats.map(
    (seat) => seat.arrivals.find(({ speaker }) => speaker === `tweeter-${own}`)?.path ?? 0,
  );
  const largest = (all: (number | null | undefined)[]) =>
    all.some((x) => x === null || x === undefined) ? null : Math.max(...(all as number[]));
  const times = arrivals.flatMap(({ reflections: [first] }) => (first ? [first.extraTime] : []));
  const differences = seats.map(({ pairs }) => pairs[0]?.difference ?? 0);
  return {
    difference: differences.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a)),
    offAxisDeg: largest(arrivals.map(({ offAxisDeg }) => offAxisDeg)),
    obstructionDb: largest(
      arrivals.map(({ bands }) => bands.find((b) => b.frequencyHz === MIDDLE_HZ)?.obstructionDb),
    ),
    firstReflectionTime: times.length > 0 ? Math.min(...times) : null,
    pathSpread: Math.max(...arrivals.map(({ path }, s) => Math.abs(path - (others[s] as number)))),
  };
}

describe('a map of panels', () => {
  const plan = carPlan();
  const map = mapped(plan, request());

  test('holds at every spot exactly what evaluation gives for a speaker there', () => {
    let spots = 0;
    for (const grid of map.panels)
      for (let cell = 0; cell < grid.columns * grid.rows; cell++) {
        const spot = gridSpot(grid, cell);
        if (grid.panel === 'dash-top-center' && spot.u === 0.5) continue;
        const there = evaluatedAt(plan, spot);
        const k = grid.first + cell;
        for (const name of [
          'offAxisDeg',
          'obstructionDb',
          'firstReflectionTime',
          'pathSpread',
        ] as const)
          expect(orNull(map.values[name]?.[k])).toBe(there[name]);
        // On a panel across the car the twin's 1 − u is that of the grid but for rounding.
        expect(Math.abs((map.values.difference?.[k] ?? 0) - there.difference)).toBeLessThan(
          grid.panel === 'dash-top-center' ? 1e-6 : Number.MIN_VALUE,
        );
        spots += 1;
      }
    expect(spots).toBeGreaterThan(100);
    expect(map.done.every((done) => done === 1)).toBe(true);
  });

  test('shows a spot and its mirror image with the same difference', () => {
    const left = map.panels.find(({ panel }) => panel === 'kick-left');
    const right = map.panels.find(({ panel }) => panel === 'kick-right');
    if (!left || !right) throw new Error('the twins are painted as well');
    for (let cell = 0; cell < left.columns * left.rows; cell++)
      expect(map.values.difference?.[left.first + cell]).toBe(
        map.values.difference?.[right.first + cell],
      );
  });

  test('comes coarse first, then finer, and every spot once', () => {
    const asked = request({ quantities: ['offAxisDeg'], step: 30, panels: ['door-lower-left'] });
    const steps = mapInSteps(plan, asked);
    let last = 0;
    let coarse = 0;
    for (const { done, total, map: so } of steps) {
      expect(done).toBe(last + 1);
      last = done;
      const [grid] = so.panels;
      if (!grid || done !== Math.ceil(grid.columns / 8) * Math.ceil(grid.rows / 8)) continue;
      coarse = done;
      for (let cell = 0; cell < total; cell++) {
        const isCoarse =
          (cell % grid.columns) % 8 === 0 && Math.floor(cell / grid.columns) % 8 === 0;
        expect(so.done[cell]).toBe(isCoarse ? 1 : 0);
      }
    }
    expect(coarse).toBeGreaterThan(1);
    expect(last).toBeGreaterThan(20 * coarse);
  });

  test('against a fixed partner the difference is left path − right path all the same', () => {
    const fixed = mapped(
      plan,
      request({ partner: 'midrange-right', seats: ['front-left'], quantities: ['difference'] }),
    );
    const answer = evaluatePlan(plan);
    if (!answer.ok) throw new Error('no answer');
    const seat = answer.options[0]?.seats.find(({ id }) => id === 'front-left');
    const right = seat?.arrivals.find(({ speaker }) => speaker === 'midrange-right')?.path ?? 0;
    const grid = fixed.panels[0];
    if (!grid) throw new Error('no panel');
    const spot = gridSpot(grid, 3);
    const moved = evaluatePlan({
      ...plan,
      options: plan.options.map((option) => ({
        ...option,
        speakers: option.speakers.map((s) =>
          s.id === 'midrange-left' ? { ...s, mount: { ...spot, standoff: 20 } } : s,
        ),
      })),
    });
    if (!moved.ok) throw new Error('no answer');
    const left =
      moved.options[0]?.seats
        .find(({ id }) => id === 'front-left')
        ?.arrivals.find(({ speaker }) => speaker === 'midrange-left')?.path ?? 0;
    expect(fixed.values.difference?.[grid.first + 3]).toBe(left - right);
    expect(fixed.panels.map(({ panel }) => panel)).not.toContain('kick-right');
  });

  test('a blend is the weighted sum of the penalties', () => {
    const weights = { difference: 2, offAxisDeg: 0.5 };
    const blended = mapped(plan, request({ quantities: ['blend'], weights }));
    expect(Object.keys(blended.values)).toEqual(['blend']);
    blended.values.blend?.forEach((value, k) => {
      const sum =
        2 * penalty('difference', orNull(map.values.difference?.[k])) +
        0.5 * penalty('offAxisDeg', orNull(map.values.offAxisDeg?.[k]));
      expect(Math.abs(value - sum)).toBeLessThan(1e-9);
    });
  });

  test('shares of a map put together are the whole map', () => {
    const asked = request({ fits: true });
    const parts = [0, 1, 2].map((index) => {
      const answer = mapSpots(plan, asked, { index, of: 3 });
      if (!answer.ok) throw new Error('no answer');
      return answer.map;
    });
    expect(joinMaps(parts)).toEqual(mapped(plan, asked));
  });

  test('tells where the speaker fits, where it does not, and where a zone is kept clear', () => {
    const { fit } = mapped(plan, request({ fits: true, quantities: ['offAxisDeg'], step: 40 }));
    expect(new Set(fit)).toEqual(new Set([1, 2, 3]));
  });

  test('refuses with the place what the plan does not have', () => {
    const refused = (change: Partial<MapRequest>) => mapSpots(plan, request(change));
    expect(refused({ speaker: 'z' })).toMatchObject({ ok: false, error: { path: 'speaker' } });
    expect(refused({ panels: ['z'] })).toMatchObject({ ok: false, error: { path: 'panels[0]' } });
    expect(refused({ seats: ['z'] })).toMatchObject({ ok: false, error: { path: 'seats[0]' } });
    expect(refused({ partner: 'z' })).toMatchObject({ ok: false, error: { path: 'partner' } });
  });
});
