/** Fault 30: tape readings that contradict each other, and too few of them. */
import { describe, expect, test } from 'vitest';
import { distance, evaluatePlan, nextReadings, positionFix, type Vec3 } from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import { distancesTo } from '../../src/plan/readings';
import type { Reading } from '../../src/plan/types';

const answer = evaluatePlan(demoPlan());
if (!answer.ok || !answer.options[0]) throw new Error('the demo is refused');
const known = { cabin: answer.cabin, placed: answer.options[0].placed };
const what = { kind: 'speaker', speaker: 'midrange-right' } as const;
const spot = known.placed.find(({ speaker }) => speaker === what.speaker)?.position as Vec3;
/** Where it really is. */
const real: Vec3 = [spot[0] + 21, spot[1] - 12, spot[2] + 8];
const points = nextReadings(spot, [], known.cabin.references, 6, { sd: 3 });

const tapes = (count: number, wrong: Readonly<Record<number, number>> = {}): Reading[] =>
  points.slice(0, count).map(({ id, point }, i) => ({
    from: what,
    to: { kind: 'reference', reference: id },
    distance: Math.round(distance(point, real)) + (wrong[i] ?? 0),
    by: 'tape',
  }));

const fixOf = (readings: readonly Reading[]) =>
  positionFix(distancesTo(what, readings, known), spot);

describe('tapes to a speaker in the car', () => {
  test('find it where it really is', () => {
    const found = fixOf(tapes(6));
    if (!found.ok) throw new Error(found.why);
    expect(distance(found.fix.position, real)).toBeLessThan(found.fix.within95);
    expect(found.fix).toMatchObject({ blunders: [], suspects: [] });
  });

  test.each([0, 1, 2, 3, 4, 5])(
    'a hundred too many on tape %i is named, with how far off it is',
    (i) => {
      const found = fixOf(tapes(6, { [i]: 100 }));
      if (!found.ok) throw new Error(found.why);
      const { blunders, suspects, position } = found.fix;
      // Either it is named, or it is among those that may be wrong; never another one.
      if (suspects.length > 0) expect(suspects).toContain(String(i));
      else {
        expect(blunders.map(({ id }) => id)).toEqual([String(i)]);
        expect(Math.abs((blunders[0]?.off ?? 0) - 100)).toBeLessThan(20);
        expect(distance(position, real)).toBeLessThan(20);
      }
    },
  );

  test('most such blunders are named outright', () => {
    const named = points.filter((_, i) => {
      const found = fixOf(tapes(6, { [i]: 100 }));
      return found.ok && found.fix.blunders.length === 1;
    });
    expect(named.length).toBeGreaterThanOrEqual(4);
  });

  test('too few say which to take next, and with it they fix it', () => {
    const two = tapes(2);
    expect(fixOf(two)).toEqual({ ok: false, why: 'few' });
    const [next] = nextReadings(spot, distancesTo(what, two, known), known.cabin.references, 1, {
      sd: 3,
    });
    if (!next) throw new Error('none to take');
    const third: Reading = {
      from: what,
      to: { kind: 'reference', reference: next.id },
      distance: distance(next.point, real),
      by: 'tape',
    };
    const found = fixOf([...two, third]);
    expect(found.ok && distance(found.fix.position, real)).toBeLessThan(15);
  });
});
