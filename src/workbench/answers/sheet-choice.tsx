import { type KeyboardEvent, useRef } from 'react';

export interface SheetChoiceProps<T extends string> {
  label: string;
  value: T;
  /** In groups, one row each, in the order in which the groups first come. */
  choices: readonly { id: T; title: string; group: string }[];
  onChange: (value: T) => void;
}

/** The sheets by their titles: one tab stop, arrows move among them, in rows where it is narrow. */
export function SheetChoice<T extends string>(props: SheetChoiceProps<T>) {
  const { label, value, choices, onChange } = props;
  const groups = [...new Set(choices.map(({ group }) => group))];
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
      {groups.map((group) => (
        // biome-ignore lint/a11y/useSemanticElements: a fieldset is not laid out in a row everywhere
        <div key={group} className="sheet-group" role="group" aria-label={group}>
          <span className="sheet-group-head" aria-hidden="true">
            {group}
          </span>
          {choices
            .filter((choice) => choice.group === group)
            .map(({ id, title }) => (
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
