import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import type { KeepClearInput, KeepClearZone } from '../../../src/geometry';
import { mountSpeaker } from '../../../src/plan/edits';
import { markOutBlocks } from '../../../src/sheets/mark-out';
import { TemplateWarning } from '../../../src/sheets/mark-out/template-warning';
import { wordsOf } from '../../../src/sheets/words/use-words';
import { contentOf, factsOf, factsOfPlan, plainText } from './papers';

const [en, de] = [wordsOf('en', 'mm'), wordsOf('de', 'mm')];

const USUAL = 'Whether this car has it just there, or somewhere else as well, cannot be told';
const GIVEN = 'The speaker reaches into a zone you marked.';

/** The left tweeter's template with the zones given around it. */
function templateWith(v: number, keepClear: readonly KeepClearInput[]): string {
  const { plan } = factsOf([
    mountSpeaker('a', 'tweeter-left', { panel: 'pillar-left', u: 0.5, v, standoff: 15 }),
  ]);
  const facts = factsOfPlan({ ...plan, keepClear });
  const blocks = markOutBlocks(en, facts, 'A4');
  return plainText(renderToStaticMarkup(contentOf(blocks, 'template-tweeter-left-A1')));
}

const zone = (id: string): KeepClearInput => {
  const { result } = factsOf();
  const { position } = result.placed.find(({ speaker }) => speaker === 'tweeter-left') ?? {};
  return {
    id,
    reason: 'airbag',
    shape: 'box',
    center: position ?? [0, 0, 0],
    size: [400, 400, 400],
  };
};

describe('the warning above a template', () => {
  test('says of a zone the user marked that they marked it, not that it is usual', () => {
    const text = templateWith(0.3, [zone('my-loom')]);
    expect(text).toContain(`Keep clear. Reaches into: my loom. ${GIVEN}`);
    expect(text).not.toContain(USUAL);
  });

  test('says of a zone of the body style that it is only usual there', () => {
    const text = templateWith(0.9, []);
    expect(text).toContain('left curtain airbag');
    expect(text).toContain(USUAL);
    expect(text).not.toContain(GIVEN);
  });

  test('says both of both, and leaves more than it has room for to the speaker’s own page', () => {
    const one = (id: string, given: boolean) =>
      ({ id, name: id, reason: 'airbag', given }) as unknown as KeepClearZone;
    const said = (zones: readonly KeepClearZone[], words = en) =>
      plainText(renderToStaticMarkup(<TemplateWarning zones={zones} words={words} />));
    const both = said([one('airbag-wheel', false), one('my-loom', true)]);
    expect(both).toContain('Reaches into: airbag in the steering wheel; my loom.');
    expect(both).toContain(USUAL);
    expect(both).toContain(GIVEN);
    const many = [1, 2, 3, 4].map((n) => one(`loom-${n}`, true));
    expect(said(many)).toBe(
      `Keep clear. Reaches into 4 places kept clear, named beside this speaker on the mark-out sheet: read it there before going on. ${GIVEN}`,
    );
    const long = [one('x'.repeat(500), true)];
    expect(said(long)).toContain('Reaches into a place kept clear, named beside');
    expect(said(long)).not.toContain('xx');
    expect(said(long, de)).toContain('Ragt in einen freizuhaltenden Bereich, beim Namen');
    for (const words of [en, de])
      for (const zones of [many, long]) expect(said(zones, words).length).toBeLessThan(460);
  });
});
