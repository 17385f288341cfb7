/** How papers are printed on this machine: tastes and the shop's own head, nothing of the plan. */
import { createStore } from 'zustand/vanilla';

export type PageSize = 'A4' | 'Letter';

export interface PaperSettings {
  /** A language's two letters; one the catalogue does not have counts as English. */
  language: string;
  pageSize: PageSize;
  shopName: string;
  /** A picture as a data: address, or `null`. */
  shopLogo: string | null;
  /** The customer sheet shows how the sound arrives, in pictures. */
  arrivalStrip: boolean;
}

/** Longer names would not fit the head of a page. */
export const LONGEST_SHOP_NAME = 80;

/** Characters of the logo's address: about 220 KiB of picture, of some 5 MB a browser keeps. */
export const LARGEST_LOGO = 300_000;

const LOGO = /^data:image\/(png|jpeg|webp);base64,[A-Za-z0-9+/]+=*$/;

/** Whether a picture's address may be kept and shown: a small PNG, JPEG or WebP in base64. */
export const isLogo = (address: unknown): address is string =>
  typeof address === 'string' && address.length <= LARGEST_LOGO && LOGO.test(address);

/** Where paper is Letter rather than A4: common practice, after Unicode CLDR's paperSize data. */
const LETTER_REGIONS = /^(BZ|CA|CL|CO|CR|GT|MX|NI|PA|PH|PR|SV|US|VE)$/;

/** What a first visit starts from: the reader's own language and the paper of their region. */
export function firstSettings(locales: readonly string[]): PaperSettings {
  const first = locales[0] ?? 'en';
  const region = /-([A-Z]{2})\b/.exec(first)?.[1] ?? '';
  return {
    language: first.slice(0, 2).toLowerCase(),
    pageSize: LETTER_REGIONS.test(region) ? 'Letter' : 'A4',
    shopName: '',
    shopLogo: null,
    arrivalStrip: true,
  };
}

export const createPaperSettings = (first: PaperSettings = firstSettings([])) =>
  createStore<PaperSettings>(() => first);

export type PaperSettingsStore = ReturnType<typeof createPaperSettings>;

const KEY = 'earpath-papers';

/**
 * Restores the settings chosen last and keeps them from now on. A browser that keeps nothing, or
 * holds something strange, leaves them as they are.
 * @param told called with what could not be kept, in one sentence
 * @returns stops keeping them
 */
export function rememberPaperSettings(
  store: PaperSettingsStore,
  storage: () => Storage,
  told: (problem: string) => void = () => undefined,
): () => void {
  store.setState(readKept(storage));
  return store.subscribe((now) => {
    try {
      storage().setItem(KEY, JSON.stringify(now));
    } catch {
      told(
        'This browser keeps no more: shop, language and page size hold until the page is closed.',
      );
    }
  });
}

function readKept(storage: () => Storage): Partial<PaperSettings> {
  try {
    const kept = JSON.parse(storage().getItem(KEY) ?? '{}') as Record<string, unknown>;
    const known: Partial<PaperSettings> = {};
    if (typeof kept.language === 'string' && /^[a-z]{2}$/.test(kept.language))
      known.language = kept.language;
    if (kept.pageSize === 'A4' || kept.pageSize === 'Letter') known.pageSize = kept.pageSize;
    if (typeof kept.shopName === 'string')
      known.shopName = kept.shopName.slice(0, LONGEST_SHOP_NAME);
    if (isLogo(kept.shopLogo)) known.shopLogo = kept.shopLogo;
    if (typeof kept.arrivalStrip === 'boolean') known.arrivalStrip = kept.arrivalStrip;
    return known;
  } catch {
    return {};
  }
}
