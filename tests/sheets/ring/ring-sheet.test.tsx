import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { misfitsOf, ringOfSpeaker } from '../../../src/geometry';
import {
  aimSpeaker,
  mountSpeaker,
  type PlanRecipe,
  placeSpeakerAt,
  setRing,
  tiePair,
} from '../../../src/plan/edits';
import { misfitSentences } from '../../../src/sheets/mark-out/misfits';
import { ringBlocks } from '../../../src/sheets/ring';
import { wordsOf } from '../../../src/sheets/words/use-words';
import { contentOf, factsOf, plainText } from '../mark-out/papers';

const [en, de] = [wordsOf('en', 'mm'), wordsOf('de', 'mm')];

const leaning = (standoff: number): PlanRecipe[] => [
  aimSpeaker('a', 'midbass-left', { kind: 'direction', direction: [0, 0.95, 0.3] }),
  mountSpeaker('a', 'midbass-left', { panel: 'door-lower-left', u: 0.14, v: 0.4, standoff }),
  setRing('a', 'midbass-left', {}),
];

const tableOf = (blocks: ReturnType<typeof ringBlocks>, id: string): string[] =>
  [...renderToStaticMarkup(contentOf(blocks, id)).matchAll(/<tr>(.*?)<\/tr>/g)].map(([, row]) =>
    plainText(row ?? ''),
  );

describe('the sheet of rings', () => {
  const facts = factsOf(leaning(40));
  const speaker = facts.option.speakers.find(({ id }) => id === 'midbass-left');
  const placed = facts.result.placed.find((one) => one.speaker === 'midbass-left');
  const answer = speaker && placed && ringOfSpeaker(speaker, placed);
  if (!answer?.ok) throw new Error('no ring');
  const { sections, wedgeDeg } = answer.ring;

  test('has the engine’s own measures in its table, in both languages', () => {
    const rows = tableOf(ringBlocks(en, facts, 'A4'), 'measures-midbass-left');
    expect(rows).toEqual(
      expect.arrayContaining([
        `Outer edge, thin side ${sections.thinOuter.toFixed(1)} mm`,
        `Outer edge, thick side ${sections.thickOuter.toFixed(1)} mm`,
        `Wedge: saw cut of the back ${wedgeDeg.toFixed(1)}°`,
        'Bore, along the axis 136.0 mm',
      ]),
    );
    expect(tableOf(ringBlocks(de, facts, 'A4'), 'measures-midbass-left')).toContain(
      `Außenrand, dünne Seite ${sections.thinOuter.toFixed(1).replace('.', ',')} mm`,
    );
  });

  test('tells the hole only where the body reaches behind the panel, as the mark-out sheet does', () => {
    const holeRows = (standoff: number, words: typeof en) =>
      tableOf(ringBlocks(words, factsOf(leaning(standoff)), 'A4'), 'measures-midbass-left').filter(
        (row) => /Hole|hole|Middle of its|Loch|Mitte des/.test(row),
      );
    const off = (sections.boreShift * 130) / 40;
    // The body is 64 mm deep and 136 across: from 130 mm it stays wholly before the panel.
    expect(holeRows(40, en)).toEqual([
      `Hole in the panel ${sections.backBore.map((mm) => `${mm.toFixed(1)} mm`).join(' × ')}`,
      `Middle of that hole off the spot ${sections.boreShift.toFixed(1)} mm`,
    ]);
    expect(holeRows(130, en)).toEqual([
      'Hole in the panel None: the body stands wholly before the panel. Only wires and fixings go through.',
      `Middle of its back off the spot ${off.toFixed(1)} mm`,
    ]);
    expect(holeRows(130, de)).toEqual([
      'Loch in der Fläche Keines: Der Korb steht ganz vor der Fläche. Nur Leitungen und Befestigungen gehen hindurch.',
      `Mitte des Rückens neben der Stelle ${off.toFixed(1).replace('.', ',')} mm`,
    ]);
  });

  test('draws the section at true size where it fits, with a bar to prove it', () => {
    const tweeter = factsOf([
      aimSpeaker('a', 'tweeter-left', { kind: 'normal' }),
      setRing('a', 'tweeter-left', {}),
    ]);
    const markup = renderToStaticMarkup(
      contentOf(ringBlocks(en, tweeter, 'A4'), 'section-tweeter-left'),
    );
    expect(plainText(markup)).toContain('Section at true size');
    expect(markup).toContain('data-scale="1"');
    expect(markup).toMatch(/data-ruler="bar" d="M0 2.5h50"/);
    const inches = renderToStaticMarkup(
      contentOf(ringBlocks(wordsOf('en', 'in'), tweeter, 'A4'), 'section-tweeter-left'),
    );
    // Two inches of 25.4 mm, and told as that.
    expect(inches).toMatch(/data-ruler="bar" d="M0 2.5h50.8"/);
    expect(plainText(inches)).toContain('2.00 in');
    // From its back to its front, 15 mm of stand-off, in the drawing's own mm.
    const wall = /data-wall="thin" d="M([^"]+)Z"/.exec(markup)?.[1] ?? '';
    const ys = wall.split('L').map((point) => Number(point.split(' ')[1]));
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(15, 1);
    const large = renderToStaticMarkup(
      contentOf(ringBlocks(en, facts, 'A4'), 'section-midbass-left'),
    );
    expect(plainText(large)).toMatch(/Section, (75|50) % of true size/);
  });

  test('says what does not fit, where zones are reached, and what a ring still wants', () => {
    const low = factsOf(leaning(8));
    const text = plainText(
      renderToStaticMarkup(contentOf(ringBlocks(en, low, 'A4'), 'told-midbass-left')),
    );
    expect(text).toMatch(/There is no such ring yet: it wants [\d.]+ mm more stand-off/);
    expect(ringBlocks(en, low, 'A4').some(({ id }) => id === 'section-midbass-left')).toBe(false);
    const zone = factsOf([
      mountSpeaker('a', 'tweeter-left', { panel: 'pillar-left', u: 0.5, v: 0.9, standoff: 15 }),
      setRing('a', 'tweeter-left', {}),
    ]);
    expect(
      plainText(renderToStaticMarkup(contentOf(ringBlocks(en, zone, 'A4'), 'told-tweeter-left'))),
    ).toContain('Speaker or ring reaches into:');
  });

  test('a ring at a free point is not passed over', () => {
    const freed = factsOf([
      ...leaning(40),
      tiePair('a', 'midbass', false),
      placeSpeakerAt('a', 'midbass-left', [400, -600, 300]),
    ]);
    const text = (blocks: ReturnType<typeof ringBlocks>) =>
      plainText(renderToStaticMarkup(contentOf(blocks, 'free-midbass-left-0')));
    expect(text(ringBlocks(en, freed, 'A4'))).toBe(
      'No ring for: left midbass. It stands at a free point, and a ring needs a panel under it.',
    );
    expect(text(ringBlocks(de, freed, 'A4'))).toMatch(/^Kein Ring für: .*einem freien Punkt/);
    // Its twin still has one.
    expect(ringBlocks(en, freed, 'A4').some(({ id }) => id === 'section-midbass-right')).toBe(true);
    const subject = { ...freed, placed: freed.result.placed };
    const misfits = misfitsOf(subject).get('midbass-left') ?? [];
    expect(misfitSentences(en, misfits, subject)).toContain(
      'a free point has no panel for its ring to stand on',
    );
  });

  test('the stand-off it tells as missing is enough, in millimetres and in inches', () => {
    for (let standoff = 8; standoff < 15; standoff += 1.7) {
      const low = factsOf(leaning(standoff));
      const subject = { ...low, placed: low.result.placed };
      const misfits = misfitsOf(subject).get('midbass-left') ?? [];
      const printed = [
        [en, 1],
        [wordsOf('en', 'in'), 25.4],
      ] as const;
      for (const [words, unit] of printed) {
        const told = plainText(
          renderToStaticMarkup(contentOf(ringBlocks(words, low, 'A4'), 'told-midbass-left')),
        );
        const wanted = [
          /it wants ([\d.]+) (?:mm|in) more stand-off/.exec(told)?.[1],
          /wants ([\d.]+)/.exec(
            misfitSentences(words, misfits, subject).find((one) =>
              one.startsWith('the ring wants'),
            ) ?? '',
          )?.[1],
        ];
        for (const mm of wanted) {
          const raised = factsOf(leaning(standoff + Number(mm) * unit));
          const { speakers } = raised.option;
          const id = 'midbass-left';
          const one = speakers.find((speaker) => speaker.id === id);
          const at = raised.result.placed.find(({ speaker }) => speaker === id);
          expect(one && at && ringOfSpeaker(one, at)?.ok).toBe(true);
        }
      }
    }
  });

  test('without a ring it says how to get one', () => {
    expect(ringBlocks(en, factsOf(), 'A4').map(({ id }) => id)).toEqual(['title', 'none-0']);
  });
});
