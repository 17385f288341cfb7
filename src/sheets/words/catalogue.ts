/**
 * The one catalogue of what is printed: sentences by key, in ICU MessageFormat, filled in at the
 * moment of printing. English says which keys there are; a language that lacks one does not compile.
 */
import { IntlMessageFormat } from 'intl-messageformat';
import type { en } from './en';

export type WordKey = keyof typeof en.words;
export type Words = Record<WordKey, string>;
/** What is filled in. Numbers with a unit come as text, from `numbers.ts`. */
export type Fill = Readonly<Record<string, string | number>>;

/** A language: one file in this folder, named by its two letters. */
export interface Language {
  /** As its speakers call it. */
  name: string;
  /** For plurals, decimal signs and dates: "de-DE". */
  locale: string;
  words: Words;
}

/** One line for a caption, a sentence for a paragraph: `t('customer.title')`. */
export type Translate = (key: WordKey, fill?: Fill) => string;

/**
 * Sentences of one language.
 * @returns a function that throws a RangeError, naming the key, when it is unknown or lacks a value
 */
export function createTranslate({ locale, words }: Language): Translate {
  const ready = new Map<WordKey, IntlMessageFormat>();
  return (key, fill) => {
    let message = ready.get(key);
    if (!message) {
      const text = words[key];
      if (text === undefined)
        throw new RangeError(`translate: expected a key of the catalogue, got "${key}"`);
      // Names that users typed are filled in as they are: no tags are read in any message.
      message = new IntlMessageFormat(text, locale, undefined, { ignoreTag: true });
      ready.set(key, message);
    }
    try {
      return String(message.format(fill));
    } catch (error) {
      throw new RangeError(
        `translate: "${key}": ${error instanceof Error ? error.message : error}`,
      );
    }
  };
}
