import { useId } from 'react';
import { COMMON_RATES_HZ, type StepChoice, type StepKind } from '../../exchange';

export interface StepFieldsProps {
  choice: StepChoice;
  onChange: (choice: StepChoice) => void;
  error: { field: 'step' | 'largest'; message: string } | null;
}

const KINDS: readonly { kind: StepKind; words: string }[] = [
  { kind: 'samples', words: 'whole samples' },
  { kind: 'ms', words: 'a step in ms' },
  { kind: 'mm', words: 'a step in mm' },
  { kind: 'cm', words: 'a step in cm' },
  { kind: 'in', words: 'a step in inches' },
];

const UNIT_WORDS: Readonly<Record<StepKind, string>> = {
  samples: 'samples',
  ms: 'ms',
  mm: 'mm',
  cm: 'cm',
  in: 'inches',
};

/** In what steps the processor's delays can be set, and how long they may be. */
export function StepFields({ choice, onChange, error }: StepFieldsProps) {
  const id = useId();
  const change = (part: Partial<StepChoice>) => onChange({ ...choice, ...part });
  const wrong = (field: 'step' | 'largest') =>
    error?.field === field
      ? ({ 'aria-invalid': true, 'aria-describedby': `${id}-${field}-error` } as const)
      : {};
  return (
    <>
      <div className="field">
        <label htmlFor={`${id}-kind`}>The processor takes</label>
        <select
          id={`${id}-kind`}
          value={choice.kind}
          onChange={(event) => change({ kind: event.target.value as StepKind })}
        >
          {KINDS.map(({ kind, words }) => (
            <option key={kind} value={kind}>
              {words}
            </option>
          ))}
        </select>
      </div>
      {choice.kind === 'samples' ? (
        <>
          <div className="field">
            <label htmlFor={`${id}-rate`}>Sample rate</label>
            <select
              id={`${id}-rate`}
              value={String(choice.rate)}
              onChange={({ target: { value } }) =>
                change({ rate: value === 'other' ? value : Number(value) })
              }
            >
              {COMMON_RATES_HZ.map((rate) => (
                <option key={rate} value={rate}>
                  {`${rate / 1000} kHz`}
                </option>
              ))}
              <option value="other">another rate</option>
            </select>
          </div>
          {choice.rate === 'other' && (
            <Typed
              id={`${id}-step`}
              label="Rate, Hz"
              value={choice.otherRate}
              onChange={(otherRate) => change({ otherRate })}
              {...wrong('step')}
            />
          )}
        </>
      ) : (
        <Typed
          id={`${id}-step`}
          label={`One step, ${UNIT_WORDS[choice.kind]}`}
          value={choice.amounts[choice.kind]}
          onChange={(value) => change({ amounts: { ...choice.amounts, [choice.kind]: value } })}
          {...wrong('step')}
        />
      )}
      <Typed
        id={`${id}-largest`}
        label={`Longest it holds, ${UNIT_WORDS[choice.kind]}`}
        hint="Leave empty if you do not know; another unit can be written behind the number: 10 ms"
        value={choice.largest}
        onChange={(largest) => change({ largest })}
        {...wrong('largest')}
      />
      {error && (
        <p className="field-error export-error" id={`${id}-${error.field}-error`} role="alert">
          {sentence(error.message)}
        </p>
      )}
    </>
  );
}

export const sentence = (text: string): string =>
  `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

interface TypedProps {
  id: string;
  label: string;
  hint?: string;
  value: string;
  onChange: (value: string) => void;
  'aria-invalid'?: boolean;
  'aria-describedby'?: string;
}

function Typed({ id, label, hint, value, onChange, ...aria }: TypedProps) {
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        inputMode="decimal"
        autoComplete="off"
        placeholder={hint ? 'no limit' : undefined}
        title={hint}
        value={value}
        onChange={(event) => onChange(event.target.value)}
        {...aria}
      />
    </div>
  );
}
