import { createContext, type ReactNode, useContext, useMemo } from 'react';
import type { LengthUnit } from '../../plan/units';
import { createTranslate, type Translate } from './catalogue';
import { languageOf } from './languages';
import { createNames, type Names } from './names';
import { createNumbers, type Numbers } from './numbers';

export interface PrintedWords {
  /** A sentence of the catalogue. */
  t: Translate;
  /** Numbers, lengths, dates. */
  n: Numbers;
  /** What panels, roles, seats and the like are called. */
  names: Names;
  /** The language's locale, for `lang`. */
  locale: string;
}

/** The words of one language with one unit of length; also without React, in tests. */
export function wordsOf(language: string, unit: LengthUnit): PrintedWords {
  const chosen = languageOf(language);
  const t = createTranslate(chosen);
  const n = createNumbers(chosen.locale, unit);
  return { t, n, names: createNames(t), locale: chosen.locale };
}

const WordsContext = createContext<PrintedWords | null>(null);

export function WordsProvider(props: { language: string; unit: LengthUnit; children: ReactNode }) {
  const { language, unit } = props;
  const words = useMemo(() => wordsOf(language, unit), [language, unit]);
  return <WordsContext value={words}>{props.children}</WordsContext>;
}

/** `const { t, n, names } = useWords()`: everything printed comes from here. */
export function useWords(): PrintedWords {
  const words = useContext(WordsContext);
  if (!words) throw new Error('useWords: expected to stand inside the reading room, got no words');
  return words;
}
