import { lazy, Suspense } from 'react';
import type { PlanOption } from '../../plan/types';

// Not needed for the first numbers on screen.
const AddForm = lazy(() => import('./add-form'));

/** Adds a speaker or a pair of a role and common size, at a spot usual for it. */
export function AddSpeakers({ option }: { option: PlanOption }) {
  return (
    <details
      className="add-speakers"
      open={option.speakers.length === 0}
      onToggle={({ currentTarget }) => {
        if (currentTarget.open) currentTarget.scrollIntoView({ block: 'nearest' });
      }}
    >
      <summary className="button">Add speakers…</summary>
      <Suspense fallback={null}>
        <AddForm option={option} />
      </Suspense>
    </details>
  );
}
