import { useEffect, useState } from 'react';
import { slowMotionStore } from '../../../store/slow-motion';

/** Long enough that a slider drawn along is spoken of once, ms. */
const QUIET = 500;

/** Tells screen readers where the clock stands once it stands; nothing while it plays. */
export function Announce({ words }: { words: (time: number) => string }) {
  const [spoken, setSpoken] = useState('');
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const stop = slowMotionStore.subscribe((now, before) => {
      if (now.playing) clearTimeout(timer);
      if (now.playing || (now.time === before.time && now.playing === before.playing)) return;
      clearTimeout(timer);
      timer = setTimeout(() => setSpoken(words(slowMotionStore.getState().time)), QUIET);
    });
    return () => {
      clearTimeout(timer);
      stop();
    };
  }, [words]);
  return (
    <p className="unseen" role="status" aria-live="polite">
      {spoken}
    </p>
  );
}
