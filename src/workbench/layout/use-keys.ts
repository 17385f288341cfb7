import { useEffect } from 'react';
import { tinykeys } from 'tinykeys';
import { isTied, removeSpeaker } from '../../plan/edits';
import { pairName, speakerName } from '../../plan/names';
import { planStore, sessionStore } from '../../store';
import { isTyping } from './keys';

export interface KeyActions {
  save: () => void;
  showKeys: () => void;
}

/** The page's own keys, for as long as the workbench stands. */
export function useKeys({ save, showKeys }: KeyActions): void {
  useEffect(() => {
    const unlessTyping = (act: () => void) => (event: KeyboardEvent) => {
      // On paper nothing of the plan is changed out of sight.
      if (isTyping(event.target) || sessionStore.getState().paper !== null) return;
      event.preventDefault();
      act();
    };
    const undo = unlessTyping(() => planStore.undo());
    const redo = unlessTyping(() => planStore.redo());
    const help = unlessTyping(showKeys);
    return tinykeys(window, {
      '$mod+z': undo,
      '$mod+Shift+z': redo,
      '$mod+y': redo,
      '$mod+s': (event) => {
        event.preventDefault();
        if (!document.querySelector('dialog[open]')) save();
      },
      Delete: unlessTyping(removeSelected),
      Escape: stepBack,
      // Some keyboards have the question mark without Shift.
      '?': help,
      'Shift+?': help,
    });
  }, [save, showKeys]);
}

/** Esc: goes back from the papers; on the board gives up the drag that runs, or else what is selected. */
function stepBack(event: KeyboardEvent): void {
  if (event.defaultPrevented) return;
  if (sessionStore.getState().paper !== null) {
    if (!document.querySelector('dialog[open]')) sessionStore.setState({ paper: null });
    return;
  }
  if (isTyping(event.target)) return;
  if (planStore.getState().gesture) planStore.cancelGesture();
  else sessionStore.setState({ selection: null });
}

/** Removes the selected speaker, and its twin when the pair is tied; undone like any edit. */
export function removeSelected(): void {
  const { selection, option: chosen } = sessionStore.getState();
  if (selection?.kind !== 'speaker') return;
  const { options } = planStore.getState().plan;
  const option = options.find(({ id }) => id === chosen) ?? options[0];
  const speaker = option?.speakers.find(({ id }) => id === selection.id);
  if (!option || !speaker) return;
  const pair = speaker.pair;
  const twin =
    isTied(option, pair) && option.speakers.some((s) => s.pair === pair && s.id !== speaker.id);
  const what =
    twin && pair ? `the ${pairName(pair, option.speakers)}` : speakerName(speaker, option.speakers);
  planStore.edit(`remove ${what}`, removeSpeaker(option.id, speaker.id, twin));
  sessionStore.setState({ selection: null });
}
