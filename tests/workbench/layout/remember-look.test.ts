import { describe, expect, test } from 'vitest';
import { createSessionStore } from '../../../src/store/session-store';
import { rememberLook } from '../../../src/workbench/layout/remember-look';

function shelf(kept: Record<string, string> = {}): Storage {
  const map = new Map(Object.entries(kept));
  return {
    getItem: (key: string) => map.get(key) ?? null,
    setItem: (key: string, value: string) => void map.set(key, value),
  } as unknown as Storage;
}

describe('the look of the page', () => {
  test('is as it was left at the next visit', () => {
    const storage = shelf();
    const first = createSessionStore();
    rememberLook(first, () => storage);
    first.setState({ lengthUnit: 'in', theme: 'dark' });
    const second = createSessionStore();
    rememberLook(second, () => storage);
    expect(second.getState()).toMatchObject({ lengthUnit: 'in', theme: 'dark' });
  });

  test('nothing of the plan or of what is selected is kept with it', () => {
    const storage = shelf();
    const session = createSessionStore();
    rememberLook(session, () => storage);
    session.setState({ lengthUnit: 'in', selection: { kind: 'speaker', id: 'secret' } });
    expect(storage.getItem('earpath-look')).not.toContain('secret');
  });

  test('something strange in the store is left alone', () => {
    for (const text of ['{', 'null', '[]', '{"theme":"plaid","lengthUnit":5}']) {
      const session = createSessionStore();
      rememberLook(session, () => shelf({ 'earpath-look': text }));
      expect(session.getState()).toMatchObject({ lengthUnit: 'mm', theme: 'system' });
    }
  });

  test('a browser that refuses storage breaks nothing', () => {
    const session = createSessionStore();
    rememberLook(session, () => {
      throw new Error('refused');
    });
    session.setState({ lengthUnit: 'in' });
    expect(session.getState().lengthUnit).toBe('in');
  });
});
