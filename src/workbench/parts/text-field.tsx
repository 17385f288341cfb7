import { useEffect, useId, useState } from 'react';

export interface TextFieldProps {
  label: string;
  value: string;
  onCommit: (value: string) => void;
  /** The label is for screen readers only. */
  hideLabel?: boolean;
  readOnly?: boolean;
  className?: string;
  maxLength?: number;
  autoFocus?: boolean;
  onDone?: () => void;
}

/** One line of text: Enter or leaving commits, Esc restores. Empty text changes nothing. */
export function TextField(props: TextFieldProps) {
  const { label, value, onCommit, hideLabel, readOnly, className, maxLength = 200 } = props;
  const id = useId();
  const [typed, setTyped] = useState(value);
  useEffect(() => setTyped(value), [value]);

  function commit(): void {
    const text = typed.trim();
    if (text === '') setTyped(value);
    else if (text !== value) onCommit(text);
    props.onDone?.();
  }

  return (
    <div className={className ? `field ${className}` : 'field'}>
      <label htmlFor={id} className={hideLabel ? 'unseen' : undefined}>
        {label}
      </label>
      <input
        id={id}
        type="text"
        dir="auto"
        autoComplete="off"
        value={typed}
        maxLength={maxLength}
        readOnly={readOnly}
        // biome-ignore lint/a11y/noAutofocus: only where the user has just asked to type here
        autoFocus={props.autoFocus}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === 'Enter') event.currentTarget.blur();
          if (event.key === 'Escape') {
            event.stopPropagation();
            setTyped(value);
            props.onDone?.();
          }
        }}
      />
    </div>
  );
}
