import { type EnginePool, openEnginePool } from '../../worker';

let pool: EnginePool | null = null;

/** The page's one pool of workers, for maps and searches: opened when first asked for. */
export function enginePool(): EnginePool {
  pool ??= openEnginePool();
  return pool;
}
