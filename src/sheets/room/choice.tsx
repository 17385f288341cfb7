import { useId } from 'react';

interface ChoiceProps<T extends string> {
  label: string;
  value: T;
  choices: readonly { value: T; label: string }[];
  onChange: (value: T) => void;
}

/** One of a few, under its label. */
export function Choice<T extends string>({ label, value, choices, onChange }: ChoiceProps<T>) {
  const id = useId();
  return (
    <div className="room-choice">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => onChange(event.target.value as T)}>
        {choices.map((choice) => (
          <option key={choice.value} value={choice.value}>
            {choice.label}
          </option>
        ))}
      </select>
    </div>
  );
}
