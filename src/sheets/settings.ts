import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import {
  createPaperSettings,
  firstSettings,
  type PaperSettings,
  rememberPaperSettings,
} from '../store/paper-settings';

const locales = typeof navigator === 'undefined' ? [] : navigator.languages;

/** Language, page size and the shop's head, as kept on this machine. */
export const paperSettings = createPaperSettings(firstSettings(locales));

/** One sentence where this browser does not keep them. */
export const settingsProblem = createStore<{ text: string | null }>(() => ({ text: null }));

if (typeof localStorage !== 'undefined') {
  rememberPaperSettings(
    paperSettings,
    () => localStorage,
    (text) => settingsProblem.setState({ text }),
  );
}

export function usePaperSettings<T>(select: (settings: PaperSettings) => T): T {
  return useStore(paperSettings, select);
}
