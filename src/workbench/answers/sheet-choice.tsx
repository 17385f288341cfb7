import { type KeyboardEvent, useRef } from 'react';

export interface SheetChoiceProps<T extends string> {
  label: string;
  value: T;
  choices: readonly { id: T; title: string }[];
  onChange: (value: T) => void;
}

/** The sheets by their titles: one tab stop, arrows move among them, in rows where it is narrow. */
export function SheetChoice<T extends string>(props: SheetChoiceProps<T>) {
  const { label, value, choices, onChange } = props;
  const bar = useRef<HTMLDivElement>(null);
  const onKeyDown = (event: KeyboardEvent) => {
    const buttons = [...(bar.current?.querySelectorAll('button') ?? [])];
    const from = buttons.indexOf(event.target as HTMLButtonElement);
    const to = nextIndex(event.key, from, buttons.length);
    if (from < 0 || to === null) return;
    event.preventDefault();
    buttons[to]?.focus();
  };
  return (
    <div className="sheet-choice" role="toolbar" aria-label={label} ref={bar} onKeyDown={onKeyDown}>
      {choices.map(({ id, title }) => (
        <button
          key={id}
          type="button"
          aria-pressed={id === value}
          tabIndex={id === value ? 0 : -1}
          onClick={() => onChange(id)}
        >
          {title}
        </button>
      ))}
    </div>
  );
}

/** Where an arrow, Home or End leads among `count` buttons; `null` for any other key. */
export function nextIndex(key: string, from: number, count: number): number | null {
  if (key === 'ArrowRight' || key === 'ArrowDown') return (from + 1) % count;
  if (key === 'ArrowLeft' || key === 'ArrowUp') return (from - 1 + count) % count;
  if (key === 'Home') return 0;
  if (key === 'End') return count - 1;
  return null;
}
