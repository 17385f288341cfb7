import type { ReactNode } from 'react';
import './worked-out.css';

/** The formulas behind a sheet's numbers, their sources and their limits, folded away under it. */
export function WorkedOut({ children }: { children: ReactNode }) {
  return (
    <details className="worked-out">
      <summary>How this is worked out</summary>
      {children}
    </details>
  );
}
