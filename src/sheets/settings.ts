import { useStore } from 'zustand';
import {
  createPaperSettings,
  firstSettings,
  type PaperSettings,
  rememberPaperSettings,
} from '../store/paper-settings';

const locales = typeof navigator === 'undefined' ? [] : navigator.languages;

/** Language, page size and the shop's head, as kept on this machine. */
export const paperSettings = createPaperSettings(firstSettings(locales));

if (typeof localStorage !== 'undefined') rememberPaperSettings(paperSettings, () => localStorage);

export function usePaperSettings<T>(select: (settings: PaperSettings) => T): T {
  return useStore(paperSettings, select);
}
