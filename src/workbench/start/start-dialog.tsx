import { useEffect, useId, useRef, useState } from 'react';
import { getTemplate } from '../../geometry';
import { usePlan } from '../../store';
import { Dialog } from '../dialog';
import { openPlan } from '../plans/opening';
import { MeasureFirst } from './measure-first';
import { type NewCar, planOf } from './new-car';
import { StyleChoice } from './style-choice';
import './start.css';

export interface StartDialogProps {
  open: boolean;
  onClose: () => void;
}

type Step = 'style' | 'measure';

/** A new car: body style and drive side, then the dimensions worth measuring first. */
export function StartDialog({ open, onClose }: StartDialogProps) {
  const earlier = usePlan((state) => state.plan.cabin);
  const [step, setStep] = useState<Step>('style');
  const [car, setCar] = useState<NewCar | null>(null);
  const begun = car ?? {
    template: getTemplate(earlier.template)?.id ?? 'compact-hatch',
    wheelSide: earlier.wheelSide,
    title: '',
    dimensions: {},
  };
  const close = () => {
    setStep('style');
    setCar(null);
    onClose();
  };
  const begin = () => {
    void openPlan(planOf(begun));
    close();
  };
  const first = step === 'style';
  const measured = Object.keys(begun.dimensions).length;

  return (
    <Dialog
      open={open}
      onClose={close}
      wide
      title={first ? 'New car' : 'Measure these first'}
      lead={
        first
          ? 'Pick the body style nearest to the car; its dimensions are changed to the real ones.'
          : 'Of all dimensions, these move the paths of a three-way front stage most. The rest can wait.'
      }
      actions={
        <>
          <p className="board-dialog-aside">
            {first
              ? 'The plan you have open stays kept.'
              : `${measured === 0 ? 'None' : measured} measured so far; all can be changed later.`}
          </p>
          {!first && (
            <button type="button" onClick={() => setStep('style')}>
              Back
            </button>
          )}
          <button type="button" className={first ? undefined : 'primary'} onClick={begin}>
            {first ? 'Begin with typical values' : 'Begin the plan'}
          </button>
          {first && (
            <button type="button" className="primary" onClick={() => setStep('measure')}>
              Next: what to measure
            </button>
          )}
        </>
      }
    >
      <StepFocus key={step} step={step} />
      {first ? (
        <StyleStep car={begun} onChange={setCar} />
      ) : (
        <MeasureFirst car={begun} onChange={setCar} />
      )}
    </Dialog>
  );
}

/** The buttons pressed to get here may be gone: keyboard and screen reader begin at the top. */
function StepFocus({ step }: { step: Step }) {
  const mark = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    if (step === 'measure') mark.current?.focus();
  }, [step]);
  return (
    <p className="unseen" ref={mark} tabIndex={-1}>
      {step === 'style' ? 'Step 1 of 2: the body style' : 'Step 2 of 2: measure these first'}
    </p>
  );
}

function StyleStep({ car, onChange }: { car: NewCar; onChange: (car: NewCar) => void }) {
  const id = useId();
  return (
    <div className="style-step">
      <StyleChoice
        value={car.template}
        // What was measured is the car's, but another body style means another car.
        onChange={(template) => onChange({ ...car, template, dimensions: {} })}
      />
      <div className="style-fields">
        <fieldset className="wheel-choice">
          <legend>Steering wheel</legend>
          {(['left', 'right'] as const).map((side) => (
            <label key={side} className="tick">
              <input
                type="radio"
                name={`${id}-wheel`}
                checked={car.wheelSide === side}
                onChange={() => onChange({ ...car, wheelSide: side })}
              />
              {`on the ${side}`}
            </label>
          ))}
        </fieldset>
        <div className="field">
          <label htmlFor={`${id}-title`}>Title of the new plan</label>
          <input
            id={`${id}-title`}
            dir="auto"
            autoComplete="off"
            maxLength={200}
            placeholder={getTemplate(car.template)?.name}
            value={car.title}
            onChange={(event) => onChange({ ...car, title: event.target.value })}
          />
        </div>
      </div>
    </div>
  );
}
