/** Bringing a plan of an older version up to date, one numbered step at a time. */
import type { Refusal } from '../../geometry';

export interface Migration {
  /** The version it starts from; it leads to the next. */
  from: number;
  /** What changed, in a few words. */
  title: string;
  /** Gets a copy of its own and returns the plan of version `from` + 1. */
  up(plan: Record<string, unknown>): Record<string, unknown>;
}

export type MigrateAnswer =
  | { ok: true; plan: Record<string, unknown>; steps: string[] }
  | { ok: false; error: Refusal };

/**
 * Brings `plan` from the version it names to `current`. A plan already there, or newer, comes back
 * as it was. Nothing given is changed.
 */
export function migrate(
  plan: Readonly<Record<string, unknown>>,
  migrations: readonly Migration[],
  current: number,
): MigrateAnswer {
  let version = plan.version as number;
  if (version >= current) return { ok: true, plan, steps: [] };
  let next: Record<string, unknown> = structuredClone(plan);
  const steps: string[] = [];
  while (version < current) {
    const step = migrations.find(({ from }) => from === version);
    if (!step) {
      const message = `no way is known from version ${version} of the plan format to ${current}`;
      return { ok: false, error: { path: 'version', message } };
    }
    try {
      next = { ...step.up(next), version: version + 1 };
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      const message = `the plan could not be brought from version ${version} to ${version + 1}: ${why}`;
      return { ok: false, error: { path: 'version', message } };
    }
    steps.push(step.title);
    version++;
  }
  return { ok: true, plan: next, steps };
}
