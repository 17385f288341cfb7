import { type KeyboardEvent, type ReactNode, useEffect, useId, useRef, useState } from 'react';
import { checkNumber, nudged } from './check-number';
import type { FieldKind } from './field-kind';

/** What happens with a number once it is read: all in the plan's unit (mm, degrees, Hz, °C). */
export interface NumberSink {
  commit: (value: number) => void;
  /** While an arrow key is held; left out, every press commits. */
  nudge?: (value: number) => void;
  /** The held key was let go (keep) or given up. */
  settle?: (keep: boolean) => void;
}

export interface NumberFieldProps {
  label: string;
  value: number | null;
  kind: FieldKind;
  sink: NumberSink;
  min?: number;
  max?: number;
  /** Shown while empty, e.g. the value it falls back to. */
  placeholder?: string;
  /** Called when the field is emptied; left out, an empty field is refused. */
  onClear?: () => void;
  hint?: ReactNode;
  className?: string;
  readOnly?: boolean;
}

/**
 * One number, typed: sums, decimal comma and explicit units are read; Enter or leaving commits,
 * Esc restores, arrows step (Shift ten at once, Alt a tenth). Wrong input stays, with a sentence.
 */
export function NumberField(props: NumberFieldProps) {
  const { label, value, kind, sink, min, max, placeholder, onClear, hint, className } = props;
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [error, setError] = useState<string | null>(null);
  const held = useRef<number | null>(null);
  const shown = value === null ? '' : kind.show(value);

  // A value changed elsewhere (a drag, undo) overrules what stands here half typed.
  // biome-ignore lint/correctness/useExhaustiveDependencies: only a new value clears the field
  useEffect(() => {
    if (held.current !== null) return;
    setTyped(null);
    setError(null);
  }, [shown]);

  function restore(): void {
    setTyped(null);
    setError(null);
  }

  function settle(keep: boolean): void {
    if (held.current === null) return;
    held.current = null;
    sink.settle?.(keep);
    restore();
  }

  function commit(): void {
    settle(true);
    const text = typed ?? shown;
    if (text === shown) {
      restore();
      return;
    }
    if (text.trim() === '' && onClear) {
      restore();
      onClear();
      return;
    }
    const read = checkNumber(text, kind, { min, max });
    if (read.ok) {
      restore();
      sink.commit(read.value);
    } else setError(read.message);
  }

  function nudge(event: KeyboardEvent, sign: number): void {
    const from = held.current ?? value;
    if (from === null || props.readOnly) return;
    event.preventDefault();
    const next = nudged(from, sign * (event.shiftKey ? 10 : event.altKey ? 0.1 : 1), kind, {
      min,
      max,
    });
    setError(null);
    if (!sink.nudge) {
      restore();
      sink.commit(next);
      return;
    }
    held.current = next;
    setTyped(kind.show(next));
    sink.nudge(next);
  }

  function onKeyDown(event: KeyboardEvent): void {
    if (event.key === 'Enter') {
      event.preventDefault();
      commit();
    } else if (event.key === 'Escape' && (typed !== null || held.current !== null)) {
      // Esc here gives up this field, and nothing around it.
      event.stopPropagation();
      event.preventDefault();
      settle(false);
      restore();
    } else if (event.key === 'ArrowUp') nudge(event, 1);
    else if (event.key === 'ArrowDown') nudge(event, -1);
  }

  const described = [error && `${id}-error`, hint && `${id}-hint`].filter(Boolean).join(' ');
  return (
    <div className={className ? `field ${className}` : 'field'}>
      <label htmlFor={id}>{label}</label>
      <div className="field-box" style={{ '--unit-room': `${kind.unit.length + 0.5}ch` } as object}>
        <input
          id={id}
          type="text"
          inputMode="text"
          autoComplete="off"
          spellCheck={false}
          value={typed ?? shown}
          placeholder={placeholder}
          readOnly={props.readOnly}
          aria-invalid={error ? true : undefined}
          aria-describedby={described || undefined}
          onChange={(event) => setTyped(event.target.value)}
          onFocus={(event) => event.target.select()}
          onBlur={commit}
          onKeyDown={onKeyDown}
          onKeyUp={(event) => {
            if (event.key === 'ArrowUp' || event.key === 'ArrowDown') settle(true);
          }}
        />
        <span className="unit" aria-hidden="true">
          {kind.unit}
        </span>
      </div>
      {error && (
        <p className="field-error" id={`${id}-error`} role="alert">
          {error}
        </p>
      )}
      {hint && (
        <p className="field-hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
    </div>
  );
}
