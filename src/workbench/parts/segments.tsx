export interface SegmentsProps<T extends string> {
  /** What is chosen, for those who cannot see it. */
  label: string;
  value: T;
  choices: readonly { value: T; label: string }[];
  onChange: (value: T) => void;
}

/** A few choices side by side, all in sight. */
export function Segments<T extends string>(props: SegmentsProps<T>) {
  return (
    <fieldset className="segments">
      <legend className="unseen">{props.label}</legend>
      {props.choices.map(({ value, label }) => (
        <button
          key={value}
          type="button"
          aria-pressed={value === props.value}
          onClick={() => props.onChange(value)}
        >
          {label}
        </button>
      ))}
    </fieldset>
  );
}
