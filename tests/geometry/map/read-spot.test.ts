import { describe, expect, test } from 'vitest';
import {
  createSpotReader,
  DOES_NOT_FIT,
  evaluatePlan,
  FITS,
  gridSpot,
  KEEP_CLEAR,
  type MapQuantity,
  type MapRequest,
  mapSpots,
  type PlanInput,
} from '../../../src/geometry';
import { carPlan, onRings } from '../search/stages';

const QUANTITIES: readonly MapQuantity[] = [
  'difference',
  'offAxisDeg',
  'obstructionDb',
  'firstReflectionTime',
  'pathSpread',
  'blend',
];

const request = (change: Partial<MapRequest> = {}): MapRequest => ({
  option: 'a',
  speaker: 'midrange-left',
  quantities: QUANTITIES,
  step: 90,
  panels: ['dash-top-left', 'dash-top-center', 'pillar-left', 'kick-left'],
  seats: ['front-left', 'front-right'],
  weights: { difference: 1, offAxisDeg: 0.5, obstructionDb: 1, firstReflectionTime: 0.2 },
  fits: true,
  ...change,
});

function readerOf(plan: PlanInput, asked: MapRequest) {
  const answer = createSpotReader(plan, asked);
  if (!answer.ok) throw new Error(`${answer.error.path}: ${answer.error.message}`);
  return answer.reader;
}

describe('a reading of one spot', () => {
  const plan = carPlan();

  test.each([
    [{}, plan],
    [{ partner: 'tweeter-right' }, plan],
    [{}, onRings(plan, 160)],
  ])(
    'fits where the map says so and nowhere else, its twin or partner beside it (%o, %#)',
    (change: Partial<MapRequest>, of) => {
      const asked = request({
        quantities: ['offAxisDeg'],
        step: 30,
        panels: ['dash-top-left', 'dash-top-center', 'dash-face-center', 'pillar-left'],
        ...change,
      });
      const answer = mapSpots(of, asked);
      if (!answer.ok) throw new Error(answer.error.message);
      const reader = readerOf(of, asked);
      const wrong: string[] = [];
      const seen = new Set<number>();
      let byTwinAlone = 0;
      for (const grid of answer.map.panels)
        for (let cell = 0; cell < grid.columns * grid.rows; cell++) {
          const spot = gridSpot(grid, cell);
          const misfits = reader.read(spot)?.misfits ?? [];
          const fit = misfits.some(({ hard }) => hard)
            ? KEEP_CLEAR
            : misfits.length > 0
              ? DOES_NOT_FIT
              : FITS;
          seen.add(fit);
          const isTwins = misfits.every(({ sentence }) => sentence.includes('right midrange'));
          if (misfits.length > 0 && isTwins) byTwinAlone += 1;
          if (answer.map.fit[grid.first + cell] !== fit) wrong.push(JSON.stringify(spot));
        }
      expect(wrong).toEqual([]);
      expect(seen).toEqual(new Set([FITS, DOES_NOT_FIT, KEEP_CLEAR]));
      if (!asked.partner) expect(byTwinAlone).toBeGreaterThan(0);
    },
  );

  test.each([{}, { partner: 'tweeter-right' }])(
    'is what the map holds there, of every quantity (%o)',
    (change) => {
      const asked = request(change);
      const answer = mapSpots(plan, asked);
      if (!answer.ok) throw new Error(answer.error.message);
      const reader = readerOf(plan, asked);
      let compared = 0;
      for (const grid of answer.map.panels)
        for (let cell = 0; cell < grid.columns * grid.rows; cell += 3) {
          const reading = reader.read(gridSpot(grid, cell));
          for (const name of QUANTITIES) {
            const painted = answer.map.values[name]?.[grid.first + cell] ?? Number.NaN;
            if (Number.isNaN(painted)) expect(reading?.values[name]).toBeNull();
            else
              expect(Math.abs((reading?.values[name] ?? Number.NaN) - painted)).toBeLessThan(1e-6);
            compared += 1;
          }
        }
      expect(compared).toBeGreaterThan(150);
    },
  );

  test('is what evaluation says of the pair where it stands, between the spots of any grid', () => {
    const answer = evaluatePlan(plan);
    if (!answer.ok) throw new Error(answer.error.message);
    const result = answer.options.find(({ id }) => id === 'a');
    const seat = result?.seats.find(({ id }) => id === 'front-left');
    const mount = plan.options
      .find(({ id }) => id === 'a')
      ?.speakers.find(({ id }) => id === 'midrange-left')?.mount;
    if (!seat || !mount) throw new Error('the plan has a mounted left mid');
    const arrival = seat.arrivals.find(({ speaker }) => speaker === 'midrange-left');
    const pair = seat.pairs.find((one) => one.pair === 'midrange');
    const { values } = readerOf(plan, request({ seats: ['front-left'] })).read(mount) ?? {};
    expect(values?.difference).toBe(pair?.difference);
    expect(values?.offAxisDeg).toBe(arrival?.offAxisDeg);
    expect(values?.firstReflectionTime).toBe(arrival?.reflections[0]?.extraTime ?? null);
  });

  test('says that a pair on the centreline would stand in each other’s place', () => {
    const reader = readerOf(plan, request());
    const middle = { panel: 'dash-top-center', u: 0.5, v: 0.5 };
    const said = reader.read(middle)?.misfits.map(({ sentence }) => sentence) ?? [];
    expect(said.join()).toContain('midrange');
    expect(reader.fits(middle)).toBe(false);
  });

  test('agrees with itself on whether the speaker fits', () => {
    const reader = readerOf(plan, request());
    const seen = new Set<boolean>();
    for (const panel of ['dash-top-left', 'pillar-left', 'kick-left', 'door-lower-left'])
      for (const u of [0.02, 0.3, 0.5, 0.8])
        for (const v of [0.2, 0.5, 0.9]) {
          const fits = reader.fits({ panel, u, v });
          const misfits = reader.read({ panel, u, v })?.misfits ?? [];
          expect(misfits.length === 0).toBe(fits);
          expect(misfits.some(({ hard }) => hard)).toBe(reader.isKeptClear({ panel, u, v }));
          seen.add(fits);
        }
    expect(seen.size).toBe(2);
  });

  test('knows no panel the cabin does not have', () => {
    expect(readerOf(plan, request()).read({ panel: 'z', u: 0.5, v: 0.5 })).toBeNull();
    expect(createSpotReader(plan, request({ speaker: 'z' })).ok).toBe(false);
  });
});
