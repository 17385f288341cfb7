import type { DragEvent, KeyboardEvent, ReactNode } from 'react';

interface DropPlaceProps {
  active: boolean;
  onFiles: (files: File[]) => void;
  children: ReactNode;
}

/**
 * Takes files dropped anywhere on the dialog inside it. Their events end here: the page around
 * takes a dropped file for a plan. So do plain keys: with a button in focus the page would take
 * Delete and Esc for the speaker whose dialog this is.
 */
export function DropPlace({ active, onFiles, children }: DropPlaceProps) {
  const mine = (act?: (event: DragEvent) => void) => (event: DragEvent) => {
    if (!active || !event.dataTransfer.types.includes('Files')) return;
    event.stopPropagation();
    event.preventDefault();
    act?.(event);
  };
  const keep = (event: KeyboardEvent) => {
    if (active && !event.ctrlKey && !event.metaKey) event.stopPropagation();
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is a shortcut; the button does the same
    <div
      onKeyDown={keep}
      onDragEnter={mine()}
      onDragLeave={mine()}
      onDragOver={mine()}
      onDrop={mine((event) => onFiles([...event.dataTransfer.files]))}
    >
      {children}
    </div>
  );
}
