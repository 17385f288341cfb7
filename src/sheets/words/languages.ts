import type { Language } from './catalogue';
import { en } from './en';

/** Every file of two letters in this folder is a language: adding one adds it to the choice. */
const FILES = import.meta.glob<Record<string, Language>>('./[a-z][a-z].ts', { eager: true });

export const LANGUAGES: Readonly<Record<string, Language>> = Object.fromEntries(
  Object.entries(FILES).flatMap(([path, file]) => {
    const id = path.slice(2, 4);
    const language = file[id];
    return language ? [[id, language]] : [];
  }),
);

/** The language of that id, or English. */
export const languageOf = (id: string): Language => LANGUAGES[id] ?? en;
