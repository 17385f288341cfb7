import { useState } from 'react';
import { CURRENT_VERSION } from '../../plan/schema';
import { usePlan } from '../../store';
import { Dialog } from '../dialog';
import { sentence } from '../parts/check-number';
import { KeptList } from './kept-list';
import { type FileOutcome, pickPlanFile, savePlanFile } from './plan-files';
import { PlanLink } from './plan-link';
import './plans.css';

export interface PlansDialogProps {
  open: boolean;
  onClose: () => void;
}

/** The plans kept in this browser, and plans in and out of files. */
export function PlansDialog({ open, onClose }: PlansDialogProps) {
  const plan = usePlan((state) => state.plan);
  const [said, setSaid] = useState('');
  // Written by this version it could lose what only the newer one knows.
  const newer = plan.version > CURRENT_VERSION;
  const tell = (outcome: FileOutcome, done: string) =>
    setSaid(
      outcome.kind === 'done' ? done : outcome.kind === 'failed' ? sentence(outcome.why) : '',
    );
  const close = () => {
    setSaid('');
    onClose();
  };
  return (
    <Dialog
      open={open}
      onClose={close}
      title="Plans"
      lead="Kept in this browser, on this machine; nothing is sent anywhere. A plan file can also be dragged onto the page."
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
              if (outcome.kind === 'done') close();
            }}
          >
            Open a file
          </button>
          <button
            type="button"
            className="primary"
            disabled={newer}
            onClick={async () => tell(await savePlanFile(plan), 'Saved to a file.')}
          >
            Save this plan to a file
          </button>
        </>
      }
    >
      <KeptList onOpened={close} onSay={setSaid} />
      <PlanLink may={!newer} onOpened={close} onSay={setSaid} />
    </Dialog>
  );
}
