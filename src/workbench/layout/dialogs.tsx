import { lazy, Suspense, useState } from 'react';
import { Boundary } from '../parts/boundary';
import type { DialogName } from './top-bar';

// None is needed for the first numbers on screen, so they come with the first time they open.
const PlansDialog = lazy(async () => ({
  default: (await import('../plans/plans-dialog')).PlansDialog,
}));
const KeysDialog = lazy(async () => ({ default: (await import('./keys-dialog')).KeysDialog }));
const StartDialog = lazy(async () => ({ default: (await import('../start')).StartDialog }));
const ExportDialog = lazy(async () => ({ default: (await import('../export')).ExportDialog }));

/** The dialogs behind the top bar, of which one at most is open. */
export function Dialogs({ open, onClose }: { open: DialogName | null; onClose: () => void }) {
  const [asked, setAsked] = useState<ReadonlySet<DialogName>>(new Set());
  if (open && !asked.has(open)) setAsked(new Set([...asked, open]));
  return (
    <Boundary what="the dialog">
      <Suspense fallback={null}>
        {asked.has('plans') && <PlansDialog open={open === 'plans'} onClose={onClose} />}
      </Suspense>
      <Suspense fallback={null}>
        {asked.has('keys') && <KeysDialog open={open === 'keys'} onClose={onClose} />}
      </Suspense>
      <Suspense fallback={null}>
        {asked.has('start') && <StartDialog open={open === 'start'} onClose={onClose} />}
      </Suspense>
      <Suspense fallback={null}>
        {asked.has('export') && <ExportDialog open={open === 'export'} onClose={onClose} />}
      </Suspense>
    </Boundary>
  );
}
