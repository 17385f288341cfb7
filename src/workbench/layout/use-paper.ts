import { useLayoutEffect, useRef } from 'react';
import { sessionStore, useSession } from '../../store';

let last = 'customer';

/** Shows the paper looked at last in the place of the board. */
export const openPapers = (): void => sessionStore.setState({ paper: last });

/**
 * True while a paper stands in the board's place. Coming back, the focus is where it was: the board
 * is only hidden meanwhile.
 */
export function usePaperInView(): boolean {
  const paper = useSession((session) => session.paper);
  const from = useRef<Element | null>(null);
  const open = paper !== null;
  if (open) last = paper;
  // Before the board is hidden, which would take the focus.
  if (open && !from.current) from.current = document.activeElement;
  useLayoutEffect(() => {
    if (open || !from.current) return;
    if (from.current instanceof HTMLElement) from.current.focus();
    from.current = null;
  }, [open]);
  return open;
}
