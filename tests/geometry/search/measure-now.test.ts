import { describe, expect, test } from 'vitest';
import {
  type FoundSpot,
  measurePairsNow,
  type PlanInput,
  type SearchRequest,
  searchStage,
} from '../../../src/geometry';
import { carPlan, searched, smallRequest, taken } from './stages';

const WANT = { difference: 1, offAxisDeg: 0.5, obstructionDb: 1, firstReflectionTime: 0.2 };

const nowOf = (plan: PlanInput, request: SearchRequest) => {
  const answer = measurePairsNow(plan, request, [
    { pair: request.pair, want: request.want ?? WANT },
  ]);
  if (!answer.ok) throw new Error(answer.error.message);
  return answer.now.pairs;
};

describe('what a pair does where it stands', () => {
  const plan = carPlan();

  test.each([
    ['one listener', { seats: [{ id: 'front-left', weight: 1 }] }],
    [
      'two listeners of unlike weight',
      {
        seats: [
          { id: 'front-left', weight: 2 },
          { id: 'front-right', weight: 1 },
        ],
      },
    ],
    ['an aim of the search’s own', { aim: { kind: 'normal' } as const }],
  ])('is what a search says of a spot once the pair stands there: %s', (_, change) => {
    const request = smallRequest(change);
    const { answers } = searched(plan, request);
    expect(answers.length).toBeGreaterThan(1);
    for (const spot of answers as FoundSpot[]) {
      const [now] = nowOf(taken(plan, request.pair, spot), request);
      expect(now?.measures).toEqual(spot.measures);
      expect(now?.score).toBe(spot.score);
    }
  });

  test('is told of the pairs that are whole, and of a speaker at a free point too', () => {
    const [first] = plan.options;
    if (!first) throw new Error('no option');
    const speakers = first.speakers.flatMap((speaker) => {
      if (speaker.id === 'midrange-left') {
        const { mount: _, ...free } = speaker;
        return [{ ...free, position: [300, -500, 700] as const }];
      }
      return speaker.id === 'tweeter-right' ? [] : [speaker];
    });
    const cut = { ...plan, options: [{ ...first, speakers }] };
    const both = [
      { pair: 'midrange', want: WANT },
      { pair: 'tweeter', want: WANT },
    ];
    const answer = measurePairsNow(cut, { option: 'a' }, both);
    expect(answer.ok && answer.now.pairs.map(({ pair }) => pair)).toEqual(['midrange']);
    expect(answer.ok && Number.isFinite(answer.now.score)).toBe(true);
  });

  test('is what a search of several pairs says of a stage once all of them stand there', () => {
    const pairs = ['midrange', 'tweeter'].map((pair) => ({
      pair,
      panels: ['dash-top-left', 'pillar-left'],
      step: 120,
      require: { fits: false },
      want: WANT,
    }));
    const request = {
      option: 'a',
      pairs,
      want: { pathSpread: 0.7 },
      answers: 2,
      seats: [
        { id: 'front-left', weight: 2 },
        { id: 'front-right', weight: 1 },
      ],
    };
    const found = searchStage(plan, request);
    if (!found.ok) throw new Error(found.error.message);
    const { answers } = found.answer;
    expect(answers.length).toBe(2);
    for (const { spots, measures, score } of answers) {
      const stands = spots.reduce((all, spot) => taken(all, spot.pair, spot), plan);
      const answer = measurePairsNow(stands, request, pairs, 0.7);
      if (!answer.ok) throw new Error(answer.error.message);
      expect(answer.now.pathSpread).toBe(measures.pathSpread);
      expect(Math.abs(answer.now.score - score)).toBeLessThan(1e-9);
    }
  });

  test('is refused for an option or a seat that is not there', () => {
    expect(measurePairsNow(plan, { option: 'z' }, [])).toMatchObject({
      ok: false,
      error: { path: 'option' },
    });
    const seats = [{ id: 'roof-box', weight: 1 }];
    expect(measurePairsNow(plan, { option: 'a', seats }, [])).toMatchObject({
      ok: false,
      error: { path: 'seats[0].id' },
    });
  });
});
