/** Timing on a machine that is busy with other things as well. */

export interface Timing {
  /** What a run usually takes, ms. */
  median: number;
  /** What a run takes when nothing disturbs it: the tenth part of all runs is faster, ms. */
  undisturbed: number;
}

/**
 * Times each piece of work. They take turns run by run, so that whatever else the machine does
 * meets all of them alike. Compare the undisturbed times with each other: a long run is interrupted
 * more often than a short one, so ratios of medians grow with the load.
 */
export function timings<const K extends string>(
  work: Readonly<Record<K, () => unknown>>,
  runs: number,
): Record<K, Timing> {
  const names = Object.keys(work) as K[];
  const times = new Map(names.map((name) => [name, [] as number[]]));
  const warmUp = Math.ceil(runs / 5);
  for (let i = -warmUp; i < runs; i++)
    for (const name of names) {
      const start = performance.now();
      work[name]();
      if (i >= 0) times.get(name)?.push(performance.now() - start);
    }
  return Object.fromEntries(
    names.map((name) => {
      const sorted = (times.get(name) ?? []).sort((a, b) => a - b);
      const at = (part: number) => sorted[Math.floor(sorted.length * part)] ?? Number.NaN;
      return [name, { median: at(0.5), undisturbed: at(0.1) }];
    }),
  ) as Record<K, Timing>;
}
