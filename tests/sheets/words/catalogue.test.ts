import { parse, TYPE } from '@formatjs/icu-messageformat-parser';
import { describe, expect, test } from 'vitest';
import { createTranslate, type WordKey } from '../../../src/sheets/words/catalogue';
import { en } from '../../../src/sheets/words/en';
import { LANGUAGES, languageOf } from '../../../src/sheets/words/languages';

/** Names of everything filled in, with the kind of each choice: "count:plural". */
function placeholders(text: string): string[] {
  const found = new Set<string>();
  const walk = (elements: ReturnType<typeof parse>): void => {
    for (const element of elements) {
      if ('value' in element && element.type !== TYPE.literal) found.add(element.value);
      if ('options' in element) for (const { value } of Object.values(element.options)) walk(value);
    }
  };
  walk(parse(text, { ignoreTag: true }));
  return [...found].sort();
}

/** Shared by both languages on purpose: units, signs, names of standards. */
const ALIKE = /^(role\.subwoofer|page\.number|name\.numbered|.*\.(unit|sign))$/;

const others = Object.entries(LANGUAGES).filter(([id]) => id !== 'en');

describe('the catalogue', () => {
  test('English and German are there; an unknown language is English', () => {
    expect(Object.keys(LANGUAGES).sort()).toEqual(expect.arrayContaining(['de', 'en']));
    expect(languageOf('xx')).toBe(en);
  });

  describe.each(others)('%s', (_, language) => {
    const keys = Object.keys(en.words) as WordKey[];

    test('has the same keys', () => {
      expect(Object.keys(language.words).sort()).toEqual([...keys].sort());
    });

    test('fills in nothing that English does not, and leaves out nothing that carries news', () => {
      // A side or a plural may be of no use to a language's grammar; numbers and names always are.
      const grammar = new Set(['side', 'many', 'count', 'seat']);
      const wrong = keys.filter((key) => {
        const here = placeholders(language.words[key]);
        const there = placeholders(en.words[key]);
        return (
          here.some((name) => !there.includes(name)) ||
          there.some((name) => !here.includes(name) && !grammar.has(name))
        );
      });
      expect(wrong).toEqual([]);
    });

    test('is not left in English by accident', () => {
      const plain = (text: string) => text.replace(/\{[^{}]*\}/g, '').trim();
      const same = keys.filter(
        (key) =>
          !ALIKE.test(key) &&
          /[a-z]{3}/i.test(plain(en.words[key])) &&
          language.words[key] === en.words[key],
      );
      expect(same).toEqual([]);
    });
  });

  test('an unknown key and a missing value are named', () => {
    const t = createTranslate(en);
    expect(() => t('no.such' as WordKey)).toThrow(/no\.such/);
    expect(() => t('page.number', { page: 3 })).toThrow(/page\.number/);
  });

  test('what a user typed is printed as typed', () => {
    const t = createTranslate(en);
    const typed = `<img onerror=x> {count} 'quoted' {`;
    expect(t('paper.nothing', { reason: typed })).toContain(typed);
  });
});
