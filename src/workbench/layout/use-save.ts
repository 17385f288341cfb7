import { useCallback, useState } from 'react';
import { planStore } from '../../store';
import { sentence } from '../parts/check-number';
import { savePlanFile } from '../plans/plan-files';

/** Saves the open plan to a file at a key's press; `failure` says why the last time did not work. */
export function useSaveToFile(): { save: () => void; failure: string | null } {
  const [failure, setFailure] = useState<string | null>(null);
  const save = useCallback(async () => {
    const outcome = await savePlanFile(planStore.getState().plan);
    setFailure(outcome.kind === 'failed' ? sentence(outcome.why) : null);
  }, []);
  return { save, failure };
}
