import { lazy, Suspense, useState } from 'react';
import { Boundary } from '../parts/boundary';
import { PlansDialog } from '../plans';
import { KeysDialog } from './keys-dialog';
import type { DialogName } from './top-bar';

// Neither is needed for the first numbers on screen, so they come with the first time they open.
const StartDialog = lazy(async () => ({ default: (await import('../start')).StartDialog }));
const ExportDialog = lazy(async () => ({ default: (await import('../export')).ExportDialog }));

/** The dialogs behind the top bar, of which one at most is open. */
export function Dialogs({ open, onClose }: { open: DialogName | null; onClose: () => void }) {
  const [asked, setAsked] = useState<ReadonlySet<DialogName>>(new Set());
  if (open && !asked.has(open)) setAsked(new Set([...asked, open]));
  return (
    <>
      <PlansDialog open={open === 'plans'} onClose={onClose} />
      <KeysDialog open={open === 'keys'} onClose={onClose} />
      <Boundary what="the dialog">
        <Suspense fallback={null}>
          {asked.has('start') && <StartDialog open={open === 'start'} onClose={onClose} />}
        </Suspense>
        <Suspense fallback={null}>
          {asked.has('export') && <ExportDialog open={open === 'export'} onClose={onClose} />}
        </Suspense>
      </Boundary>
    </>
  );
}
