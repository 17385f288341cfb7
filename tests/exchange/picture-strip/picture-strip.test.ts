import { parseHTML } from 'linkedom';
import { describe, expect, test } from 'vitest';
import {
  isReached,
  type StripRow,
  type StripWords,
  type SvgNode,
  stripDrawing,
  svgText,
  waveStates,
  weightOf,
} from '../../../src/exchange/picture-strip';
import { linesOfText } from '../../../src/exchange/picture-strip/lines-of-text';
import { carFromAbove, headShape, slowMotion, stripMoments, windowOf } from '../../../src/geometry';
import { demoPlan } from '../../../src/plan/demo';
import { stageOf } from '../../geometry/study/stages';

const stage = stageOf(demoPlan());
const [seat] = stage.cabin.seats;
if (!seat) throw new Error('the demo has no seat');
const car = carFromAbove(stage.cabin, seat.head[2]);
const [none, late] = [slowMotion(stage, seat.id, 'none'), slowMotion(stage, seat.id, 'aligned')];
const window = windowOf(car, seat, [none, late]);
const row = (motion: typeof none, title = 'Mids & more'): StripRow => ({
  car,
  seat,
  motion,
  window,
  title,
  note: 'At the front left seat.',
});
const WORDS: StripWords = {
  time: (ms) => `${ms.toFixed(2)} ms`,
  caption: ({ arriving }) => (arriving.length > 0 ? `${arriving.length} arrive` : 'under way'),
  arrived: (count, of) => `${count} of ${of}`,
  key: 'How to read it.',
  title: 'Arrival',
};
const strip = (rows: readonly StripRow[], width = 180) =>
  stripDrawing(rows, WORDS, { width, id: 's' });

const all = (node: SvgNode, tag: SvgNode['tag']): SvgNode[] => [
  ...(node.tag === tag ? [node] : []),
  ...node.children.flatMap((child) => (typeof child === 'string' ? [] : all(child, tag))),
];
/** The pictures within a strip: drawings within the drawing. */
const pictures = (drawing: SvgNode) => all(drawing, 'svg').slice(1);
const fronts = (picture: SvgNode) =>
  all(picture, 'circle').filter(({ attributes }) => attributes.strokeOpacity !== undefined);

describe('a strip of pictures', () => {
  test('has a picture for each moment, with its clock and what happens', () => {
    const { drawing } = strip([row(none)]);
    const moments = stripMoments(none);
    expect(pictures(drawing)).toHaveLength(moments.length);
    const said = all(drawing, 'text').map(({ children }) => children[0]);
    for (const { time, arrived } of moments) {
      expect(said).toContain(WORDS.time(time));
      expect(said).toContain(`${arrived} of 6`);
    }
    expect(said.at(-1)).toBe('How to read it.');
  });

  test('draws every wave as large as it cuts the height of the ears at that moment', () => {
    const moments = stripMoments(none);
    for (const [i, picture] of pictures(strip([row(none)]).drawing).entries()) {
      const time = moments[i]?.time ?? Number.NaN;
      const want = none.waves.flatMap(({ centre, start }) => {
        const radius = (time - start) * none.speed;
        const away = Math.abs(centre[2] - car.height);
        return radius > away ? [Math.sqrt(radius ** 2 - away ** 2)] : [];
      });
      const drawn = fronts(picture).map(({ attributes }) => Number(attributes.r));
      expect(drawn.length).toBe(want.length);
      drawn.forEach((r, k) => {
        expect(Math.abs(r - (want[k] ?? 0))).toBeLessThan(1e-6);
      });
    }
  });

  test('tells left from right without colour: right lines are dashed, marks differ in shape', () => {
    const last = pictures(strip([row(none)]).drawing).at(-1) as SvgNode;
    const dashed = fronts(last).filter(
      ({ attributes }) => attributes.strokeDasharray !== undefined,
    );
    expect(dashed).toHaveLength(3);
    expect(all(last, 'rect')).toHaveLength(3);
  });

  test('keeps all rows to one scale and lays them under each other', () => {
    const two = strip([row(none), row(late)]);
    const widths = new Set(pictures(two.drawing).map(({ attributes }) => attributes.width));
    expect(widths.size).toBe(1);
    const tops = [...new Set(pictures(two.drawing).map(({ attributes }) => Number(attributes.y)))];
    const [wide] = [...widths].map(Number);
    const high = ((wide ?? 0) * (window.rear - window.front)) / (window.right - window.left);
    expect(tops).toHaveLength(2);
    expect((tops[1] ?? 0) - (tops[0] ?? 0)).toBeGreaterThan(high);
    expect(two.height).toBeGreaterThan(strip([row(none)]).height + high);
    // Nothing lies outside the sheet.
    for (const { attributes } of all(two.drawing, 'text'))
      expect(Number(attributes.y)).toBeLessThan(two.height);
  });

  test('draws the car once for a row, not once for a picture', () => {
    const { drawing } = strip([row(none), row(late)]);
    const cars = all(drawing, 'defs').flatMap((defs) => all(defs, 'g'));
    expect(cars).toHaveLength(2);
    const uses = all(drawing, 'use').map(({ attributes }) => attributes.href);
    expect(new Set(uses)).toEqual(new Set(cars.map(({ attributes }) => `#${attributes.id}`)));
    expect(uses).toHaveLength(pictures(drawing).length);
  });
});

describe('the file of a strip', () => {
  test('is an SVG of its size in millimetres that holds all of it', () => {
    const { drawing, width, height } = strip([row(none)]);
    const text = svgText(drawing);
    const { document } = parseHTML(text.replace(/^<\?xml.*\?>\n/, ''));
    const svg = document.querySelector('svg');
    expect(svg?.getAttribute('xmlns')).toBe('http://www.w3.org/2000/svg');
    expect(svg?.getAttribute('width')).toBe(`${width}mm`);
    expect(svg?.getAttribute('height')).toBe(`${height}mm`);
    expect(document.querySelectorAll('circle')).toHaveLength(all(drawing, 'circle').length);
    expect(text).not.toMatch(/NaN|Infinity|undefined|style=|strokeWidth/);
    expect(text).toContain('stroke-width="');
    expect(text).toContain('clip-path="url(#s-0-cut)"');
  });

  test('writes names as text, whatever they hold', () => {
    const evil = '<img onerror="x"> & \u0007\ud800 ok';
    const text = svgText(strip([row(none, evil)]).drawing);
    expect(text).not.toContain('<img');
    expect(text).toContain('&lt;img onerror=&quot;x&quot;&gt; &amp;  ok');
  });
});

describe('a wave from above', () => {
  test('is before, coming, and past once it is at the middle of the head', () => {
    const heads = late.reaches.filter(({ at }) => at === 'head');
    for (const { speaker, time } of heads) {
      const start = late.waves.find((wave) => wave.speaker === speaker)?.start ?? 0;
      const stageAt = (when: number) =>
        waveStates(late, when, car.height).find(({ wave }) => wave.speaker === speaker)?.stage;
      if (start > 0) expect(stageAt(start - 1e-6)).toBe('before');
      expect(stageAt(start)).toBe('coming');
      expect(stageAt(time - 1e-6)).toBe('coming');
      expect(stageAt(time)).toBe('past');
    }
  });

  test('reaches an ear when the first sound does', () => {
    const first = Math.min(
      ...none.reaches.filter(({ at }) => at === 'left').map(({ time }) => time),
    );
    expect(isReached(none, 'left', first - 1e-9)).toBe(false);
    expect(isReached(none, 'left', first)).toBe(true);
  });

  test('is drawn the heavier the lower its speaker plays', () => {
    expect([weightOf('tweeter'), weightOf('midrange'), weightOf('subwoofer')]).toEqual([1, 2, 3]);
  });
});

describe('a head from above', () => {
  test('looks where it faces: ahead is up the page, a turn to the right turns it so', () => {
    const ahead = headShape({ ...seat, facingDeg: 0 }).nose[1];
    expect(ahead?.[0]).toBeCloseTo(seat.head[1], 6);
    expect(ahead?.[1]).toBeLessThan(seat.head[0] - 70);
    const right = headShape({ ...seat, facingDeg: 90 }).nose[1];
    expect(right?.[0]).toBeGreaterThan(seat.head[1] + 70);
    expect(right?.[1]).toBeCloseTo(seat.head[0], 6);
  });
});

test('text is broken at words, and a word too long stands alone', () => {
  expect(linesOfText('one two three', 8 * 0.54, 1)).toEqual(['one two', 'three']);
  expect(linesOfText('Hochtonlautsprecher da', 6, 1)).toEqual(['Hochtonlautsprecher', 'da']);
  expect(linesOfText('  ', 6, 1)).toEqual([]);
});
