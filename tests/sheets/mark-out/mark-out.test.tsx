import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { CAUTIONS } from '../../../src/exchange';
import { markOut, type SpeakerInput, type Vec3 } from '../../../src/geometry';
import {
  addOption,
  aimSpeaker,
  changeSpeaker,
  mountSpeaker,
  type PlanRecipe,
  placeSpeakerAt,
  setRing,
} from '../../../src/plan/edits';
import { markOutBlocks } from '../../../src/sheets/mark-out';
import { speakerMarks } from '../../../src/sheets/mark-out/mark-data';
import { apart } from '../../../src/sheets/mark-out/neighbourhood-drawing';
import { readScale, scaleSentence } from '../../../src/sheets/mark-out/printer-check';
import { printerScale } from '../../../src/sheets/mark-out/printer-scale';
import { windowOf } from '../../../src/sheets/mark-out/template-layout';
import { PAGE_SIZES } from '../../../src/sheets/page';
import { cautionsOfOption } from '../../../src/sheets/parts/cautions';
import { wordsOf } from '../../../src/sheets/words/use-words';
import { contentOf, factsOf, factsOfPlan, plainText } from './papers';

const [en, de] = [wordsOf('en', 'mm'), wordsOf('de', 'mm')];

/** The midbasses of the demo on rings, turned 10° up and out of their doors. */
const ON_RINGS: readonly PlanRecipe[] = [
  aimSpeaker('a', 'midbass-left', { kind: 'direction', direction: [0, 0.95, 0.3] }),
  mountSpeaker('a', 'midbass-left', { panel: 'door-lower-left', u: 0.14, v: 0.4, standoff: 40 }),
  setRing('a', 'midbass-left', { screws: 6 }),
];

const pieceText = (words: typeof en, facts: ReturnType<typeof factsOf>, id: string) =>
  plainText(renderToStaticMarkup(contentOf(markOutBlocks(words, facts, 'A4'), id)));

describe('the mark-out sheet', () => {
  test('tells each spot as the engine has it, in both languages', () => {
    const facts = factsOf();
    const marks = markOut(facts.cabin, facts.option.speakers, facts.result.placed);
    for (const mark of marks) {
      const [english, german] = [en, de].map((words) =>
        pieceText(words, facts, `spot-${mark.speaker}`),
      ) as [string, string];
      for (const { distance } of mark.tapes) expect(english).toContain(`${distance.toFixed(0)} mm`);
      expect(english).toContain(`within ${mark.within95?.toFixed(1)} mm of the spot`);
      expect(german).toContain(`höchstens ${mark.within95?.toFixed(1).replace('.', ',')} mm neben`);
      expect(english).toContain(`${mark.aboveSill?.toFixed(0)} mm above the top of the sill`);
      for (const { deg } of mark.face ?? [])
        expect(english).toContain(`${Math.abs(deg).toFixed(1)}° from level`);
      expect(english).toContain(`${mark.laser?.distance.toFixed(0)} mm away`);
      expect(german).toContain(`${mark.laser?.distance.toFixed(0)} mm entfernt`);
      for (const text of [english, german]) expect(text).not.toMatch(/NaN|undefined|null|\{|\}/);
    }
  });

  test('which end is higher and which way a face leans is told by hand', () => {
    const facts = factsOf([
      aimSpeaker('a', 'midbass-left', { kind: 'direction', direction: [0.2, 0.9, 0.4] }),
    ]);
    const text = pieceText(en, facts, 'spot-midbass-left');
    // Looking right, back and up: the rear end of its face lies farther from what it looks at, and
    // the face falls away rearward.
    expect(text).toMatch(/lengthwise on the flange: [\d.]+° from level, its front end higher/);
    expect(text).toMatch(/upright on the flange: [\d.]+° from level, its top leaning to the left/);
  });

  test('a ring, an oval hole and where its middle lies are told', () => {
    const facts = factsOf(ON_RINGS);
    const one = speakerMarks(facts.cabin, facts.option, facts.result.placed).find(
      ({ speaker }) => speaker.id === 'midbass-left',
    );
    if (!one?.template?.cutout || !one.ring?.ok) throw new Error('no ring');
    const text = pieceText(en, facts, 'spot-midbass-left');
    const [long, short] = one.template.cutout.half;
    expect(text).toContain(`Oval, ${(2 * long).toFixed(1)} mm by ${(2 * short).toFixed(1)} mm`);
    expect(text).toContain(`Its middle lies ${one.ring.ring.sections.boreShift.toFixed(1)} mm off`);
    expect(text).toContain(`wedge ${one.ring.ring.wedgeDeg.toFixed(1)}°`);
    expect(text).toMatch(/towards \d+ o’clock/);
  });

  test.each([
    // Leaning up out of its door: back along the axis the panel is met below the spot.
    ['left', 'up', [0, 0, 0.3], 6, 180],
    // To the rear: met before the spot, and the front is right of one who looks at the left door …
    ['left', 'to the rear', [0.3, 0, 0], 3, 90],
    // … and left of one who looks at the right door.
    ['right', 'to the rear', [0.3, 0, 0], 9, 270],
    ['right', 'down', [0, 0, -0.3], 12, 0],
  ] as const)(
    'where a hole’s middle lies, by hand: %s door, leaning %s',
    (side, _, lean, hour, deg) => {
      const id = `midbass-${side}`;
      const at = mountSpeaker('a', id, {
        panel: `door-lower-${side}`,
        u: 0.14,
        v: 0.4,
        standoff: 40,
      });
      const square = factsOf([at]).result.placed.find(({ speaker }) => speaker === id)?.normal;
      if (!square) throw new Error('the door has no normal');
      const direction: Vec3 = [square[0] + lean[0], square[1] + lean[1], square[2] + lean[2]];
      const facts = factsOf([
        aimSpeaker('a', id, { kind: 'direction', direction }),
        at,
        setRing('a', id, { screws: 6 }),
      ]);
      const text = pieceText(en, facts, `spot-${id}`);
      const [, toldHour, toldDeg] =
        /towards (\d+) o’clock \((\d+)° clockwise from 12\)/.exec(text) ?? [];
      expect(Number(toldHour)).toBe(hour);
      // The door is neither quite upright nor quite straight.
      const off = Math.abs(((Number(toldDeg) - deg + 540) % 360) - 180);
      expect(off, text).toBeLessThan(5);
      // As near as a degree: the template's own middle says so too.
      const one = speakerMarks(facts.cabin, facts.option, facts.result.placed).find(
        ({ speaker }) => speaker.id === id,
      );
      const [x, y] = one?.template?.middle ?? [0, 0];
      const own = ((Math.atan2(x, y) * 180) / Math.PI + 360) % 360;
      expect(Math.abs(((Number(toldDeg) - own + 540) % 360) - 180)).toBeLessThanOrEqual(0.5);
      expect(pieceText(de, facts, `spot-${id}`)).toContain(
        `auf ${hour} Uhr (${toldDeg}° im Uhrzeigersinn von 12 Uhr)`,
      );
    },
  );

  test('warns of keep-clear zones and of what does not fit, and of what to look up first', () => {
    const facts = factsOf([
      mountSpeaker('a', 'tweeter-left', { panel: 'pillar-left', u: 0.5, v: 0.9, standoff: 15 }),
    ]);
    const text = pieceText(en, facts, 'spot-tweeter-left');
    const one = speakerMarks(facts.cabin, facts.option, facts.result.placed)[0];
    expect(one?.zones.length).toBeGreaterThan(0);
    for (const zone of one?.zones ?? [])
      expect(text).toContain(`Reaches into: ${en.names.zone(zone)}.`);
    // Also on its template, which may come to lie elsewhere than the sheet.
    const template = plainText(
      renderToStaticMarkup(contentOf(markOutBlocks(en, facts, 'A4'), 'template-tweeter-left-A1')),
    );
    expect(template).toContain(
      `Keep clear. Reaches into: ${one?.zones.map(en.names.zone).join('; ')}.`,
    );
    // Before anything else on the sheet.
    expect(text.indexOf('Keep clear')).toBe(0);
    expect(text).toContain('Look up before cutting here: Airbags and belts');
    expect(pieceText(de, facts, 'spot-tweeter-left')).toContain('Freihalten');

    const wrong = factsOf([setRing('a', 'midbass-left', { outer: 300 })]);
    expect(pieceText(en, wrong, 'spot-midbass-left')).toMatch(
      /Does not fit as planned: .*the ring reaches [\d.]+ mm over the edge of: left lower door card/,
    );
    expect(pieceText(de, wrong, 'spot-midbass-left')).toContain('der Ring ragt');
  });

  test('a speaker at a free point, and one without a body, have no template, and that is said', () => {
    const facts = factsOf([
      placeSpeakerAt('a', 'tweeter-left', [300, -500, 900]),
      changeSpeaker('a', 'midbass-left', { body: null }),
    ]);
    for (const id of ['tweeter-left', 'midbass-left']) {
      expect(pieceText(en, facts, `spot-${id}`)).toContain('There is no template for it');
      expect(markOutBlocks(en, facts, 'A4').some((one) => one.id === `template-${id}-A1`)).toBe(
        false,
      );
    }
    const head = plainText(
      renderToStaticMarkup(contentOf(markOutBlocks(en, facts, 'A4'), 'head-tweeter-left')),
    );
    expect(head).toBe('Left tweeter, at a free point');
  });

  test('a free point and a panel of one’s own are told everything there is to look up', () => {
    const ends = (facts: ReturnType<typeof factsOf>) =>
      markOutBlocks(en, facts, 'A4')
        .filter(({ id }) => id.startsWith('cautions-'))
        .map(({ id }) => pieceText(en, facts, id))
        .join();
    const { plan, option } = factsOf();
    const { mount: _, ...tweeter } = option.speakers[0] as SpeakerInput;
    const corners: [Vec3, Vec3, Vec3, Vec3] = [
      [300, -500, 900],
      [300, -300, 900],
      [300, -300, 1100],
      [300, -500, 1100],
    ];
    const cabin = { ...plan.cabin, panels: [{ id: 'door-pod', corners }] };
    for (const where of [
      { position: [300, -500, 900] as Vec3 },
      { mount: { panel: 'door-pod', u: 0.5, v: 0.5, standoff: 0 } },
    ]) {
      const speakers = [{ ...tweeter, ...where }];
      const facts = factsOfPlan({ ...plan, cabin, options: [{ id: 'a', title: '', speakers }] });
      for (const { title } of CAUTIONS) expect(ends(facts)).toContain(title);
      expect(pieceText(en, facts, 'spot-tweeter-left')).toContain(
        'Look up before cutting here: Airbags and belts; The view of the road; Pedals',
      );
    }
  });

  test('a spot that nothing fixes is named by its place in the plan, without half sentences', () => {
    const { plan, option } = factsOf();
    const { mount: _, body: __, ...tweeter } = option.speakers[0] as SpeakerInput;
    const seats = [{ id: 'front-left', head: [900, -365, 880] as Vec3, facingDeg: 0 }];
    const facts = factsOfPlan({
      ...plan,
      cabin: { template: 'none', wheelSide: 'left' },
      seats,
      options: [
        { id: 'a', title: '', speakers: [{ ...tweeter, position: [312.4, -500, 900] as Vec3 }] },
      ],
    });
    const text = pieceText(en, facts, 'spot-tweeter-left');
    expect(text).toContain(
      'fix this spot. In the plan’s axes it lies at x 312.4 mm (to the rear), y −500.0 mm (to the right) and z 900.0 mm (up).',
    );
    expect(text).not.toContain('Height');
    const german = pieceText(de, facts, 'spot-tweeter-left');
    expect(german).toContain('bei x 312,4 mm (nach hinten), y −500,0 mm (nach rechts)');
    expect(german).not.toContain('Höhe');
  });

  test('a pocket that holds no air is told so, not as litres of nothing', () => {
    const { plan, option } = factsOf();
    const pockets = (option.pockets ?? []).map((one) => ({ ...one, wall: 40 }));
    expect(pockets.length).toBeGreaterThan(0);
    const facts = factsOfPlan({ ...plan, options: [{ ...option, pockets }] });
    expect(pieceText(en, facts, 'spot-midbass-left')).toContain(
      'Does not fit as planned: its sealed box holds no air as drawn: left lower door card.',
    );
    expect(pieceText(de, facts, 'spot-midbass-left')).toContain(
      'das geschlossene Gehäuse hat so keinen Luftraum',
    );
  });

  test('ends with every caution of its spots, and says so where there is no speaker', () => {
    const facts = factsOf();
    const printed = markOutBlocks(en, facts, 'A4')
      .filter(({ id }) => id.startsWith('cautions-'))
      .map(({ id }) => pieceText(en, facts, id))
      .join();
    const cautions = cautionsOfOption(facts.option);
    expect(cautions.length).toBeGreaterThan(5);
    for (const { title } of cautions) expect(printed).toContain(title);
    const empty = factsOf([addOption('Empty')], 2);
    const blocks = markOutBlocks(en, empty, 'A4');
    expect(blocks.map(({ id }) => id)).toEqual(['title', 'none-0']);
  });
});

describe('templates', () => {
  const pages = (facts: ReturnType<typeof factsOf>, size: 'A4' | 'Letter' = 'A4') =>
    markOutBlocks(en, facts, size).filter(({ id }) => id.startsWith('template-'));

  test('one page each where they fit, from edge to edge', () => {
    const all = pages(factsOf());
    expect(all).toHaveLength(6);
    expect(all.every((block) => block.kind === 'page' && block.bare)).toBe(true);
    expect(pages(factsOf(), 'Letter')).toHaveLength(6);
  });

  test('a ring of 170 mm, for the usual midbass, stays on one page', () => {
    for (const size of ['A4', 'Letter'] as const) {
      const ids = pages(factsOf([setRing('a', 'midbass-left', { seat: 'sunk' })]), size)
        .map(({ id }) => id)
        .filter((id) => id.includes('midbass'));
      expect(ids).toHaveLength(2);
    }
  });

  test('a large one goes on several, and its pages name each other', () => {
    const facts = factsOf([setRing('a', 'midbass-left', { outer: 300 })]);
    const ids = pages(facts)
      .map(({ id }) => id)
      .filter((id) => id.includes('midbass-left'));
    expect(ids.length).toBeGreaterThanOrEqual(4);
    const first = renderToStaticMarkup(contentOf(markOutBlocks(en, facts, 'A4'), ids[0] as string));
    expect(plainText(first)).toContain('Page A1 of');
    expect(first).toContain('lay on B1, cross on cross');
    expect(first).toContain('lay on A2, cross on cross');
    const second = renderToStaticMarkup(
      contentOf(markOutBlocks(en, facts, 'A4'), 'template-midbass-left-B1'),
    );
    // The same cross of the drawing on both pages: a window less an overlap apart.
    const marks = (markup: string) =>
      [...markup.matchAll(/class="glue-mark" d="M([\d.]+) ([\d.]+)h6/g)].map(([, x, y]) => [
        Number(x) + 3,
        Number(y),
      ]);
    const window = windowOf('A4');
    const [right] = marks(first).filter(([x]) => (x as number) > 150);
    const [left] = marks(second).filter(([x]) => (x as number) < 60);
    expect((right?.[0] as number) - (left?.[0] as number)).toBeCloseTo(window.width - 12, 6);
    expect(right?.[1]).toBeCloseTo(left?.[1] as number, 6);
  });

  test('are drawn at true size: a millimetre of the drawing is a millimetre of the page', () => {
    const facts = factsOf();
    for (const size of ['A4', 'Letter'] as const) {
      const markup = renderToStaticMarkup(
        contentOf(markOutBlocks(en, facts, size), 'template-midbass-left-A1'),
      );
      const { width, height } = PAGE_SIZES[size];
      expect(markup).toContain(
        `width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"`,
      );
      expect(markup).toContain('data-ruler="across" d="M22');
      expect(markup).toMatch(/data-ruler="across" d="M[\d.]+ [\d.]+h100"/);
      expect(markup).toMatch(/data-ruler="up" d="M[\d.]+ [\d.]+v-100"/);
      // The midbass of the demo: 136 mm of cut-out, 158 of flange.
      expect(markup).toMatch(/class="template-cutout" cx="[^"]+" cy="[^"]+" rx="68" ry="68"/);
      expect(markup).toMatch(/class="template-flange" cx="[^"]+" cy="[^"]+" rx="79" ry="79"/);
    }
  });

  test('say how they are laid on, what is assumed of a curved panel, and the usual caution', () => {
    const facts = factsOf(ON_RINGS);
    const text = plainText(
      renderToStaticMarkup(contentOf(markOutBlocks(en, facts, 'A4'), 'template-midbass-left-A1')),
    );
    expect(text).toContain('turn it until the numbered ticks point at their reference points');
    expect(text).toMatch(/the panel leaves it by up to [\d.]+ mm/);
    expect(text).toContain('round on the speaker, oval here');
    expect(text).toContain(en.t('caution.short'));
    expect(text).toContain('measured on paper:');
    // Its rulers are in mm, and so is what is asked of them, on inch paper too.
    const inches = plainText(
      renderToStaticMarkup(
        contentOf(markOutBlocks(wordsOf('en', 'in'), facts, 'Letter'), 'template-midbass-left-A1'),
      ),
    );
    for (const told of [text, inches]) expect(told).toContain('More than 0.5 mm off 100 mm');
    expect(inches).toContain('5.35 in');
    // The pod of the mids has a template of its own face.
    const pod = plainText(
      renderToStaticMarkup(contentOf(markOutBlocks(en, facts, 'A4'), 'template-midrange-left-A1')),
    );
    expect(pod).toContain('For the face of the pod, square to the axis');
  });

  test('a print out of true is refused in a sentence, and its pages are crossed out on screen', () => {
    expect(readScale('99.8', '100,1')?.ok).toBe(true);
    expect(readScale('', '100')).toBeNull();
    expect(readScale('abc', '100')).toBeNull();
    expect(readScale('0', '100')).toBeNull();
    // What is refused does not read as what is allowed.
    expect(scaleSentence(en, printerScale(100.54, 100))).toContain('+0.54 % across');
    // A rule in inches is a rule.
    expect(readScale('3.94 in', '100')?.across).toBeCloseTo((3.94 * 25.4) / 100 - 1, 9);
    const bad = scaleSentence(en, printerScale(97, 97.2));
    expect(bad).toContain(
      'not to be used: the printer made them −3.00 % across and −2.80 % up the page',
    );
    expect(bad).toContain('100 %');
    expect(scaleSentence(de, printerScale(97, 97.2))).toContain(
      'quer um −3,00 % und hoch um −2,80 %',
    );
    expect(plainText(scaleSentence(en, printerScale(99.8, 100.1)))).toContain(
      '150 mm comes out 0.3 mm wrong at most',
    );
    const page = (refused: boolean) =>
      renderToStaticMarkup(
        contentOf(markOutBlocks(en, factsOf(), 'A4', refused), 'template-midbass-left-A1'),
      );
    expect(page(true)).toContain(en.t('printer.stamp'));
    expect(page(false)).not.toContain(en.t('printer.stamp'));
  });
});

test('numbers in a drawing never lie on one another', () => {
  const moved = apart(
    [
      [0, 0],
      [0, 0],
      [1, 0],
      [30, 30],
    ],
    5,
  );
  for (const [i, a] of moved.entries())
    for (const b of moved.slice(i + 1))
      expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeGreaterThan(4.9);
  expect(moved[3]).toEqual([30, 30]);
});
