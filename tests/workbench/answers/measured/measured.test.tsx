/** The sheet “Measured”: what it makes of responses, and what it says of places found. */

import { produce } from 'immer';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import {
  type ArrivalChoice,
  buildCabin,
  compareMeasured,
  evaluatePlan,
  type PositionFix,
  type Stage,
  type Vec3,
} from '../../../../src/geometry';
import { demoPlan } from '../../../../src/plan/demo';
import { standWhereFixed } from '../../../../src/plan/edits';
import { distancesTo } from '../../../../src/plan/readings';
import { sameEnd } from '../../../../src/plan/same-end';
import type { PlanOption, Reading } from '../../../../src/plan/types';
import {
  awayWords,
  doubtWords,
  placeWords,
  unfixedWords,
} from '../../../../src/workbench/answers/measured/fix-words';
import { liveArrivals } from '../../../../src/workbench/answers/measured/live-arrivals';
import type { Track } from '../../../../src/workbench/answers/measured/measured-store';
import {
  outlierWords,
  wholeWords,
} from '../../../../src/workbench/answers/measured/measured-words';
import { ResultPart } from '../../../../src/workbench/answers/measured/result-part';
import { SurveyPart } from '../../../../src/workbench/answers/measured/survey-part';
import { response, sinc } from '../../../geometry/measure/synthetic';

const plan = demoPlan();
const answer = evaluatePlan(plan);
if (!answer.ok) throw new Error(answer.error.message);
const [result] = answer.options;
const seat = result?.seats.find(({ id }) => id === 'front-left');
const option = plan.options[0] as PlanOption;
if (!result || !seat) throw new Error('no seat');
const speakers = option.speakers;

const track = (speaker: string | null, ms: number, more: Partial<Track> = {}): Track => ({
  key: `${speaker} ${ms}`,
  file: `${speaker}.wav`,
  channel: 1,
  of: 1,
  stored: 'int24',
  length: 1600,
  sampleRateHz: 48000,
  asksRate: false,
  sound: { samples: response([{ shape: sinc, at: ms * 48 }], 46, 5, 1600), startMs: 0 },
  speaker,
  ...more,
});

const tracks = (off: Readonly<Record<string, number>> = {}): Track[] =>
  seat.arrivals.map(({ speaker, time }) => track(speaker, time + 9.3 + (off[speaker] ?? 0)));

const settings = { seat: 'front-left', at: 'head', choice: 'surer' as ArrivalChoice } as const;
const wording = { unit: 'mm', speed: result.speedOfSound, name: (id: string) => id } as const;

describe('responses bound to speakers', () => {
  test('give one arrival each, and all arrive as predicted', () => {
    const { taken, rows } = liveArrivals(tracks(), speakers, settings);
    expect(taken).toHaveLength(speakers.length);
    expect(rows.every(({ problem }) => problem === null)).toBe(true);
    const [set] = compareMeasured(taken, result, 20);
    if (!set) throw new Error('no set');
    expect(wholeWords(set, wording)).toMatch(
      /^All 6 channels arrive as predicted: .*\(±\d+ mm to ±\d+ mm of path\)/,
    );
    expect(outlierWords(set, wording)).toEqual([]);
  });

  test('of one speaker alone are compared, but give no reading', () => {
    const take = (of: Track[]) => {
      const { taken } = liveArrivals(of, speakers, settings);
      const [set] = compareMeasured(taken, result, 20);
      if (!set) throw new Error('no set');
      const markup = renderToStaticMarkup(
        <ResultPart
          set={set}
          speakers={speakers}
          wording={wording}
          locked={false}
          straight={new Set(speakers.map(({ id }) => id))}
          onTake={() => {}}
        />,
      );
      return /<button[^>]*>Take .*?<\/button><span[^>]*>.*?<\/span>/.exec(markup)?.[0];
    };
    expect(take(tracks().slice(0, 1))).toMatch(
      /^<button type="button" disabled="">Take .*A single channel gives no reading/,
    );
    expect(take(tracks().slice(0, 2))).toMatch(
      /^<button type="button">Take 2 differences .*Each becomes a distance/,
    );
  });

  test('are correlated with those of their own role alone', () => {
    const { rows } = liveArrivals(tracks(), speakers, settings);
    for (const { found, speaker } of rows) {
      if (!found?.correlation) continue;
      if ('problem' in found.correlation) throw new Error(found.correlation.problem);
      const { against } = found.correlation;
      expect(speakers.find(({ id }) => id === against)?.role).toBe(speaker?.role);
      expect(found.agree).toBe(true);
    }
    expect(rows.filter(({ found }) => found?.correlation === null)).toHaveLength(3);
  });

  test('name the one that is off in a sentence, and say that the whole does not fit', () => {
    const { taken } = liveArrivals(tracks({ 'tweeter-right': -0.5 }), speakers, settings);
    const [set] = compareMeasured(taken, result, 20);
    if (!set) throw new Error('no set');
    expect(outlierWords(set, wording)).toEqual([
      expect.stringMatching(
        /^Tweeter-right arrives 0\.(49|50|51) ms \(\d+ mm\) earlier than predicted, where ±0\.0\d ms \(\d+ mm\) was to be expected\.$/,
      ),
    ]);
    expect(wholeWords(set, wording)).toMatch(/^The other 5 arrive as predicted/);
  });

  test('take the processor’s delays off', () => {
    const delays = { 'tweeter-left': 1.5 };
    const { taken } = liveArrivals(tracks(delays), speakers, { ...settings, delays });
    const [set] = compareMeasured(taken, result, 20);
    expect(set?.agrees).toBe(true);
  });

  test('that are silent, of another rate, bound twice or not at all say so, and the others count', () => {
    const [first, second, third, ...rest] = tracks();
    if (!first || !second || !third) throw new Error('no tracks');
    const { rows, taken } = liveArrivals(
      [
        { ...first, sound: { samples: new Float64Array(900), startMs: 0 } },
        { ...second, sampleRateHz: 44100 },
        { ...third, speaker: null },
        { ...third, sampleRateHz: null },
        ...rest,
        { ...(rest[0] as Track), key: 'again' },
      ],
      speakers,
      settings,
    );
    expect(rows.map(({ problem }) => problem)).toEqual([
      'the response is silent',
      'it has 44.1 kHz where most have 48 kHz: measured in another run',
      null,
      'the file does not say its sample rate',
      ...rest.map(() => null),
      'another file above is already bound to this speaker',
    ]);
    expect(taken.map(({ speaker }) => speaker)).toEqual(rest.map(({ speaker }) => speaker));
  });
});

describe('places found by readings', () => {
  const w = { unit: 'mm', name: 'left tweeter', reading: (id: string) => `tape ${id}` } as const;
  const fix: PositionFix = {
    position: [10, 0, -20],
    sd: [2, 2, 2],
    within95: 5.6,
    mirror: null,
    residuals: [],
    blunders: [],
    suspects: [],
  };
  const point = { id: 'roof', name: 'roof lamp', point: [0, 0, 0] as Vec3 };

  test('are told by how far and which way, and how sure that is', () => {
    expect(placeWords(fix, [0, 0, 0], 4, w)).toBe(
      'By 4 readings the left tweeter stands 22 mm from where the plan has it: 10 mm rearward and 20 mm down. With 95 in 100 it lies within 5.6 mm of the place found.',
    );
    expect(placeWords(fix, [9, 0, -19], 4, w)).toContain(
      'where the plan has it, as far as they can',
    );
    expect(awayWords([0, 0, 0], [-3, 4, 0.2], 'mm')).toBe('3 mm forward and 4 mm to the right');
  });

  test('name blunders, contradictions and mirror images with what to do', () => {
    const doubtful = {
      ...fix,
      mirror: [10, 0, 300] as Vec3,
      blunders: [{ id: '2', off: -52 }],
      suspects: ['0', '1'],
    };
    const [blunder, suspects, mirror] = doubtWords(doubtful, [point], w);
    expect(blunder).toBe(
      'The tape 2 is 52 mm too short: the others agree without it. It is left out; take it again.',
    );
    expect(suspects).toContain('tape 0; tape 1. Take one to the roof lamp as well.');
    expect(mirror).toContain('320 mm away');
    expect(mirror).toContain('A tape to the roof lamp settles it.');
  });

  test('that are not found say why and what to take next', () => {
    for (const [why, words] of [
      ['few', 'three are the least'],
      ['line', 'along one line'],
      ['weak', 'in the plane'],
    ] as const) {
      const sentence = unfixedWords({ ok: false, why }, 2, [point], w);
      expect(sentence).toContain(words);
      expect(sentence).toContain('Best take a tape to: roof lamp.');
    }
  });

  test('come from readings to either end, and from the ones whose other end the cabin has', () => {
    const cabin = buildCabin(plan);
    if (!cabin.ok) throw new Error(cabin.error.message);
    const known = { cabin: cabin.cabin, placed: result.placed };
    const what = { kind: 'speaker', speaker: 'tweeter-left' } as const;
    const heel = { kind: 'reference', reference: 'heel' } as const;
    const readings: Reading[] = [
      { from: what, to: heel, distance: 900, by: 'tape' },
      { from: heel, to: what, distance: 901, by: 'tape', sd: 5 },
      { from: what, to: { kind: 'reference', reference: 'gone' }, distance: 4, by: 'tape' },
      { from: what, to: { kind: 'head', seat: 'front-left' }, distance: 640, by: 'sound', sd: 4 },
      { from: { kind: 'speaker', speaker: 'tweeter-right' }, to: heel, distance: 9, by: 'tape' },
    ];
    const found = distancesTo(what, readings, known);
    expect(found.map(({ id, distance }) => [id, distance])).toEqual([
      ['0', 900],
      ['1', 901],
      ['3', 640],
    ]);
    // The head itself is only known to ±10 mm.
    expect(found.map(({ sd }) => Number(sd.toFixed(2)))).toEqual([3, 5, 10.77]);
    expect(
      sameEnd({ kind: 'ear', seat: 'a', side: 'left' }, { seat: 'a', side: 'left', kind: 'ear' }),
    ).toBe(true);
  });

  test('are put into the plan as a free point, and the twin stays', () => {
    const after = produce(plan, standWhereFixed('a', 'tweeter-left', [500, -600, 800]));
    const [left, right] = ['tweeter-left', 'tweeter-right'].map((id) =>
      after.options[0]?.speakers.find((one) => one.id === id),
    );
    expect(left?.position).toEqual([500, -600, 800]);
    expect(left?.mount).toBeUndefined();
    expect(right).toEqual(option.speakers.find(({ id }) => id === 'tweeter-right'));
    expect(after.options[0]?.untied).toContain('tweeter');
  });

  test('stand in the sheet with the points that help most first', () => {
    const stage = { plan, cabin: answer.ok ? answer.cabin : null, option, result } as Stage;
    const html = renderToStaticMarkup(
      <SurveyPart
        stage={stage}
        option={option}
        unit="mm"
        locked={false}
        first={{ kind: 'speaker', speaker: 'tweeter-left' }}
      />,
    );
    expect(html).toContain('Nothing was measured to the left tweeter yet');
    expect(html).toContain('<optgroup label="Take next">');
    expect(html).toContain('No readings yet');
  });
});
