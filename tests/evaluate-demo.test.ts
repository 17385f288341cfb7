/** The demo's story says only what the engine finds. */
import { describe, expect, test } from 'vitest';
import { buildCabin, evaluatePlan, fitOf, placeSpeaker } from '../src/geometry';
import { demoPlan } from '../src/plan/demo';
import { readPlanData } from '../src/plan/schema';

function atDriver(option: 'a' | 'b') {
  const answer = evaluatePlan(demoPlan());
  if (!answer.ok) throw new Error(`${answer.error.path}: ${answer.error.message}`);
  const result = answer.options.find(({ id }) => id === option);
  const seat = result?.seats.find(({ id }) => id === 'front-left');
  if (!seat) throw new Error('the demo has no front-left seat');
  const of = (speaker: string) => {
    const arrival = seat.arrivals.find((one) => one.speaker === speaker);
    if (!arrival) throw new Error(`the demo has no ${speaker}`);
    return arrival;
  };
  const mids = seat.pairs.find(({ pair }) => pair === 'midrange');
  return { left: of('midrange-left'), right: of('midrange-right'), difference: mids?.difference };
}

describe('the demo', () => {
  test('is a plan the program itself would open without a word', () => {
    expect(readPlanData(JSON.parse(JSON.stringify(demoPlan())))).toMatchObject({
      ok: true,
      warnings: [],
    });
  });

  test('has two options of three pairs that differ by their mids alone', () => {
    const [a, b] = demoPlan().options;
    for (const option of [a, b])
      expect(new Set(option?.speakers.map(({ pair }) => pair)).size).toBe(3);
    const others = (option: typeof a) => option?.speakers.filter(({ role }) => role !== 'midrange');
    expect(others(a)).toEqual(others(b));
    expect(a).not.toEqual(b);
  });

  test('every speaker of it fits where it stands, and none is where something is kept clear', () => {
    const plan = demoPlan();
    const built = buildCabin(plan);
    if (!built.ok) throw new Error(built.error.message);
    const { cabin } = built;
    const panels = new Map(cabin.panels.map((panel) => [panel.id, panel]));
    const seats = new Map(cabin.seats.map((seat) => [seat.id, seat]));
    for (const option of plan.options) {
      const placed = option.speakers.flatMap((speaker) => {
        const place = placeSpeaker(speaker, panels, seats);
        return place.ok ? [place.placed] : [];
      });
      expect(placed).toHaveLength(6);
      for (const { id } of option.speakers)
        expect(fitOf({ cabin, option, placed }, id).map(({ sentence }) => sentence)).toEqual([]);
    }
  });

  test('“the left one is about 440 mm nearer”, “that falls to about 300 mm”', () => {
    expect(demoPlan().story).toMatch(/about 440 mm nearer.*falls to about 300 mm/);
    expect(Math.abs((atDriver('a').difference ?? 0) + 440)).toBeLessThanOrEqual(15);
    expect(Math.abs((atDriver('b').difference ?? 0) + 300)).toBeLessThanOrEqual(15);
  });

  test('“nothing stands between them and the driver, who sits within 25° of their axis”', () => {
    expect(demoPlan().story).toContain(
      'nothing stands between them and the driver, who sits within 25° of their axis',
    );
    const { left, right } = atDriver('a');
    for (const arrival of [left, right]) {
      expect(arrival.blockedBy).toEqual([]);
      expect(arrival.path).toBe(arrival.direct);
      expect(arrival.offAxisDeg).toBeLessThanOrEqual(25);
    }
  });

  test('“both look well past the driver, and the legs … stand before both”', () => {
    expect(demoPlan().story).toContain(
      'both look well past the driver, and the legs of the people in front stand before both',
    );
    const { left, right } = atDriver('b');
    for (const { offAxisDeg, blockedBy } of [left, right]) {
      expect(offAxisDeg).toBeGreaterThan(30);
      expect(blockedBy.join()).toMatch(/occupant-front-(left|right)-(left|right)-(thigh|shin)/);
    }
  });
});
