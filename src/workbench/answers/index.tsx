import { type CSSProperties, useState } from 'react';
import { seatName } from '../../plan/names';
import { Segments } from '../parts/segments';
import { useBoard } from '../parts/use-board';
import { Announcer } from './announcer';
import { ArrivalsTable } from './arrivals-table';
import { DelaysTable } from './delays-table';
import { PairLines } from './pair-lines';
import { PairsTable } from './pairs-table';
import { Refused } from './refused';
import { StripChart } from './strip-chart';

const SHEETS = [
  { id: 'strip', title: 'Times', Body: StripChart },
  { id: 'arrivals', title: 'Arrivals', Body: ArrivalsTable },
  { id: 'pairs', title: 'Pairs', Body: PairsTable },
  { id: 'delays', title: 'Delays', Body: DelaysTable },
] as const;

/** The answer for the seat in view: words for each pair, times on a strip, tables. */
export function Answers() {
  const { board, refusal } = useBoard();
  const [sheet, setSheet] = useState<(typeof SHEETS)[number]['id']>('strip');
  const Body = SHEETS.find(({ id }) => id === sheet)?.Body ?? StripChart;
  const seat = board?.seat;

  return (
    <section
      className="answers"
      id="answers"
      aria-labelledby="answers-head"
      tabIndex={-1}
      data-refused={refusal !== null}
      style={{ '--rows': board?.option?.speakers.length ?? 0 } as CSSProperties}
    >
      <Announcer />
      <div className="answer-words">
        <div className="answer-head">
          <h2 id="answers-head">{seat ? `At the ${seatName(seat.id)}` : 'The answer'}</h2>
          {!refusal && <span>each against its twin</span>}
        </div>
        {refusal ? <Refused refusal={refusal} /> : board && <PairLines board={board} />}
        {!refusal && <p className="footnote">In straight lines to the middle of the head.</p>}
      </div>
      {!refusal && board && (
        <div className="answer-sheets">
          <Segments
            label="Which numbers"
            value={sheet}
            choices={SHEETS.map(({ id, title }) => ({ value: id, label: title }))}
            onChange={setSheet}
          />
          <div className="answer-sheet">
            <Body board={board} />
          </div>
        </div>
      )}
    </section>
  );
}
