/** Work dealt out in shares and put together again. */
import { proxy, type Remote } from 'comlink';
import type { Refusal, SearchProgress, SearchShare } from '../geometry';
import type { EngineService, OnSearchProgress, Served } from './protocol';

export type Service = EngineService | Remote<EngineService>;

/** Puts a question to the service of a slot, or to the one that replaces it. */
export type Put = <T>(
  slot: number,
  go: (service: Service, request: number) => Promise<Served<T>>,
) => Promise<Served<T>>;

export function joined<T, U>(answers: readonly Served<T>[], join: (values: T[]) => U): Served<U> {
  const values: T[] = [];
  for (const answer of answers) {
    if (answer.stopped) return answer;
    values.push(answer.value);
  }
  return { stopped: false, value: join(values) };
}

export const sumOf = (all: readonly { done: number; total: number }[]) => ({
  done: all.reduce((sum, { done }) => sum + done, 0),
  total: all.reduce((sum, { total }) => sum + total, 0),
});

/** The grid is listened to by all, the answer made of it by one. */
export async function inTwoHalves<Part, Answer>(
  put: Put,
  shares: readonly SearchShare[],
  onProgress: ((progress: SearchProgress) => void) | undefined,
  hear: (
    service: Service,
    number: number,
    share: SearchShare,
    heard: OnSearchProgress | null,
  ) => Promise<Served<{ ok: true; heard: Part } | { ok: false; error: Refusal }>>,
  finish: (
    service: Service,
    number: number,
    parts: Part[],
    heard: OnSearchProgress | null,
  ) => Promise<Served<Answer>>,
): Promise<Served<Answer | { ok: false; error: Refusal }>> {
  const latest: (SearchProgress | undefined)[] = shares.map(() => undefined);
  const told = (share: SearchShare) =>
    onProgress
      ? proxy<OnSearchProgress>((progress) => {
          latest[share.index] = progress;
          onProgress({ phase: 'spots', ...sumOf(latest.filter((one) => one !== undefined)) });
        })
      : null;
  const answers = await Promise.all(
    shares.map((share) =>
      put(share.index, (service, number) => hear(service, number, share, told(share))),
    ),
  );
  const grid = joined(answers, (heard) => heard);
  if (grid.stopped) return grid;
  const refused = grid.value.find((one) => !one.ok);
  if (refused && !refused.ok) return { stopped: false, value: refused };
  const parts = grid.value.flatMap((one) => (one.ok ? [one.heard] : []));
  return put(0, (service, number) =>
    finish(service, number, parts, onProgress ? proxy<OnSearchProgress>(onProgress) : null),
  );
}
