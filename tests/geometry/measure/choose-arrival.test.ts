import { describe, expect, test } from 'vitest';
import { chooseArrival, type FirstArrival, firstArrivals } from '../../../src/geometry';
import { bell, response, type Shape, sinc } from './synthetic';

const RATE = 48000;
const found = (snrDb: number, shapes: readonly Shape[] = [sinc, sinc]): FirstArrival[] =>
  firstArrivals(
    shapes.map((shape, i) => ({
      id: `${i}`,
      response: {
        sampleRateHz: RATE,
        samples: response([{ shape, at: 400 + 60.3 * i }], snrDb, 90 + i),
      },
    })),
  );

/** The one that is not the reference. */
const other = (all: readonly FirstArrival[]) =>
  all.find(({ correlation }) => correlation !== null) as FirstArrival;

describe('which first arrival is used', () => {
  test('the edge where both ways agree, and for the reference', () => {
    const all = found(40);
    expect(chooseArrival(other(all), RATE)).toMatchObject({ method: 'edge', because: 'agree' });
    const reference = all.find(({ correlation }) => correlation === null) as FirstArrival;
    expect(chooseArrival(reference, RATE)).toMatchObject({ method: 'edge', because: 'reference' });
    expect(chooseArrival(reference, RATE, { alone: true })?.because).toBe('alone');
  });

  test('what is asked for, whatever the other says', () => {
    const one = other(found(40));
    const edge = chooseArrival(one, RATE, { wanted: 'edge' });
    const correlation = chooseArrival(one, RATE, { wanted: 'correlation' });
    expect([edge?.because, correlation?.because]).toEqual(['asked', 'asked']);
    expect(edge?.time).toBe('problem' in one.edge ? null : one.edge.ms);
    expect(correlation?.time).toBe(
      one.correlation && !('problem' in one.correlation) ? one.correlation.ms : null,
    );
  });

  test('correlation where noise raised the threshold of alike channels and the two disagree', () => {
    const one = other(found(40));
    if ('problem' in one.edge || !one.correlation || 'problem' in one.correlation)
      throw new Error('no arrival');
    const late: FirstArrival = {
      ...one,
      edge: { ...one.edge, ms: one.edge.ms + 0.2, raisedByNoise: true },
      agree: false,
    };
    expect(chooseArrival(late, RATE)).toMatchObject({ method: 'correlation', because: 'noise' });
    const unlike = { ...late, correlation: { ...one.correlation, likeness: 0.3 } };
    expect(chooseArrival(unlike, RATE)).toMatchObject({ method: 'edge', because: 'unlike' });
    const clear = { ...late, edge: { ...late.edge, raisedByNoise: false, sdMs: 0.001 } };
    expect(chooseArrival(clear as FirstArrival, RATE)).toMatchObject({ because: 'disagree' });
  });

  test('none where nothing stands out of the noise', () => {
    const one = other(found(40));
    expect(chooseArrival({ ...one, edge: { problem: 'silent' } }, RATE)).toBeNull();
  });

  test('is the less sure the softer the impulse rises, and lies within twice that of the truth', () => {
    const sharp = chooseArrival(other(found(50)), RATE);
    const soft = chooseArrival(other(found(50, [bell(12), bell(12)])), RATE);
    expect(soft?.sd).toBeGreaterThan(2 * (sharp?.sd ?? 0));
    // A soft impulse beside a sharp one: the true difference is that of their peaks.
    const mixed = found(60, [sinc, bell(6)]).map((one) =>
      chooseArrival(one, RATE, { wanted: 'edge' }),
    );
    const [a, b] = mixed;
    if (!a || !b) throw new Error('no arrival');
    const off = (b.time - a.time) * 48 - 60.3;
    expect(Math.abs(off)).toBeGreaterThan(1);
    expect(Math.abs(off)).toBeLessThan(2 * Math.sqrt(a.sd ** 2 + b.sd ** 2) * 48);
  });
});
