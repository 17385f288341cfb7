import { useState } from 'react';
import type { VerdictWeights } from '../../../geometry';

/** What was chosen for comparing; kept while the page is open, and not part of the plan. */
export interface Kept {
  /** Ids of the options compared; `null`: as many as there is room for. */
  chosen: readonly string[] | null;
  baseline: string | null;
  weights: VerdictWeights;
  /** Also the rows in which no option differs. */
  showAlike: boolean;
}

let kept: Kept = {
  chosen: null,
  baseline: null,
  weights: {
    difference: 1,
    offAxisDeg: 0.5,
    obstructionDb: 1,
    firstReflectionTime: 0.2,
    pathSpread: 0,
  },
  showAlike: false,
};

/** The same for every sheet that compares, whichever is open. */
export function useKept(): [Kept, (change: Partial<Kept>) => void] {
  const [shown, show] = useState(kept);
  return [
    shown,
    (change) => {
      kept = { ...kept, ...change };
      show(kept);
    },
  ];
}
