import { describe, expect, test } from 'vitest';
import {
  createPaperSettings,
  firstSettings,
  isLogo,
  LARGEST_LOGO,
  rememberPaperSettings,
} from '../../src/store/paper-settings';

/** As little of a browser's storage as is needed. */
function memory(first?: string): Storage {
  const kept = new Map(first === undefined ? [] : [['earpath-papers', first]]);
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
  } as unknown as Storage;
}

const LOGO = 'data:image/png;base64,iVBORw0KGgo=';

describe('how papers are printed on this machine', () => {
  test('a first visit takes the reader’s language and the paper of their region', () => {
    expect(firstSettings(['de-AT'])).toMatchObject({ language: 'de', pageSize: 'A4' });
    expect(firstSettings(['en-US', 'de'])).toMatchObject({ language: 'en', pageSize: 'Letter' });
    expect(firstSettings([])).toMatchObject({ language: 'en', pageSize: 'A4' });
  });

  test('what was chosen is there again the next time', () => {
    const storage = memory();
    const first = createPaperSettings();
    rememberPaperSettings(first, () => storage);
    first.setState({ language: 'de', pageSize: 'Letter', shopName: 'Werkstatt', shopLogo: LOGO });
    const second = createPaperSettings();
    rememberPaperSettings(second, () => storage);
    expect(second.getState()).toEqual(first.getState());
  });

  test.each([
    ['no JSON', 'x{'],
    ['another page size', '{"pageSize":"A0"}'],
    ['a logo from elsewhere', '{"shopLogo":"https://elsewhere.invalid/a.png"}'],
    ['a logo that is a document', '{"shopLogo":"data:text/html;base64,AAAA"}'],
    ['a language that is none', '{"language":"../x"}'],
  ])('%s is left alone', (_, kept) => {
    const settings = createPaperSettings();
    const before = settings.getState();
    rememberPaperSettings(settings, () => memory(kept));
    expect(settings.getState()).toEqual(before);
  });

  test('a browser that keeps nothing says so once something is chosen', () => {
    const told: string[] = [];
    const settings = createPaperSettings();
    rememberPaperSettings(
      settings,
      () => {
        throw new Error('refused');
      },
      (problem) => told.push(problem),
    );
    settings.setState({ language: 'de' });
    expect(settings.getState().language).toBe('de');
    expect(told).toHaveLength(1);
  });

  test('a logo is a small PNG, JPEG or WebP', () => {
    expect(isLogo(LOGO)).toBe(true);
    expect(isLogo(LOGO.replace('png', 'svg+xml'))).toBe(false);
    expect(isLogo(`data:image/png;base64,${'A'.repeat(LARGEST_LOGO)}`)).toBe(false);
    expect(isLogo(null)).toBe(false);
  });
});
