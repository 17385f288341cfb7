import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import {
  type AlignmentInput,
  type Compromise,
  type CompromisePair,
  compromiseOver,
  createEvaluator,
  pairsOf,
} from '../../../src/geometry';
import { demoPlan } from '../../../src/plan/demo';
import { seatName } from '../../../src/plan/names';
import { formatNumber, formatTime } from '../../../src/plan/units';
import { CompromisePairs } from '../../../src/workbench/answers/seats/compromise-pairs';
import {
  CompromiseDelays,
  CompromiseSeats,
} from '../../../src/workbench/answers/seats/compromise-tables';
import { leftAlone } from '../../../src/workbench/answers/seats/left-alone';
import { countingSeats } from '../../../src/workbench/answers/seats/seat-choice';
import {
  aloneSentence,
  compromiseSentence,
  pairSentence,
  type SeatWording,
  worstOf,
} from '../../../src/workbench/answers/seats/seat-words';

const wording: SeatWording = {
  time: formatTime,
  both: (ms) => `${formatTime(ms)} (${Math.round(ms * 343)} mm)`,
  seat: seatName,
  pair: () => 'mids',
};

/** A pair with these differences, ms, at seats front left, front right, rear left, … */
function pairOf(differences: readonly number[]): CompromisePair {
  const ids = ['front-left', 'front-right', 'rear-left', 'rear-right'];
  const [low, high] = [Math.min(...differences), Math.max(...differences)];
  return {
    pair: 'midrange',
    differences: differences.map((differenceTime, i) => ({
      seat: ids[i] as string,
      differenceTime,
      remaining: differenceTime,
    })),
    opposite: low < -0.005 && high > 0.005,
    leftOver: (high - low) / 2,
    weightedLeftOver: (high - low) / 2,
  };
}

function demo() {
  const plan = demoPlan();
  const answer = createEvaluator()(plan);
  const option = plan.options[0];
  if (!answer.ok || !option || !answer.options[0]) throw new Error('the demo is refused');
  const stage = { plan, cabin: answer.cabin, option, result: answer.options[0] };
  const over = (weights: readonly [string, number][]): Compromise => {
    const seats = weights.map(([id, weight]) => ({ id, weight }));
    const found = compromiseOver(stage.result, pairsOf(option.speakers), seats, 48000);
    if ('problem' in found) throw new Error(found.problem);
    return found;
  };
  return { stage, over };
}

describe('what no delay can save', () => {
  it('is said with both seats, both amounts and what is left at best', () => {
    expect(pairSentence(pairOf([-0.9, 0.9]), wording)).toBe(
      'No delay can save the mids: left is nearer at the front left seat by 0.90 ms and right is ' +
        'nearer at the front right seat by 0.90 ms; at best each seat is left with 0.90 ms ' +
        '(309 mm) between left and right.',
    );
    expect(pairSentence(pairOf([-0.9, 0.5]), wording)).toContain('left with 0.70 ms (240 mm)');
  });

  it('is not said of a pair whose nearer side is the same everywhere', () => {
    expect(pairSentence(pairOf([-0.9, -0.5]), wording)).toBe(
      'One delay serves the mids in part: left is nearer by 0.50 ms to 0.90 ms; at best each ' +
        'seat is left with 0.20 ms (69 mm) between left and right.',
    );
    expect(pairSentence(pairOf([0.3, 0.3]), wording)).toBe(
      'One delay brings the mids together at every seat.',
    );
  });

  it('speaks of the worst seat where more than two count', () => {
    expect(pairSentence(pairOf([-0.9, 0, 0.9]), wording)).toContain('at best the worst seat is');
  });
});

describe('the compromise in words', () => {
  it('gives each seat its own error where they differ, and one where they do not', () => {
    const { over } = demo();
    const heavy = over([
      ['front-left', 2],
      ['front-right', 1],
    ]);
    const [left, right] = heavy.seats;
    expect(compromiseSentence(heavy, wording)).toBe(
      `With these delays no speaker arrives more than ${wording.both(left?.largestError ?? 0)} ` +
        `early or late at the front left seat, and ${wording.both(right?.largestError ?? 0)} at ` +
        'the front right seat.',
    );
    const alike = over([
      ['front-left', 1],
      ['front-right', 1],
    ]);
    expect(compromiseSentence(alike, wording)).toMatch(/early or late at either seat\.$/);
    expect(compromiseSentence(over([['front-left', 1]]), wording)).toBe(
      'With these delays all speakers arrive together at the front left seat.',
    );
  });

  it('names the worst speaker at a seat, and none where all are together', () => {
    const { over } = demo();
    const [seat] = over([
      ['front-left', 1],
      ['front-right', 1],
    ]).seats;
    const worst = seat && worstOf(seat);
    expect(Math.abs(worst?.error ?? 0)).toBeCloseTo(seat?.largestError ?? 1, 6);
    const [alone] = over([['front-left', 1]]).seats;
    expect(alone && worstOf(alone)).toBeNull();
  });
});

describe('delays for one seat alone', () => {
  it('leave that seat less than half a sample, and the others half the spread of their arrivals', () => {
    const { stage } = demo();
    const alone = leftAlone(stage.result, 'front-left');
    const at = (id: string) => alone?.left.find((one) => one.id === id)?.largestError ?? -1;
    expect(at('front-left')).toBeLessThanOrEqual(1 / 96 + 1e-9);
    const other = stage.result.seats.find(({ id }) => id === 'front-right');
    const delays = stage.result.seats[0]?.delays ?? [];
    const times = (other?.arrivals ?? []).map(
      ({ time }, i) => time + (delays[i]?.roundedDelay ?? 0),
    );
    expect(at('front-right')).toBeCloseTo((Math.max(...times) - Math.min(...times)) / 2, 9);
    expect(leftAlone(stage.result, 'nowhere')).toBeNull();
  });

  it('are told against the best compromise', () => {
    const { stage, over } = demo();
    const both = over([
      ['front-left', 1],
      ['front-right', 1],
    ]);
    const alone = leftAlone(stage.result, 'front-left');
    expect(alone && aloneSentence(alone, both, wording)).toMatch(
      /^The delays are for the front left seat alone: at the front right seat speakers arrive up to 1\.\d\d ms \(\d+ mm\) early or late\. The best compromise would leave 0\.\d\d ms \(\d+ mm\) at most\.$/,
    );
  });
});

describe('the seats that count', () => {
  const { stage } = demo();
  const counting = (alignment: Partial<AlignmentInput>) =>
    countingSeats(stage.cabin, { sampleRateHz: 48000, ...alignment });

  it('are those the plan lists', () => {
    const seats = [{ id: 'rear-left', weight: 3 }];
    expect(counting({ by: 'seats', seats })).toEqual(seats);
  });

  it('are all of them where a compromise lists none, as the engine takes it', () => {
    expect(counting({ by: 'seats' }).map(({ id }) => id)).toEqual(
      stage.cabin.seats.map(({ id }) => id),
    );
  });

  it('are the front ones as a proposal while delays are for one seat', () => {
    expect(counting({})).toEqual([
      { id: 'front-left', weight: 1 },
      { id: 'front-right', weight: 1 },
    ]);
  });
});

describe('the tables of the compromise', () => {
  const { stage, over } = demo();
  const answer = over([
    ['front-left', 1],
    ['front-right', 1],
  ]);
  const shared = { answer, stage, wording };

  it('say what each seat is left with, by which speaker', () => {
    const html = renderToStaticMarkup(<CompromiseSeats {...shared} />);
    for (const seat of answer.seats) {
      expect(html).toContain(seatName(seat.id));
      expect(html).toContain(`<td class="strong">${formatNumber(seat.largestError, 3)}</td>`);
    }
    expect(html).toMatch(/(left|right) tweeter, (early|late)/);
  });

  it('give every speaker its delay', () => {
    const html = renderToStaticMarkup(<CompromiseDelays {...shared} />);
    for (const { delay } of answer.channels)
      expect(html).toContain(`<td class="strong">${formatNumber(delay, 3)}</td>`);
  });

  it('show each pair as built and with the delays, and call opposite signs opposite', () => {
    const html = renderToStaticMarkup(<CompromisePairs {...shared} />);
    const [pair] = answer.pairs;
    expect(pair?.opposite).toBe(true);
    expect(html).toContain('opposite');
    expect(html).toContain(`${formatNumber(pair?.differences[0]?.differenceTime, 2)} → `);
    expect(html).toContain(`${formatNumber(pair?.leftOver, 2)} or more`);
  });
});
