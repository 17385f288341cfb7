/** The keys the whole page answers to. */
export interface KeyLine {
  keys: string[];
  does: string;
}

export const KEY_LINES: readonly KeyLine[] = [
  { keys: ['Ctrl', 'Z'], does: 'undo' },
  { keys: ['Ctrl', 'Shift', 'Z'], does: 'redo (Ctrl Y as well)' },
  { keys: ['Ctrl', 'S'], does: 'save the plan to a file' },
  { keys: ['Delete'], does: 'remove the selected speaker, with its twin when tied' },
  {
    keys: ['Esc'],
    does: 'give up a drag or a half-typed number; then go back to the whole car, or from the papers to the board',
  },
  { keys: ['↑', '↓'], does: 'in a number: one step; with Shift ten, with Alt a tenth' },
  { keys: ['Enter'], does: 'in a number: take it' },
  { keys: ['1', '…', '5'], does: 'in the drawing: free, plan, side, front, from the seat' },
  { keys: ['←', '→', '↑', '↓'], does: 'in the drawing: move what is selected, or turn the view' },
  { keys: ['Space'], does: 'in the slow motion: play and stop' },
  { keys: ['?'], does: 'this list' },
];

/** True where keys belong to what is being typed or to an open dialog, not to the page. */
export function isTyping(target: EventTarget | null): boolean {
  if (document.querySelector('dialog[open]')) return true;
  return (
    target instanceof HTMLElement &&
    (target.isContentEditable ||
      target instanceof HTMLTextAreaElement ||
      target instanceof HTMLSelectElement ||
      (target instanceof HTMLInputElement && !/^(checkbox|radio|button)$/.test(target.type)))
  );
}
