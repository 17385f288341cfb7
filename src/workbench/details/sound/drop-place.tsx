import type { DragEvent, ReactNode } from 'react';

interface DropPlaceProps {
  active: boolean;
  onFiles: (files: File[]) => void;
  children: ReactNode;
}

/**
 * Takes files dropped anywhere on the dialog inside it. Their events end here: the page around
 * takes a dropped file for a plan.
 */
export function DropPlace({ active, onFiles, children }: DropPlaceProps) {
  const mine = (act?: (event: DragEvent) => void) => (event: DragEvent) => {
    if (!active || !event.dataTransfer.types.includes('Files')) return;
    event.stopPropagation();
    event.preventDefault();
    act?.(event);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is a shortcut; the button does the same
    <div
      onDragEnter={mine()}
      onDragLeave={mine()}
      onDragOver={mine()}
      onDrop={mine((event) => onFiles([...event.dataTransfer.files]))}
    >
      {children}
    </div>
  );
}
