import { lazy, type ReactNode, Suspense, useEffect, useState } from 'react';
import { openFile, refuseFile, useOpening } from './opening';
import './plans.css';

const AnswerDialog = lazy(async () => ({
  default: (await import('./answer-dialog')).AnswerDialog,
}));

/** Takes a plan file dragged anywhere onto the page, and asks or refuses for any way of opening. */
export function FileDrop({ children }: { children: ReactNode }) {
  const over = useFilesOver();
  const asked = useOpening((state) => state.asked !== null);
  const [everAsked, setEverAsked] = useState(false);
  if (asked && !everAsked) setEverAsked(true);
  return (
    <>
      {children}
      {over && (
        <div className="file-drop" aria-hidden="true">
          <p>Let go to open this plan</p>
        </div>
      )}
      <Suspense fallback={null}>{everAsked && <AnswerDialog />}</Suspense>
    </>
  );
}

const hasFiles = (event: DragEvent): boolean =>
  event.dataTransfer?.types.includes('Files') ?? false;

function useFilesOver(): boolean {
  const [over, setOver] = useState(false);
  useEffect(() => {
    // Enter and leave fire for every element passed over: only the balance tells when it is gone.
    let depth = 0;
    const settle = (next: number) => {
      depth = Math.max(0, next);
      setOver(depth > 0);
    };
    const enter = (event: DragEvent) => {
      if (hasFiles(event)) settle(depth + 1);
    };
    const leave = (event: DragEvent) => {
      if (hasFiles(event)) settle(depth - 1);
    };
    const move = (event: DragEvent) => {
      // Without this the browser would leave the page and show the file instead.
      if (hasFiles(event)) event.preventDefault();
    };
    const drop = (event: DragEvent) => {
      if (!hasFiles(event)) return;
      event.preventDefault();
      settle(0);
      const files = [...(event.dataTransfer?.files ?? [])];
      const [file] = files;
      if (files.length > 1) refuseFile(`${files.length} files`, 'one plan can be opened at a time');
      else if (file) void openFile(file);
    };
    addEventListener('dragenter', enter);
    addEventListener('dragleave', leave);
    addEventListener('dragover', move);
    addEventListener('drop', drop);
    return () => {
      removeEventListener('dragenter', enter);
      removeEventListener('dragleave', leave);
      removeEventListener('dragover', move);
      removeEventListener('drop', drop);
    };
  }, []);
  return over;
}
