import { type ReactNode, useEffect, useRef, useState } from 'react';
import { setTitle } from '../../plan/edits';
import { deleteKept, duplicateKept, planStore, renameKept, type ShelfEntry } from '../../store';
import { sentence } from '../parts/check-number';
import { TextField } from '../parts/text-field';
import type { KeptListProps } from './kept-list';
import { openKeptPlan } from './opening';

export interface KeptPlanProps extends KeptListProps {
  entry: ShelfEntry;
  /** It is the one on the board. */
  open: boolean;
  onDeleted: () => void;
}

type Doing = 'rename' | 'delete' | null;

/** A title within a sentence, its own writing direction kept to itself. */
const quote = (title: string): string => `“\u2068${title}\u2069”`;

const DATE = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });

/** One kept plan: its title, when it was kept last, what can be done with it. */
export function KeptPlan({ entry, open, onOpened, onDeleted, onSay }: KeptPlanProps) {
  const { planId, title, savedAt } = entry;
  const [doing, setDoing] = useState<Doing>(null);
  const row = useFocusBack(doing);

  const rename = async (to: string) => {
    setDoing(null);
    if (open) return planStore.edit('rename the plan', setTitle(to));
    const answer = await renameKept(planId, to);
    if (!answer.ok) onSay(sentence(answer.message));
  };
  const copy = async () => {
    const answer = await duplicateKept(planId);
    onSay(answer.ok ? `Copied ${quote(title)}.` : sentence(answer.message));
  };
  const remove = async () => {
    await deleteKept(planId);
    onDeleted();
    onSay(`Deleted ${quote(title)}.`);
  };

  return (
    <li className="kept-plan" ref={row}>
      <div className="kept-what">
        {doing === 'rename' ? (
          // biome-ignore lint/a11y/noStaticElementInteractions: listens for the focus of the field inside
          <div onFocus={(event) => (event.target as unknown as HTMLInputElement).select()}>
            <TextField
              label={`New title of ${title}`}
              hideLabel
              value={title}
              autoFocus
              onCommit={(to) => void rename(to)}
              onDone={() => setDoing(null)}
            />
          </div>
        ) : (
          <strong>
            <bdi>{title}</bdi>
          </strong>
        )}
        <span className="quiet-text">
          {open && 'open now · '}
          <time dateTime={new Date(savedAt).toISOString()}>{DATE.format(savedAt)}</time>
        </span>
      </div>
      {doing === 'delete' ? (
        <Confirm title={title} open={open} onKeep={() => setDoing(null)} onDelete={remove} />
      ) : (
        <div className="kept-actions">
          {!open && (
            <Act
              title={title}
              onClick={async () => {
                if (await openKeptPlan(planId, title)) onOpened();
              }}
            >
              Open
            </Act>
          )}
          <Act title={title} onClick={copy}>
            Copy
          </Act>
          <Act title={title} act="rename" onClick={() => setDoing('rename')}>
            Rename
          </Act>
          <Act title={title} act="delete" onClick={() => setDoing('delete')}>
            Delete
          </Act>
        </div>
      )}
    </li>
  );
}

/** A button whose name says which plan it is about. */
function Act(props: { title: string; act?: string; onClick: () => void; children: ReactNode }) {
  return (
    <button type="button" data-act={props.act} onClick={props.onClick}>
      {props.children}
      <span className="unseen">{` ${props.title}`}</span>
    </button>
  );
}

/** What was in the way is gone again: the keyboard goes back to the button it came from. */
function useFocusBack(doing: Doing) {
  const row = useRef<HTMLLIElement>(null);
  const before = useRef<Doing>(null);
  useEffect(() => {
    const came = before.current;
    before.current = doing;
    if (doing !== null || came === null) return;
    // A moment later, so that a click elsewhere keeps the focus it gives.
    const timer = setTimeout(() => {
      if (document.activeElement === document.body)
        row.current?.querySelector<HTMLElement>(`[data-act=${came}]`)?.focus();
    });
    return () => clearTimeout(timer);
  }, [doing]);
  return row;
}

interface ConfirmProps {
  title: string;
  open: boolean;
  onKeep: () => void;
  onDelete: () => void;
}

function Confirm({ title, open, onKeep, onDelete }: ConfirmProps) {
  return (
    <fieldset className="kept-actions kept-confirm">
      <legend>
        Delete “<bdi>{title}</bdi>”? It cannot be brought back.
        {open && ' It stays on the board until another plan is opened.'}
      </legend>
      {/* biome-ignore lint/a11y/noAutofocus: it takes the place of the button just pressed */}
      <button type="button" autoFocus onClick={onKeep}>
        Keep it
      </button>
      <button type="button" onClick={onDelete}>
        Delete it
      </button>
    </fieldset>
  );
}
