/** What a speaker runs into where it stands, by kind of thing. */
import type { CabinModel, FitProblem } from '../geometry';

export interface RunsInto {
  /** Panels other than its own, and obstacles. */
  bodies: ReadonlySet<string>;
  speakers: ReadonlySet<string>;
  zones: ReadonlySet<string>;
  /** A keep-clear zone where there is one, else the first met. */
  worst: FitProblem | null;
}

const NONE: ReadonlySet<string> = new Set();

export const RUNS_INTO_NOTHING: RunsInto = {
  bodies: NONE,
  speakers: NONE,
  zones: NONE,
  worst: null,
};

/** What its own panel does not allow (outline, depth, …) runs into nothing that could be drawn. */
export function runsInto(problems: readonly FitProblem[], cabin: CabinModel): RunsInto {
  const met = problems.filter(
    ({ kind }) => kind === 'obstacle' || kind === 'speaker' || kind === 'zone',
  );
  if (met.length === 0) return RUNS_INTO_NOTHING;
  const ids = (kind: FitProblem['kind']) =>
    new Set(met.flatMap((problem) => (problem.kind === kind ? (problem.with ?? []) : [])));
  const known = new Set(cabin.keepClear.map(({ id }) => id));
  return {
    bodies: ids('obstacle'),
    speakers: ids('speaker'),
    zones: new Set([...ids('zone')].filter((id) => known.has(id))),
    worst: met.find(({ hard }) => hard) ?? met[0] ?? null,
  };
}
