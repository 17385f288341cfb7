import { lazy, Suspense } from 'react';
import { useSession } from '../../store';
import { Boundary } from '../parts/boundary';
import { LineSign } from '../parts/marks';
import type { Board } from '../parts/use-board';
import { type PairWords, pairWords } from './pair-words';
import { selectSpeaker } from './speaker-button';
import { wordingFor } from './wording';

// Not needed for the first numbers on screen.
const GroupFitSign = lazy(() => import('../fit/group-fit'));

/** The answer in words: one line for each pair at the seat in view. */
export function PairLines({ board }: { board: Board }) {
  const unit = useSession((session) => session.lengthUnit);
  const selection = useSession((session) => session.selection);
  const { cabin, option, seat } = board;
  if (!option || !seat) return <p className="quiet-text">There is no seat to listen from.</p>;
  if (option.speakers.length === 0)
    return <p className="quiet-text">No speaker stands in this option yet. Add a pair first.</p>;
  const lines = pairWords(option.speakers, seat, wordingFor(cabin, option.speakers, unit));
  return (
    <ul className="pair-lines">
      {lines.map((line) => (
        <li
          key={line.id}
          data-selected={selection?.kind === 'speaker' && line.speakers.includes(selection.id)}
        >
          <PairAnswer line={line} />
          <Boundary what="whether it fits">
            <Suspense fallback={null}>
              <GroupFitSign board={board} ids={line.speakers} />
            </Suspense>
          </Boundary>
          {line.notes.map((note) => (
            <p key={note.text} className={`pair-note ${note.line}`}>
              <LineSign line={note.line} wordless /> {note.text}
            </p>
          ))}
        </li>
      ))}
    </ul>
  );
}

/** The sentence itself; choosing it selects the first of the speakers it is about. */
function PairAnswer({ line }: { line: PairWords }) {
  const [first] = line.speakers;
  return (
    <button
      type="button"
      className="pair-answer"
      onClick={() => first !== undefined && selectSpeaker(first)}
    >
      {line.answer}
    </button>
  );
}
