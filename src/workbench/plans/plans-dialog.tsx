import { useState } from 'react';
import { usePlan } from '../../store';
import { Dialog } from '../dialog';
import { sentence } from '../parts/check-number';
import { type FileOutcome, pickPlanFile, savePlanFile } from './plan-files';

export interface PlansDialogProps {
  open: boolean;
  onClose: () => void;
}

/** Plans in and out of files. */
export function PlansDialog({ open, onClose }: PlansDialogProps) {
  const plan = usePlan((state) => state.plan);
  const [said, setSaid] = useState('');
  const tell = (outcome: FileOutcome, done: string) =>
    setSaid(
      outcome.kind === 'done' ? done : outcome.kind === 'failed' ? sentence(outcome.why) : '',
    );
  return (
    <Dialog
      open={open}
      onClose={onClose}
      title="Plans"
      lead="Kept in this browser, on this machine; nothing is sent anywhere."
      actions={
        <>
          <p className="board-dialog-aside" role="status">
            {said}
          </p>
          <button
            type="button"
            onClick={async () => {
              const outcome = await pickPlanFile();
              tell(outcome, '');
              if (outcome.kind === 'done') onClose();
            }}
          >
            Open a file
          </button>
          <button
            type="button"
            className="primary"
            onClick={async () => tell(await savePlanFile(plan), 'Saved to a file.')}
          >
            Save this plan to a file
          </button>
        </>
      }
    >
      <p>
        <bdi>{plan.title}</bdi> is open.
      </p>
    </Dialog>
  );
}
