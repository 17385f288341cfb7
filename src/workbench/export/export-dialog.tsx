import { useId, useMemo, useState } from 'react';
import { delayExport, readStepChoice, startingChoice, whomChoices } from '../../exchange';
import { currentOption, useAnswer, usePlan } from '../../store';
import { chooseTune, useTuneChoice } from '../../store/tune-choice';
import { OptionCautions } from '../cautions';
import { Dialog } from '../dialog';
import { DelayPreview } from './delay-preview';
import { SaveButtons } from './save-buttons';
import { SaveSignals } from './save-signals';
import { StepFields, sentence } from './step-fields';
import './export.css';

export interface ExportDialogProps {
  open: boolean;
  onClose: () => void;
}

/**
 * Delays, gains and polarity for one seat or the best compromise over several, rounded to what the
 * processor can be set to, as a file or text. Whom they are for follows the plan's alignment.
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
  const openedAs = usePlan((state) => state.openedAs);
  const tune = useTuneChoice(openedAs);
  const [chosen, setChosen] = useState<string>();
  const { sampleRateHz } = plan.alignment;
  const choice = useMemo(() => tune.step ?? startingChoice(sampleRateHz), [tune, sampleRateHz]);

  const options = answer.ok ? answer.options : [];
  const result =
    options.find((option) => option.id === chosen) ?? (open ? currentOption(answer) : null);
  const speed = result?.speedOfSound ?? Number.NaN;
  const step = useMemo(() => readStepChoice(choice, speed), [choice, speed]);
  const option = plan.options.find((one) => one.id === result?.id);
  const whom = useMemo(
    () => (result && option ? whomChoices({ plan, result }, tune.whom) : null),
    [plan, result, option, tune.whom],
  );
  const settings = whom?.settings;
  const cabin = answer.ok ? answer.cabin : null;
  const told = useMemo(
    () =>
      open && result && option && cabin && settings && step.ok
        ? delayExport({ plan, cabin, option, result }, { ...step, for: settings })
        : null,
    [open, result, option, cabin, plan, settings, step],
  );
  const all = told && !('problem' in told) ? told : null;

  return (
    <Dialog
      open={open}
      onClose={onClose}
      wide
      title="Export the tune"
      lead="A starting tune: what to set on each channel so that all speakers arrive together, and sounds to check it by."
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
            onChange={(event) => setChosen(event.target.value)}
          >
            {options.map((option) => (
              <option key={option.id} value={option.id}>
                {option.title ?? option.id}
              </option>
            ))}
          </select>
        </div>
        <div className="field">
          <label htmlFor={`${id}-whom`}>Delays for</label>
          <select
            id={`${id}-whom`}
            value={whom?.value ?? ''}
            onChange={(event) => chooseTune(openedAs, { whom: event.target.value })}
          >
            {whom?.choices.map(({ value, label }) => (
              <option key={value} value={value}>
                {label}
              </option>
            ))}
          </select>
        </div>
        <StepFields
          choice={choice}
          onChange={(step) => chooseTune(openedAs, { step })}
          error={step.ok ? null : { field: step.field, message: step.message }}
        />
      </div>
      {whom && <p className="export-whom">{whom.sentence}</p>}
      {told && 'problem' in told && (
        <p className="notice">
          <strong>There is no compromise to export.</strong>
          {sentence(told.problem)}
        </p>
      )}
      {all && <DelayPreview all={all} />}
      {all && option && <SaveSignals all={all} option={option} />}
      <div className="export-cautions">
        <OptionCautions option={result?.id ?? null} />
      </div>
    </Dialog>
  );
}
