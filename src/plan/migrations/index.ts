import type { Migration } from './migrate';

export { type MigrateAnswer, type Migration, migrate } from './migrate';

/**
 * In order, one per version ever published. Version 1 is the first, so there is none yet: a later
 * one gets a file of its own here, a test, and a golden file of the version it starts from.
 */
export const MIGRATIONS: readonly Migration[] = [];
