import { type DragEvent, type ReactNode, useRef, useState } from 'react';

/**
 * Takes files dropped on the sheet. Their events end here: the page around takes a dropped file for
 * a plan.
 */
export function DropHere(props: { onFiles: (files: File[]) => void; children: ReactNode }) {
  const [over, setOver] = useState(false);
  // Enter and leave come for everything inside as well: the balance tells when the files are gone.
  const depth = useRef(0);
  const mine = (act: (event: DragEvent) => void) => (event: DragEvent) => {
    if (!event.dataTransfer.types.includes('Files')) return;
    event.stopPropagation();
    event.preventDefault();
    act(event);
  };
  const move = (by: number) => {
    depth.current = Math.max(0, depth.current + by);
    setOver(depth.current > 0);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is a shortcut; the button does the same
    <div
      className="measured-sheet"
      data-over={over || undefined}
      onDragEnter={mine(() => move(1))}
      onDragLeave={mine(() => move(-1))}
      onDragOver={mine(() => undefined)}
      onDrop={mine((event) => {
        depth.current = 0;
        setOver(false);
        props.onFiles([...event.dataTransfer.files]);
      })}
    >
      {props.children}
    </div>
  );
}
