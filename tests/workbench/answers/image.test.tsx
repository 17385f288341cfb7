import fc from 'fast-check';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { createEvaluator, createImageStudy, type SeatImage } from '../../../src/geometry';
import { demoPlan } from '../../../src/plan/demo';
import { Fan } from '../../../src/workbench/answers/image/fan';
import { boxOf, fanLabels, meet } from '../../../src/workbench/answers/image/fan-labels';
import {
  fanRays,
  fanSize,
  gatherDirections,
} from '../../../src/workbench/answers/image/fan-layout';
import { ImageTable } from '../../../src/workbench/answers/image/image-table';
import { angleWords, imageSentence } from '../../../src/workbench/answers/image/image-words';
import { lateralDegOf } from '../../../src/workbench/answers/image/lateral';

const OCTAVES = [63, 125, 250, 500, 1000, 2000, 4000, 8000, 16000];

type Angle = number | null | 'limit';

/** An image with these angles, degrees; "limit": 90° to the left or more; null: no angle. */
function imageOf(on: readonly Angle[], off: readonly Angle[] = on.map(() => 0)): SeatImage {
  const bands = (angles: readonly Angle[]) =>
    OCTAVES.map((frequencyHz, i) => {
      const angle = angles[i] ?? null;
      return {
        frequencyHz,
        cue: frequencyHz < 1500 ? ('time' as const) : ('level' as const),
        time: null,
        levelDb: null,
        coherence: null,
        lateralDeg: angle === 'limit' ? -90 : angle,
        atLimit: angle === 'limit',
        ...(angle === null && { reason: 'no speaker plays this octave' }),
      };
    });
  return { seat: 'front-left', octavesHz: OCTAVES, on: bands(on), off: bands(off) };
}

const said = (image: SeatImage) => imageSentence(image, 'front left seat');

describe('the sentence on the image', () => {
  it('says how near to straight ahead the sound stands, from 250 Hz to 4 kHz', () => {
    expect(said(imageOf([50, 40, 4, -3, 2, 0, 1, 60, 70]))).toBe(
      'With delays and gains a centre-panned sound stands within 4° of straight ahead from 250 Hz ' +
        'to 4 kHz at the front left seat; without them it stands within 0° of straight ahead.',
    );
  });

  it('names the side it leans to, and both ends when it is spread', () => {
    const image = imageOf([0, 0, 7, 15, 12, 9, 8, 0, 0], [0, 0, 2, 'limit', -21, 0, 0, 0, 0]);
    expect(said(image)).toBe(
      'With delays and gains a centre-panned sound leans 7° to 15° to the right from 250 Hz to ' +
        '4 kHz at the front left seat; without them it is spread from 90° left or more to 2° right.',
    );
    const left = said(imageOf([0, 0, -38, -38, -38, -38, -38]));
    expect(left).toContain('leans 38° to the left from 250 Hz to 4 kHz');
    const far = said(imageOf([0, 0, -10, 'limit', -30, -20, -12]));
    expect(far).toContain('leans 10° to 90° or more to the left');
  });

  it('tells only the octaves that have an angle, and says so when none has', () => {
    expect(said(imageOf([null, null, null, null, null, null, 5, 6, 7]))).toContain('at 4 kHz at');
    expect(said(imageOf([12, 14]))).toContain('leans 12° to 14° to the right from 63 Hz to 125 Hz');
    expect(said(imageOf([]))).toBe('No image can be told at the front left seat.');
  });

  it('writes a dash for no angle and never a plus or a minus', () => {
    expect(angleWords(null, false)).toBe('–');
    expect(angleWords(-12.6, false)).toBe('13° left');
    expect(angleWords(0.3, false)).toBe('ahead');
    expect(angleWords(90, true)).toBe('90° right or more');
  });
});

describe('how far to the side a speaker stands', () => {
  // Facing forward: X is rearward, so the right ear is at +Y.
  const ears = { left: [0, -76, 0], right: [0, 76, 0] } as const;

  it('is 30° for one whose way to the side is half its distance', () => {
    expect(lateralDegOf([-Math.sqrt(3), 1, 0], ears)).toBeCloseTo(30, 9);
    expect(lateralDegOf([-Math.sqrt(3), -1, 0], ears)).toBeCloseTo(-30, 9);
  });

  it('turns with the head', () => {
    const turned = { left: [-76, 0, 0], right: [76, 0, 0] } as const;
    expect(lateralDegOf([1000, 0, 0], turned)).toBeCloseTo(90, 9);
  });

  it('is nothing at the head itself, or with both ears in one place', () => {
    expect(lateralDegOf([0, 0, 0], ears)).toBeNull();
    expect(lateralDegOf([1, 2, 3], { left: [0, 0, 0], right: [0, 0, 0] })).toBeNull();
  });
});

describe('the fan', () => {
  const angle = fc.option(fc.double({ min: -90, max: 90, noNaN: true }));
  const angles = fc.array(angle, { minLength: 9, maxLength: 9 });

  it('lets no label stand on another, whatever the angles and the width', () => {
    fc.assert(
      fc.property(angles, angles, fc.integer({ min: 240, max: 560 }), (on, off, width) => {
        const labels = fanLabels(fanRays(imageOf(on, off), fanSize(width, 46)));
        for (const [i, one] of labels.entries())
          for (const other of labels.slice(i + 1))
            expect(meet(boxOf(one), boxOf(other)), `${one.text} on ${other.text}`).toBe(false);
      }),
    );
  });

  it('labels every octave when all stand in one direction, ahead or far to the side', () => {
    for (const deg of [0, 10, -35, 60]) {
      const rays = fanRays(imageOf(OCTAVES.map(() => deg)), fanSize(540, 46));
      expect(fanLabels(rays), `${deg}°`).toHaveLength(9);
    }
  });

  it('puts what seems to come from the right on the right, farther out the higher it is', () => {
    const [low, high] = fanRays(imageOf([20, 20]), fanSize(540, 46));
    expect(high && low && high.radius > low.radius).toBe(true);
    const [label] = fanLabels(fanRays(imageOf([90]), fanSize(540, 46)));
    expect(label && label.x > 0).toBe(true);
  });

  it('is drawn within its own edges, without a number that is none', () => {
    const svg = renderToStaticMarkup(
      <Fan
        image={imageOf([90, -90, null, 0, 10, 20, 30, 40, 50])}
        width={360}
        speakers={[{ side: 'left', deg: -40 }]}
      />,
    );
    expect(svg).not.toMatch(/NaN|Infinity/);
    for (const [, x] of svg.matchAll(/<text[^>]* x="([-\d.]+)"/g))
      expect(Math.abs(Number(x))).toBeLessThan(180);
  });

  it('gives speakers in nearly one direction one mark, but never the left and the right one', () => {
    const groups = gatherDirections([
      { side: 'left', deg: -22 },
      { side: 'left', deg: -18 },
      { side: 'right', deg: -18 },
      { side: 'right', deg: 50 },
    ]);
    expect(groups.map((group) => group.length)).toEqual([2, 1, 1]);
  });
});

describe('the table beside the fan', () => {
  it('has the angles the study tells for the demo, on and off, and what the ears go by', () => {
    const plan = demoPlan();
    const answer = createEvaluator()(plan);
    if (!answer.ok) throw new Error(answer.error.message);
    const [option, result] = [plan.options[0], answer.options[0]];
    if (!option || !result) throw new Error('the demo has no option');
    const stage = { plan, cabin: answer.cabin, option, result };
    const image = createImageStudy()(stage, 'front-right');
    const html = renderToStaticMarkup(
      <ImageTable image={image} speakers={option.speakers} seat="front right seat" />,
    );
    for (const [i, hz] of ['63 Hz', '125 Hz', '250 Hz', '500 Hz', '1 kHz'].entries()) {
      const [on, off] = [image.on[i], image.off[i]];
      expect(html).toContain(
        `${hz}</th><td class="strong">${angleWords(on?.lateralDeg ?? null, on?.atLimit ?? false)}` +
          `</td><td>${angleWords(off?.lateralDeg ?? null, off?.atLimit ?? false)}</td>`,
      );
    }
    expect(html).not.toContain('Why not');
  });

  it('says in a column why an octave has no angle', () => {
    const image = imageOf([null, 3, 3, 3, 3, 3, 3, 3, 3], [null]);
    const html = renderToStaticMarkup(<ImageTable image={image} speakers={[]} seat="seat" />);
    expect(html).toContain('Why not');
    expect(html).toContain('No speaker plays this octave.');
    expect(html).toContain('Without: No speaker plays this octave.');
  });
});
