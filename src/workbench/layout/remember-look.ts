import type { SessionState } from '../../store';

/** What stays as chosen from one visit to the next: tastes, nothing of the plan. */
type Look = Pick<SessionState, 'theme' | 'lengthUnit' | 'temperatureUnit'>;

const KEY = 'earpath-look';

const KNOWN: { [K in keyof Look]: readonly Look[K][] } = {
  theme: ['system', 'light', 'dark'],
  lengthUnit: ['mm', 'in'],
  temperatureUnit: ['C', 'F'],
};

interface LookStore {
  getState(): Look;
  setState(look: Partial<Look>): void;
  subscribe(listener: (now: Look, before: Look) => void): () => void;
}

/**
 * Restores the look chosen last and keeps it from now on. A browser that keeps nothing, or holds
 * something strange, leaves the page as it is.
 * @returns stops keeping it
 */
export function rememberLook(session: LookStore, storage: () => Storage): () => void {
  session.setState(readLook(storage));
  return session.subscribe((now, before) => {
    const keys = Object.keys(KNOWN) as (keyof Look)[];
    if (keys.every((key) => now[key] === before[key])) return;
    try {
      const look = Object.fromEntries(keys.map((key) => [key, now[key]]));
      storage().setItem(KEY, JSON.stringify(look));
    } catch {
      // Nothing is lost but a taste.
    }
  });
}

function readLook(storage: () => Storage): Partial<Look> {
  try {
    const kept: unknown = JSON.parse(storage().getItem(KEY) ?? '{}');
    const known = Object.entries(KNOWN).filter(([key, values]) =>
      (values as readonly unknown[]).includes((kept as Record<string, unknown>)[key]),
    );
    return Object.fromEntries(
      known.map(([key]) => [key, (kept as Record<string, unknown>)[key]]),
    ) as Partial<Look>;
  } catch {
    return {};
  }
}
