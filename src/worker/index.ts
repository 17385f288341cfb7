/** The engine behind one typed protocol. */
export { type Asked, createEngineClient, type EngineClient, openEngine } from './client';
export { createEnginePool, type EnginePool, openEnginePool } from './pool';
export type { EngineService, OnProgress, Outcome } from './protocol';
export { createEngineService } from './service';
