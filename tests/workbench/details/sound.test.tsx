import { produce } from 'immer';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { evaluatePlan, type OffAxisResponse, type SpeakerInput } from '../../../src/geometry';
import { demoPlan } from '../../../src/plan/demo';
import { type PlanRecipe, setCrossover, setPairing, setPolarity } from '../../../src/plan/edits';
import type { Plan } from '../../../src/plan/types';
import {
  coverageWords,
  seatsBeyond,
  sentence,
} from '../../../src/workbench/details/sound/coverage';
import {
  NO_PAIR,
  pairChoices,
  pairWarning,
  twinName,
} from '../../../src/workbench/details/sound/pair-choices';
import { curvesOf, PICTURE } from '../../../src/workbench/details/sound/picture-curves';
import { ResponsesDialog } from '../../../src/workbench/details/sound/responses-dialog';
import { ResponsesPicture } from '../../../src/workbench/details/sound/responses-picture';
import { SpeakerResponses } from '../../../src/workbench/details/sound/speaker-responses';
import { usualPolarity } from '../../../src/workbench/details/sound/usual-polarity';
import { WayNote } from '../../../src/workbench/details/way-note';
import type { Board } from '../../../src/workbench/parts/use-board';

const edited = (...edits: PlanRecipe[]): Plan =>
  produce(demoPlan(), (draft) => {
    for (const edit of edits) edit(draft);
  });

const optionOf = (plan: Plan) => {
  const [option] = plan.options;
  if (!option) throw new Error('no option');
  return option;
};

function boardOf(plan: Plan, seatId = 'front-left'): Board {
  const answer = evaluatePlan(plan);
  if (!answer.ok) throw new Error(answer.error.message);
  const result = answer.options[0] ?? null;
  const seat = result?.seats.find(({ id }) => id === seatId) ?? null;
  return { cabin: answer.cabin, option: optionOf(plan), result, seat };
}

const text = (node: React.ReactNode): string =>
  renderToStaticMarkup(node)
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();

const response = (offAxisDeg: number, levels: number[], from = 500): OffAxisResponse => ({
  offAxisDeg,
  frequencyHz: levels.map((_, i) => from * 2 ** i),
  levelDb: levels,
});

describe('the usual polarity of a speaker', () => {
  const second = { family: 'linkwitz-riley', order: 2, frequencyHz: 3000 } as const;

  test('is swapped above a crossover of order 2, which is named', () => {
    const option = optionOf(edited(setCrossover('a', 'midrange', 'tweeter', second)));
    expect(usualPolarity(option, 'tweeter-left')).toEqual({
      inverted: true,
      because: 'Linkwitz-Riley order 2 above the mids at 3 kHz',
    });
  });

  test('is told as if the plan did not say: what it says changes nothing about it', () => {
    const crossover = setCrossover('a', 'midrange', 'tweeter', second);
    const said = optionOf(edited(crossover, setPolarity('a', 'tweeter-left', false)));
    expect(said.speakers.find(({ id }) => id === 'tweeter-left')?.inverted).toBe(false);
    expect(usualPolarity(said, 'tweeter-left').inverted).toBe(true);
  });

  test('of the lowest pair is kept, and no crossover is named for it', () => {
    expect(usualPolarity(optionOf(demoPlan()), 'midbass-right')).toEqual({
      inverted: false,
      because: null,
    });
  });
});

describe('the pairs a speaker can belong to', () => {
  const { speakers } = optionOf(demoPlan());
  const left = speakers.find(({ id }) => id === 'tweeter-left') as SpeakerInput;

  test('are those of its role, one of its own, and none', () => {
    expect(pairChoices(left, speakers)).toEqual([
      { value: 'tweeter', label: 'tweeters' },
      { value: 'tweeter-2', label: 'a pair of its own' },
      { value: NO_PAIR, label: 'none: it stands alone' },
    ]);
  });

  test('are no new one for a speaker that is alone in its pair already', () => {
    const plan = edited(setPairing('a', 'tweeter-right', { pair: null }));
    const values = pairChoices(left, optionOf(plan).speakers).map(({ value }) => value);
    expect(values).toEqual(['tweeter', NO_PAIR]);
  });

  test('a speaker taken out of its pair can go back, or found one', () => {
    const plan = edited(setPairing('a', 'tweeter-right', { pair: null }));
    const own = optionOf(plan).speakers;
    const right = own.find(({ id }) => id === 'tweeter-right') as SpeakerInput;
    expect(pairChoices(right, own).map(({ value }) => value)).toEqual([
      'tweeter',
      'tweeter-2',
      NO_PAIR,
    ]);
    expect(pairWarning(right, own)).toBeNull();
    expect(twinName(right, own)).toBeNull();
    // Every choice offered is one the edit takes.
    for (const pair of ['tweeter', 'tweeter-2']) {
      const after = produce(plan, (draft) => setPairing('a', 'tweeter-right', { pair })(draft));
      expect(optionOf(after).speakers.find(({ id }) => id === 'tweeter-right')?.pair).toBe(pair);
    }
  });

  test('it is said whom a change of sides takes along', () => {
    expect(twinName(left, speakers)).toBe('right tweeter');
  });
});

describe('what measured responses cover', () => {
  test('is said with angles in order and the frequencies all of them have', () => {
    const some = [response(30, [0, -1, -2]), response(0, [0, 0, 0, 0]), response(7.5, [0, 0, 0])];
    expect(coverageWords(some)).toBe('0°, 7.5° and 30°, from 500 Hz to 2 kHz');
    expect(coverageWords([response(0, [0, 0])])).toBe('0°, from 500 Hz to 1 kHz');
    expect(coverageWords([response(0, [0, 0]), response(30, [0, 0], 4000)])).toBe(
      '0° and 30°, with no frequency in common',
    );
  });

  test('seats farther off the axis than was measured are named, each with its angle', () => {
    const { result } = boardOf(demoPlan());
    if (!result) throw new Error('no result');
    const angles = result.seats.map(
      ({ arrivals }) => arrivals.find(({ speaker }) => speaker === 'tweeter-left')?.offAxisDeg ?? 0,
    );
    const between = (Math.min(...angles) + Math.max(...angles)) / 2;
    const reach = (deg: number) =>
      seatsBeyond([response(0, [0, 0]), response(deg, [0, 0])], result, 'tweeter-left');
    expect(reach(180)).toEqual([]);
    expect(reach(between)).toHaveLength(1);
    expect(reach(between)[0]).toContain(`${Math.max(...angles).toFixed(0)}° off the axis`);
    expect(reach(Math.min(...angles) / 2)).toHaveLength(result.seats.length);
  });

  test('refusals become sentences, but a file’s name stays as it is written', () => {
    expect(sentence('the axis is missing')).toBe('The axis is missing.');
    expect(sentence('bad.txt, line 3: no')).toBe('bad.txt, line 3: no.');
    expect(sentence('at which angle?')).toBe('At which angle?');
  });
});

describe('the picture of the responses', () => {
  const many = [0, 10, 20, 30, 45, 60, 75, 90].map((deg) =>
    response(deg, [80, 80 - deg / 20, 80 - deg / 8, 80 - deg / 3]),
  );

  test('keeps every curve inside its frame and no label on another', () => {
    const picture = curvesOf(many, [500, 4000]);
    if (!picture) throw new Error('no picture');
    const labels = picture.curves.map(({ labelY }) => labelY).sort((a, b) => a - b);
    for (const [i, y] of labels.entries())
      if (i > 0) expect(y - (labels[i - 1] ?? 0)).toBeGreaterThanOrEqual(14);
    for (const { points } of picture.curves) {
      for (const point of points.split(' ')) {
        const [x = -1, y = -1] = point.split(',').map(Number);
        expect(x).toBeGreaterThanOrEqual(PICTURE.left);
        expect(x).toBeLessThanOrEqual(PICTURE.width - PICTURE.right + 0.1);
        expect(y).toBeGreaterThanOrEqual(PICTURE.top);
        expect(y).toBeLessThanOrEqual(PICTURE.height - PICTURE.bottom + 0.1);
      }
    }
  });

  test('draws levels against the axis: the axis itself lies at 0 dB', () => {
    const picture = curvesOf(many, undefined);
    const axis = picture?.curves.find(({ offAxisDeg }) => offAxisDeg === 0);
    const ys = new Set(axis?.points.split(' ').map((point) => point.split(',')[1]));
    expect([...ys]).toEqual([picture?.yAt(0).toFixed(1)]);
    expect(picture?.levels).toContain(0);
  });

  test('is none without the axis or with nothing in common', () => {
    expect(curvesOf([response(30, [0, 0])], undefined)).toBeNull();
    const svg = renderToStaticMarkup(
      <ResponsesPicture
        responses={[response(0, [0, 0]), response(9, [0, 0], 8000)]}
        bandHz={undefined}
      />,
    );
    expect(svg).toBe('');
  });
});

describe('beside a speaker', () => {
  const partOf = (plan: Plan, id: string) => {
    const board = boardOf(plan);
    const speaker = board.option?.speakers.find((one) => one.id === id) as SpeakerInput;
    return { board, optionId: 'a', speaker, name: 'left mid' };
  };

  test('it is said from where on it beams, by its diaphragm', () => {
    const said = text(<SpeakerResponses {...partOf(demoPlan(), 'midrange-left')} />);
    // A piston of 58 mm at 343.99 m/s loses half its power at 90° where ka = 1.61634:
    // f = 1.61634 c / (2 pi a) = 3051 Hz; two digits are shown.
    expect(said).toContain('Begins to beam at about 3.1 kHz');
    expect(said).toContain('piston of its diaphragm’s size');
  });

  test('measured responses are told, and what they leave untold', () => {
    const plan = edited((draft) => {
      const speaker = draft.options[0]?.speakers.find(({ id }) => id === 'midrange-left');
      if (speaker)
        speaker.responses = [
          response(0, [0, 0, 0, 0, 0], 250),
          response(60, [0, 0, -1, -3, -6], 250),
        ] as never;
    });
    const said = text(<SpeakerResponses {...partOf(plan, 'midrange-left')} />);
    expect(said).toContain('Measured: 0° and 60°, from 250 Hz to 4 kHz.');
    expect(said).toContain('cannot be told: the measured responses do not reach 90° off the axis');
    expect(said).toContain('A piston of its size would from about 3.1 kHz.');
    expect(said).toContain('Remove them');
    const dialog = text(
      <ResponsesDialog {...partOf(plan, 'midrange-left')} open tied onClose={() => {}} />,
    );
    expect(dialog).toContain('Now in the plan 0° and 60°, from 250 Hz to 4 kHz.');
    expect(dialog).toContain('Left and right are tied: both get them.');
  });

  test('what its line meets is named once, with what the way round costs', () => {
    const board = boardOf(demoPlan());
    const arrival = board.seat?.arrivals.find(({ speaker }) => speaker === 'midbass-right');
    expect(arrival?.line).toBe('blocked');
    const said = text(<WayNote board={board} speakerId="midbass-right" />);
    expect(said).toMatch(
      /^To the front left seat: blocked by the .*; the path goes round the .*, \+\d+ mm\.$/,
    );
    const free = board.seat?.arrivals.find(({ line }) => line === 'clear');
    expect(text(<WayNote board={board} speakerId={free?.speaker ?? ''} />)).toBe('');
  });
});
