import { useEffect, useRef, useState } from 'react';
import { currentAnswer, currentOption, currentSeat, planStore, sessionStore } from '../../store';
import { pairWords } from './pair-words';
import { wordingFor } from './wording';

/** Long enough that a burst of edits is spoken of once, ms. */
const QUIET = 700;

/** The sentences at the seat in view now, by pair. */
function sentencesNow(): Map<string, string> {
  const answer = currentAnswer();
  const result = currentOption(answer);
  const seat = currentSeat(result);
  const option = planStore.getState().plan.options.find(({ id }) => id === result?.id);
  // A refusal is an alert of its own.
  if (!answer.ok || !option || !seat) return new Map();
  const wording = wordingFor(answer.cabin, option.speakers, sessionStore.getState().lengthUnit);
  return new Map(
    pairWords(option.speakers, seat, wording).map((line) => [
      line.id,
      [line.answer, ...line.notes.map(({ text }) => text)].join(' '),
    ]),
  );
}

/** Tells screen readers which answers an edit changed, once it is made; a drag is not spoken. */
export function Announcer() {
  const [spoken, setSpoken] = useState('');
  const before = useRef<Map<string, string> | null>(null);
  useEffect(() => {
    before.current = sentencesNow();
    let timer: ReturnType<typeof setTimeout> | undefined;
    const stop = planStore.subscribe((state, earlier) => {
      if (state.gesture || state.plan === earlier.plan) return;
      clearTimeout(timer);
      timer = setTimeout(() => {
        const now = sentencesNow();
        const changed = [...now].filter(([id, text]) => before.current?.get(id) !== text);
        before.current = now;
        if (changed.length > 0) setSpoken(changed.map(([, text]) => text).join(' '));
      }, QUIET);
    });
    return () => {
      clearTimeout(timer);
      stop();
    };
  }, []);
  return (
    <p className="unseen" role="status" aria-live="polite">
      {spoken}
    </p>
  );
}
