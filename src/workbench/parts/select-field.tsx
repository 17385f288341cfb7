import { type ReactNode, useId } from 'react';

export interface Choice {
  value: string;
  label: string;
}

export interface SelectFieldProps {
  label: string;
  value: string;
  choices: readonly (Choice | { group: string; choices: readonly Choice[] })[];
  onChange: (value: string) => void;
  className?: string;
  hint?: ReactNode;
  disabled?: boolean;
}

/** One of several: the native list, with its label above. */
export function SelectField(props: SelectFieldProps) {
  const { label, value, choices, onChange, className, hint, disabled } = props;
  const id = useId();
  return (
    <div className={className ? `field ${className}` : 'field'}>
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        value={value}
        disabled={disabled}
        aria-describedby={hint ? `${id}-hint` : undefined}
        onChange={(event) => onChange(event.target.value)}
      >
        {choices.map((entry) =>
          'group' in entry ? (
            <optgroup key={entry.group} label={entry.group}>
              {entry.choices.map(option)}
            </optgroup>
          ) : (
            option(entry)
          ),
        )}
      </select>
      {hint && (
        <p className="field-hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
    </div>
  );
}

const option = ({ value, label }: Choice) => (
  <option key={value} value={value}>
    {label}
  </option>
);
