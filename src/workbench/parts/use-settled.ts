import { useRef } from 'react';
import { useGestureRunning } from '../../store';

/**
 * The value as it was when no drag ran: for what is too slow to follow one. `waiting` while a drag
 * has already left it behind.
 */
export function useSettled<T>(value: T): { settled: T; waiting: boolean } {
  const running = useGestureRunning();
  const kept = useRef(value);
  if (!running) kept.current = value;
  return { settled: kept.current, waiting: running && kept.current !== value };
}
