import { type CSSProperties, Suspense, useState } from 'react';
import { seatName } from '../../plan/names';
import { useSession } from '../../store';
import { Boundary } from '../parts/boundary';
import { useBoard } from '../parts/use-board';
import { Announcer } from './announcer';
import { openSheet } from './open-sheet';
import { PairLines } from './pair-lines';
import { Refused } from './refused';
import { SheetChoice } from './sheet-choice';
import { SHEETS } from './sheets';

/** The answer for the seat in view: words for each pair, times on a strip, tables. */
export function Answers() {
  const { board, refusal } = useBoard();
  const sheet = useSession((session) => session.sheet);
  const [tall, setTall] = useState(false);
  const shown = SHEETS.find(({ id }) => id === sheet);
  const seat = board?.seat;

  return (
    <section
      className="answers"
      id="answers"
      aria-labelledby="answers-head"
      tabIndex={-1}
      data-refused={refusal !== null}
      data-room={tall ? 'most' : shown?.roomy ? 'more' : undefined}
      style={{ '--rows': board?.option?.speakers.length ?? 0 } as CSSProperties}
    >
      <Announcer />
      <div className="answer-words">
        <div className="answer-head">
          <h2 id="answers-head">{seat ? `At the ${seatName(seat.id)}` : 'The answer'}</h2>
          <button
            type="button"
            className="words more-room"
            aria-pressed={tall}
            onClick={() => setTall(!tall)}
          >
            More room
          </button>
        </div>
        {refusal ? <Refused refusal={refusal} /> : board && <PairLines board={board} />}
        {!refusal && (
          <p className="footnote">By the shortest free way to the middle of the head.</p>
        )}
      </div>
      {!refusal && board && (
        <div className="answer-sheets">
          <SheetChoice label="Which numbers" value={sheet} choices={SHEETS} onChange={openSheet} />
          {shown && (
            <div className="answer-sheet">
              <Boundary what={`the sheet “${shown.title}”`} className="notice" key={shown.id}>
                <Suspense fallback={<p className="quiet-text">Working it out…</p>}>
                  <shown.Body board={board} />
                </Suspense>
              </Boundary>
            </div>
          )}
        </div>
      )}
    </section>
  );
}
