import { type ReactNode, useEffect, useId, useRef } from 'react';
import './dialog.css';

export interface DialogProps {
  open: boolean;
  onClose: () => void;
  title: string;
  /** One quiet sentence under the title. */
  lead?: ReactNode;
  /** Buttons at the foot, always in sight; the last one is the one that goes ahead. */
  actions?: ReactNode;
  /** For dialogs with drawings or tables. */
  wide?: boolean;
  children: ReactNode;
}

/**
 * A modal dialog on the native element: focus is held inside and given back, Esc closes. Its
 * content is mounted only while it is open, so it always starts afresh.
 */
export function Dialog({ open, onClose, title, lead, actions, wide, children }: DialogProps) {
  const element = useRef<HTMLDialogElement>(null);
  const id = useId();

  useEffect(() => {
    const dialog = element.current;
    if (!dialog) return;
    if (open && !dialog.open) dialog.showModal();
    if (!open && dialog.open) dialog.close();
  }, [open]);

  return (
    <dialog
      ref={element}
      className={wide ? 'board-dialog board-dialog-wide' : 'board-dialog'}
      aria-labelledby={`${id}-title`}
      onCancel={(event) => {
        // File inputs inside fire a cancel of their own that bubbles up here.
        if (event.target !== event.currentTarget) return;
        event.preventDefault();
        onClose();
      }}
      onClose={(event) => {
        if (event.target === event.currentTarget && open) onClose();
      }}
    >
      {open && (
        <>
          <header className="board-dialog-head">
            <div>
              <h2 id={`${id}-title`}>{title}</h2>
              {lead && <p>{lead}</p>}
            </div>
            <button type="button" onClick={onClose}>
              Close
            </button>
          </header>
          <div className="board-dialog-body">{children}</div>
          {actions && <footer className="board-dialog-foot">{actions}</footer>}
        </>
      )}
    </dialog>
  );
}
