import { useId } from 'react';
import {
  COMMON_RATES_HZ,
  readStepChoice,
  type StepChoice,
  type StepKind,
  whomChoices,
} from '../../exchange';
import { usePlan } from '../../store';
import { chooseTune, useTuneChoice } from '../../store/tune-choice';
import { type PaperFacts, usePaperFacts } from '../facts';
import { Choice } from '../room/choice';
import { stepOf } from './tune-facts';

/** Whom the tune serves and what the processor can be set in: the same as in the export dialog. */
export default function TuneFields() {
  const answer = usePaperFacts();
  return answer.ok ? <Fields facts={answer.facts} /> : null;
}

const KINDS: readonly { value: StepKind; label: string; unit: string }[] = [
  { value: 'samples', label: 'Whole samples', unit: 'samples' },
  { value: 'ms', label: 'A step in ms', unit: 'ms' },
  { value: 'mm', label: 'A step in mm', unit: 'mm' },
  { value: 'cm', label: 'A step in cm', unit: 'cm' },
  { value: 'in', label: 'A step in inches', unit: 'inches' },
];

function Fields({ facts }: { facts: PaperFacts }) {
  const openedAs = usePlan((state) => state.openedAs);
  const tune = useTuneChoice(openedAs);
  const step = stepOf(facts, tune);
  const whom = whomChoices(facts, tune.whom);
  const change = (part: Partial<StepChoice>) =>
    chooseTune(openedAs, { step: { ...step, ...part } });
  const read = readStepChoice(step, facts.result.speedOfSound);
  const unit = KINDS.find(({ value }) => value === step.kind)?.unit;
  return (
    <>
      {whom && (
        <Choice
          label="Tune for"
          value={whom.value}
          choices={whom.choices}
          onChange={(value) => chooseTune(openedAs, { whom: value })}
        />
      )}
      <Choice
        label="The processor takes"
        value={step.kind}
        choices={KINDS}
        onChange={(kind) => change({ kind })}
      />
      {step.kind === 'samples' ? (
        <>
          <Choice
            label="Sample rate"
            value={String(step.rate)}
            choices={[
              ...COMMON_RATES_HZ.map((rate) => ({
                value: String(rate),
                label: `${rate / 1000} kHz`,
              })),
              { value: 'other', label: 'another rate' },
            ]}
            onChange={(value) => change({ rate: value === 'other' ? value : Number(value) })}
          />
          {step.rate === 'other' && (
            <Typed
              label="Rate, Hz"
              value={step.otherRate}
              onChange={(otherRate) => change({ otherRate })}
            />
          )}
        </>
      ) : (
        <Typed
          label={`One step, ${unit}`}
          value={step.amounts[step.kind]}
          onChange={(value) => change({ amounts: { ...step.amounts, [step.kind]: value } })}
        />
      )}
      <Typed
        label={`Longest it holds, ${unit}`}
        value={step.largest}
        onChange={(largest) => change({ largest })}
      />
      {!read.ok && (
        <p role="alert">
          {`${read.message.charAt(0).toUpperCase()}${read.message.slice(1)}. Until then the sheet is in whole samples.`}
        </p>
      )}
    </>
  );
}

function Typed(props: { label: string; value: string; onChange: (value: string) => void }) {
  const id = useId();
  return (
    <div className="room-choice">
      <label htmlFor={id}>{props.label}</label>
      <input
        id={id}
        inputMode="decimal"
        autoComplete="off"
        value={props.value}
        onChange={(event) => props.onChange(event.target.value)}
      />
    </div>
  );
}
