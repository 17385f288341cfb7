import { useEffect, useState } from 'react';
import { listPlans, type ShelfEntry, useKeeping } from '../../store';

/** The kept plans, the latest first; null until they are known. Follows every change of the list. */
export function useKept(): readonly ShelfEntry[] | null {
  const listed = useKeeping((state) => state.listed);
  const [kept, setKept] = useState<readonly ShelfEntry[] | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the count says when to look again
  useEffect(() => {
    let current = true;
    listPlans().then(
      (list) => current && setKept(list),
      () => current && setKept([]),
    );
    return () => {
      current = false;
    };
  }, [listed]);
  return kept;
}
