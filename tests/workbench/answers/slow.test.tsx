import { renderToStaticMarkup } from 'react-dom/server';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { slowMotion } from '../../../src/geometry';
import { demoPlan } from '../../../src/plan/demo';
import { slowMotionStore } from '../../../src/store/slow-motion';
import { FromAbove } from '../../../src/workbench/answers/slow/from-above';
import { ReachesTable } from '../../../src/workbench/answers/slow/reaches-table';
import { shownMotions } from '../../../src/workbench/answers/slow/shown-motion';
import {
  nextArrival,
  outcomeWords,
  roundWords,
  stillWords,
} from '../../../src/workbench/answers/slow/slow-words';
import { momentWords, namesOf } from '../../../src/workbench/answers/slow/strip-words';
import {
  playOrPause,
  Transport,
  toNextArrival,
} from '../../../src/workbench/answers/slow/transport';
import { ASIDE, aligned, HEAD, pairAt, stage, stageOf, TWEETER } from '../../geometry/study/stages';

afterEach(() => slowMotionStore.close());

const SPEAKERS = pairAt(TWEETER, [700, 650, 900]);
const at = (alignment: Parameters<typeof aligned>[0], seat = 'left') => {
  const one = stage(SPEAKERS, {
    seats: [
      { id: 'middle', head: HEAD },
      { id: 'left', head: ASIDE },
    ],
    alignment: aligned(alignment),
  });
  const both = { none: slowMotion(one, seat, 'none'), aligned: slowMotion(one, seat, 'aligned') };
  const heads = both.none.reaches.filter((reach) => reach.at === 'head');
  return { one, both, times: heads.map(({ time }) => time) };
};
const ms = (time: number) => `${time.toFixed(2)} ms`;

describe('what the slow motion says', () => {
  it('tells first and last arrival, and what delays make of it', () => {
    const { both, times } = at({ seat: 'left' });
    const [first = 0, last = 0] = times;
    expect(outcomeWords(both)).toMatch(
      new RegExp(
        `^Without delays the first sound reaches the head after ${ms(first)} and the last ${ms(last - first)} later; with them all are there within 0\\.0\\d ms\\.$`,
      ),
    );
  });

  it('says whose delays they are where they are not for this seat', () => {
    expect(outcomeWords(at({ seat: 'middle' }).both)).toMatch(
      /; with the delays for the middle the last comes \d\.\d\d ms after the first\.$/,
    );
    expect(outcomeWords(at({ by: 'seats' }).both)).toContain(
      'with the compromise over several seats the last comes',
    );
  });

  it('does not promise delays that are not to be had', () => {
    const { both } = at({ by: 'seats', seats: [{ id: 'left', weight: 0 }] });
    expect(both.aligned.problem).toBeTruthy();
    expect(outcomeWords(both)).toMatch(/ms later\.$/);
  });

  it('says where the clock stands and who has come', () => {
    const { both, times } = at({ seat: 'left' });
    const [first = 0, last = 0] = times;
    expect(stillWords(both.none, 0, SPEAKERS)).toBe('0.00 ms. No sound has reached the head yet.');
    expect(stillWords(both.none, first, SPEAKERS)).toBe(
      `${ms(first)}. Left tweeter came last; 1 of 2 have reached the head.`,
    );
    expect(stillWords(both.none, last, SPEAKERS)).toBe(`${ms(last)}. All 2 have reached the head.`);
  });

  it('goes from arrival to arrival over all options shown, and ends', () => {
    const { both, times } = at({ seat: 'left' });
    const [first = 0, last = 0] = times;
    expect(nextArrival([both.none], 0)).toBe(first);
    expect(nextArrival([both.none], first)).toBe(last);
    expect(nextArrival([both.none, both.aligned], first)).toBe(
      Math.min(
        last,
        ...both.aligned.reaches
          .filter(({ at }) => at === 'head')
          .map(({ time }) => time)
          .filter((time) => time > first),
      ),
    );
    expect(nextArrival([both.none], last)).toBeNull();
  });

  it('says of a blocked line that what arrives comes round, and how much later than drawn', () => {
    const demo = stageOf(demoPlan());
    const motion = slowMotion(demo, 'front-left', 'none');
    const [note] = roundWords(motion, demo.option.speakers);
    const head = motion.reaches.find((one) => one.speaker === 'midbass-right' && one.at === 'head');
    if (!head) throw new Error('the right midbass is not heard');
    expect(note).toBe(
      `Right midbass: something stands in the way. What arrives comes round it (the dot), ${ms(head.time - head.free)} after the drawn sphere has passed.`,
    );
    const free = at({ seat: 'left' }).both.none;
    expect(roundWords(free, SPEAKERS)).toEqual([]);
  });

  it('names what happens in a picture, and counts what is too much to name', () => {
    const { both } = at({ seat: 'left' });
    const words = (leaving: string[], arriving: string[]) =>
      momentWords({ leaving, arriving }, both.none, SPEAKERS);
    expect(words(['tweeter-left', 'tweeter-right'], [])).toBe('All 2 speakers start');
    expect(words([], ['tweeter-left'])).toBe('Left tweeter arrives');
    expect(words([], ['tweeter-left', 'tweeter-right'])).toBe('All 2 arrive together');
    expect(words([], [])).toBe('On the way');
    expect(namesOf(['tweeter-left', 'tweeter-right', 'x'], SPEAKERS)).toBe(
      'left tweeter and 2 more',
    );
  });
});

const demo = stageOf(demoPlan());
const shown = shownMotions([demo], 'front-left', 'none');
if (!shown) throw new Error('the demo has no front left seat');
const [one] = shown.options;
if (!one) throw new Error('nothing is shown');

/** The text of each cell of a speaker's row. */
function rowOf(html: string, name: string): string[] {
  const row = html.split('<tr').find((part) => part.includes(`>${name}<`)) ?? '';
  return [...row.matchAll(/<td[^>]*>(.*?)<\/td>/g)].map(([, cell = '']) =>
    cell.replace(/<[^>]+>/g, ''),
  );
}

describe('the list of arrivals', () => {
  const list = () =>
    renderToStaticMarkup(
      <ReachesTable title="a" motion={one.motion} speakers={demo.option.speakers} />,
    );

  it('has the engine’s times for both ears and the head, at the beginning all still to come', () => {
    slowMotionStore.endAt(shown.end);
    // Server rendering reads the store as it first was: at the beginning.
    const cells = rowOf(list(), 'left tweeter');
    const arrival = demo.result.seats[0]?.arrivals.find(
      ({ speaker }) => speaker === 'tweeter-left',
    );
    expect(cells).toEqual([
      `not yet, ${arrival?.ears.left.time.toFixed(2)}`,
      `not yet, ${arrival?.time.toFixed(2)}`,
      `not yet, ${arrival?.ears.right.time.toFixed(2)}`,
    ]);
    expect(list()).toContain('data-there="false"');
  });

  it('marks what comes round something', () => {
    expect(rowOf(list(), 'right midbass')[1]).toMatch(/^comes round, not yet, /);
    expect(rowOf(list(), 'right tweeter')[1]).not.toContain('comes round');
  });
});

describe('less motion', () => {
  const buttons = (calm: boolean) =>
    renderToStaticMarkup(<Transport motions={[one.motion]} calm={calm} />);

  it('invites to play only where the system does not ask for less', () => {
    slowMotionStore.endAt(shown.end);
    expect(buttons(false)).toMatch(/class="primary"[^>]*>(<svg.*?<\/svg>)Play</);
    expect(buttons(true)).toContain('Play all the same');
    expect(buttons(true)).toMatch(/class="primary"[^>]*>Next arrival</);
  });

  it('steps from arrival to arrival without anything moving by itself', () => {
    slowMotionStore.open();
    slowMotionStore.endAt(shown.end);
    const heads = one.motion.reaches.filter((reach) => reach.at === 'head');
    for (const { time } of heads) {
      toNextArrival([one.motion]);
      expect(slowMotionStore.getState()).toMatchObject({ time, playing: false });
    }
    toNextArrival([one.motion]);
    expect(slowMotionStore.getState().time).toBe(0);
  });
});

it('the drawing holds a wave, a mark and two ears, and no more than it changes in place', () => {
  const html = renderToStaticMarkup(<FromAbove shown={one} window={shown.window} width={240} />);
  expect(html.match(/data-wave=/g)).toHaveLength(6);
  expect(html.match(/data-ear=/g)).toHaveLength(2);
  expect(html.match(/class="slow-speaker /g)).toHaveLength(6);
  expect(html).not.toContain('NaN');
});

it('both options are looked at over one part of the car, until the last of all has arrived', () => {
  const plan = demoPlan();
  const other = stageOf({ ...plan, options: [...plan.options].reverse() });
  const both = shownMotions([demo, other], 'front-left', 'aligned');
  expect(both?.options).toHaveLength(2);
  expect(both?.end).toBe(Math.max(...(both?.options.map(({ motion }) => motion.end) ?? [])));
  expect(shownMotions([demo], 'nowhere', 'none')).toBeNull();
});

it('Space plays where it stands and stops where it plays', () => {
  const ask = vi.fn(() => 1);
  const cancel = vi.fn();
  vi.stubGlobal('requestAnimationFrame', ask);
  vi.stubGlobal('cancelAnimationFrame', cancel);
  slowMotionStore.endAt(4);
  playOrPause();
  expect(slowMotionStore.getState().playing).toBe(true);
  expect(ask).toHaveBeenCalledOnce();
  playOrPause();
  expect(slowMotionStore.getState().playing).toBe(false);
  expect(cancel).toHaveBeenCalledWith(1);
  vi.unstubAllGlobals();
});
