import { useId, useMemo, useState } from 'react';
import { delayExport } from '../../exchange';
import { seatName } from '../../plan/names';
import { currentOption, useAnswer, usePlan } from '../../store';
import { OptionCautions } from '../cautions';
import { Dialog } from '../dialog';
import { DelayPreview } from './delay-preview';
import { SaveButtons } from './save-buttons';
import { readStepChoice, startingChoice } from './step-choice';
import { StepFields } from './step-fields';
import './export.css';

export interface ExportDialogProps {
  open: boolean;
  onClose: () => void;
}

/**
 * Delays and gains for one seat, rounded to what the processor can be set to, as a file or text.
 * What was chosen last stays chosen while the plan is open.
 */
export function ExportDialog(props: ExportDialogProps) {
  const openedAs = usePlan((state) => state.openedAs);
  return <ExportOfPlan key={openedAs} {...props} />;
}

function ExportOfPlan({ open, onClose }: ExportDialogProps) {
  const plan = usePlan((state) => state.plan);
  const answer = useAnswer();
  const id = useId();
  const [chosen, setChosen] = useState<{ option?: string; seat?: string }>({});
  const [choice, setChoice] = useState(() => startingChoice(plan.alignment.sampleRateHz));

  const options = answer.ok ? answer.options : [];
  const result =
    options.find((option) => option.id === chosen.option) ?? (open ? currentOption(answer) : null);
  const seats = result?.seats ?? [];
  const wanted = chosen.seat ?? plan.alignment.seat;
  const seat = seats.find((one) => one.id === wanted)?.id ?? seats[0]?.id;
  const step = useMemo(() => readStepChoice(choice), [choice]);
  const all = useMemo(
    () =>
      open && result && seat !== undefined && step.ok
        ? delayExport(result, plan, { ...step, seat })
        : null,
    [open, result, plan, seat, step],
  );

  return (
    <Dialog
      open={open}
      onClose={onClose}
      wide
      title="Export delays"
      lead="A starting tune: what to set on each channel so that all speakers reach one seat together."
      actions={<SaveButtons all={all} />}
    >
      {!answer.ok && (
        <p className="notice">
          <strong>This plan gives no numbers yet.</strong>
          {answer.error.message}
        </p>
      )}
      <div className="export-fields">
        <div className="field">
          <label htmlFor={`${id}-option`}>Option</label>
          <select
            id={`${id}-option`}
            value={result?.id ?? ''}
            onChange={(event) => setChosen({ ...chosen, option: event.target.value })}
          >
            {options.map((option) => (
              <option key={option.id} value={option.id}>
                {option.title ?? option.id}
              </option>
            ))}
          </select>
        </div>
        <div className="field">
          <label htmlFor={`${id}-seat`}>Seat</label>
          <select
            id={`${id}-seat`}
            value={seat ?? ''}
            onChange={(event) => setChosen({ ...chosen, seat: event.target.value })}
          >
            {seats.map((one) => (
              <option key={one.id} value={one.id}>
                {seatName(one.id)}
              </option>
            ))}
          </select>
        </div>
        <StepFields
          choice={choice}
          onChange={setChoice}
          error={step.ok ? null : { field: step.field, message: step.message }}
        />
      </div>
      {all && <DelayPreview all={all} />}
      <div className="export-cautions">
        <OptionCautions option={result?.id ?? null} />
      </div>
    </Dialog>
  );
}
