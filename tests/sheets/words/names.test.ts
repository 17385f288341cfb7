import { describe, expect, test } from 'vitest';
import { CAUTIONS } from '../../../src/exchange/cautions';
import { buildCabin, TEMPLATES } from '../../../src/geometry';
import { demoPlan } from '../../../src/plan/demo';
import {
  pairName,
  ROLES,
  roleName,
  rolePlural,
  seatName,
  speakerName,
} from '../../../src/plan/names';
import { en } from '../../../src/sheets/words/en';
import { wordsOf } from '../../../src/sheets/words/use-words';

const { names } = wordsOf('en', 'mm');
const german = wordsOf('de', 'mm').names;

const cabins = TEMPLATES.flatMap(({ id }) =>
  (['left', 'right'] as const).map((wheelSide) => {
    const answer = buildCabin({ ...demoPlan(), cabin: { template: id, wheelSide } });
    if (!answer.ok) throw new Error(answer.error.message);
    return answer.cabin;
  }),
);

/** The page writes a straight apostrophe here and there; paper always a curly one. */
const curly = (text: string) => text.replaceAll("'", '’');

describe('names on paper', () => {
  test('parts of every body style are called in English as the page calls them', () => {
    for (const cabin of cabins) {
      const pairs = [
        ...cabin.panels.map((one) => [names.panel(one), one.name]),
        ...cabin.obstacles.map((one) => [names.obstacle(one), one.name]),
        ...cabin.keepClear.map((one) => [names.zone(one), one.name]),
        ...cabin.references.map((one) => [names.reference(one), one.name]),
      ];
      for (const [paper, page] of pairs) expect(curly(paper ?? '')).toBe(curly(page ?? ''));
    }
  });

  test('in German none of them is left in English', () => {
    const left = new Set<string>();
    for (const cabin of cabins) {
      for (const one of cabin.panels) if (german.panel(one) === one.name) left.add(one.id);
      for (const one of cabin.obstacles) if (german.obstacle(one) === one.name) left.add(one.id);
      for (const one of cabin.keepClear) if (german.zone(one) === one.name) left.add(one.id);
      for (const one of cabin.references) if (german.reference(one) === one.name) left.add(one.id);
      expect(german.body(cabin.template)).not.toBe(cabin.template);
    }
    expect([...left]).toEqual([]);
  });

  test('roles, speakers, pairs and seats are called as on the page', () => {
    for (const role of ROLES) {
      expect(names.role(role)).toBe(roleName(role));
      expect(names.roles(role)).toBe(rolePlural(role));
    }
    const [option] = demoPlan().options;
    const speakers = option?.speakers ?? [];
    const twice = [...speakers, ...speakers.map((one) => ({ ...one, id: `${one.id}-2` }))];
    for (const one of twice) expect(names.speaker(one, twice)).toBe(speakerName(one, twice));
    expect(names.pair('tweeter', speakers)).toBe(pairName('tweeter', speakers));
    for (const seat of ['front-left', 'rear-right', 'bench'])
      expect(names.seat(seat)).toBe(seatName(seat));
  });

  test('what a user named is called as named', () => {
    expect(names.panel({ id: 'my-pod', name: 'my-pod' })).toBe('my pod');
    expect(german.obstacle({ id: 'box', name: 'Kiste {1}' })).toBe('Kiste {1}');
  });

  test('the driver sits at the wheel', () => {
    expect(names.person('front-left', 'left')).toBe('driver');
    expect(names.person('front-left', 'right')).toBe('front passenger');
    expect(german.person('rear-right', 'left')).toBe('Platz hinten rechts');
  });

  test('every caution of the page stands in the catalogue', () => {
    const words: Record<string, string> = en.words;
    for (const { id, title, text } of CAUTIONS) {
      expect(words[`caution.${id}.title`]).toBe(title);
      expect(words[`caution.${id}.text`]).toBe(text);
    }
  });
});
