import { produce } from 'immer';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { zoneName, zonesOfOption } from '../../src/exchange/keep-clear/spot-zones';
import { evaluatePlan, type Mount } from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import { addPair, mountSpeaker } from '../../src/plan/edits';
import type { Plan } from '../../src/plan/types';
import { SpotCautions } from '../../src/workbench/cautions/cautions-note';
import { spotOf } from '../../src/workbench/cautions/selected-spot';

const words = (node: React.ReactNode): string =>
  renderToStaticMarkup(node)
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ');

/** The demo's car with one pair of 75 mm mids, mounted as told. */
function withMids(mount: Mount) {
  const empty: Plan = { ...demoPlan(), options: [{ id: 'a', title: 'Only', speakers: [] }] };
  const plan = produce(empty, (draft) => {
    addPair('a', 'midrange', 75)(draft);
    mountSpeaker('a', 'midrange-left', mount)(draft);
  });
  const answer = evaluatePlan(plan);
  if (!answer.ok) throw new Error(answer.error.message);
  const [result] = answer.options;
  const [option] = plan.options;
  if (!result || !option) throw new Error('expected one option');
  return { plan, answer, result, option };
}

const spotAt = (mount: Mount) => {
  const { plan, answer, result } = withMids(mount);
  const spot = spotOf(plan, answer, result, 'midrange-left');
  if (!spot) throw new Error('expected a spot');
  return spot;
};

const pillar: Mount = { panel: 'pillar-left', u: 0.5, v: 0.6 };

describe('the cautions beside a spot', () => {
  it('name the zone a pillar spot reaches into, and say what cannot be told from here', () => {
    const text = words(<SpotCautions spot={spotAt(pillar)} compact />);
    expect(text).toMatch(/Keep clear: [^.]*airbag/i);
    expect(text).toContain('cannot be told from here');
    expect(text).toContain('maker’s documents');
  });

  it('warn of airbags on every panel that often has one, in a zone or not', () => {
    const spot = { panel: 'b-pillar-left', panelName: 'left B-pillar', zones: [] };
    const text = words(<SpotCautions spot={spot} compact />);
    expect(text).toContain('Airbags are often behind or beside the left B-pillar.');
    const kick = { panel: 'kick-left', panelName: 'left kick panel', zones: [] };
    expect(words(<SpotCautions spot={kick} compact />)).not.toContain('Airbags are often');
  });

  it('begin with those of the panel: a footrest has its pedals, a pillar its airbags', () => {
    const order = (panel: string) => {
      const text = words(
        <SpotCautions spot={{ panel, panelName: panel, zones: [] }} compact={false} />,
      );
      return text.indexOf('Pedals, steering and feet') - text.indexOf('Airbags and belts');
    };
    expect(order('footrest-left')).toBeLessThan(0);
    expect(order('pillar-left')).toBeGreaterThan(0);
  });

  it('stand there in full, none left out, whatever is selected', () => {
    const titles = ['Airbags and belts', 'Pedals, steering and feet', 'Wiring', 'Structure'];
    for (const spot of [null, spotAt(pillar)]) {
      const text = words(<SpotCautions spot={spot} compact />);
      for (const title of titles) expect(text).toContain(title);
    }
    expect(words(<SpotCautions spot={null} compact />)).not.toContain('Keep clear:');
  });

  it('of an option name each speaker that reaches into a zone, left and right alike', () => {
    const { answer, option, result } = withMids(pillar);
    const list = zonesOfOption(answer.cabin, option, result);
    expect(list.map(({ speaker }) => speaker.id)).toEqual(['midrange-left', 'midrange-right']);
    for (const { zones } of list) expect(zones.map(zoneName).join()).toMatch(/airbag/i);
  });

  it('know no spot of a speaker that is not there', () => {
    const { plan, answer, result } = withMids(pillar);
    expect(spotOf(plan, answer, result, 'tweeter-left')).toBeNull();
    expect(spotOf(plan, answer, null, 'midrange-left')).toBeNull();
  });
});
