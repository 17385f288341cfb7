import { useMemo } from 'react';
import { compromiseOver, pairsOf, type Stage } from '../../../geometry';
import { pairName, seatName } from '../../../plan/names';
import { formatLength, formatTime } from '../../../plan/units';
import { useSession } from '../../../store';
import { plainReason } from '../../parts/plain-reason';
import type { Board } from '../../parts/use-board';
import { useSettled } from '../../parts/use-settled';
import { useStage } from '../../parts/use-stage';
import { WorkedOut } from '../../parts/worked-out';
import { CompromisePairs } from './compromise-pairs';
import { CompromiseDelays, CompromiseSeats } from './compromise-tables';
import { leftAlone } from './left-alone';
import { countingSeats, SeatChoice } from './seat-choice';
import { aloneSentence, compromiseSentence, type SeatWording } from './seat-words';
import './seats.css';

/** Delays for one seat or for several: who counts, what the best compromise is and what it leaves. */
export default function SeatsSheet({ board }: { board: Board }) {
  // A linear program may take some ten milliseconds: a drag would stutter.
  const { settled: stage, waiting } = useSettled(useStage(board));
  if (!stage || stage.cabin.seats.length === 0)
    return <p className="quiet-text">There is no seat to listen from.</p>;
  return (
    <div className="seats-sheet" data-waiting={waiting}>
      <SeatChoice cabin={stage.cabin} alignment={stage.plan.alignment} />
      <Outcome stage={stage} />
      <HowItIsFound />
    </div>
  );
}

function Outcome({ stage }: { stage: Stage }) {
  const unit = useSession((session) => session.lengthUnit);
  const { plan, cabin, option, result } = stage;
  const { alignment } = plan;
  const answer = useMemo(
    () =>
      compromiseOver(
        result,
        pairsOf(option.speakers),
        countingSeats(cabin, alignment),
        alignment.sampleRateHz,
      ),
    [result, option, cabin, alignment],
  );
  if (option.speakers.length === 0)
    return <p className="quiet-text">No speaker stands in this option yet. Add a pair first.</p>;
  if ('problem' in answer)
    return <p className="notice">{plainReason(answer.problem, option.speakers)}</p>;
  const wording: SeatWording = {
    time: formatTime,
    both: (ms) => `${formatTime(ms)} (${formatLength(ms * result.speedOfSound, unit)})`,
    seat: seatName,
    pair: (id) => pairName(id, option.speakers),
  };
  const several = alignment.by === 'seats';
  const alone = several ? null : leftAlone(result, alignment.seat ?? cabin.seats[0]?.id ?? '');
  const shared = { answer, stage, wording };
  return (
    <>
      <p className="seats-sentence">
        {alone ? aloneSentence(alone, answer, wording) : compromiseSentence(answer, wording)}
      </p>
      {!several && <h3>The best compromise would be</h3>}
      <CompromiseSeats {...shared} />
      <CompromisePairs {...shared} />
      <CompromiseDelays {...shared} />
    </>
  );
}

function HowItIsFound() {
  return (
    <WorkedOut>
      <p>
        At each seat all speakers should arrive together; when does not matter, so each seat has a
        common time of its own. A speaker’s error there is how much it arrives before or after that.
        Of all delays there could be, these make the largest error at any seat that counts as small
        as it can be; with twice the weight a seat may have half the error. What that leaves open is
        spent on the next largest error, and so on to the end.
      </p>
      <p>
        The answer is exact, not a search: a linear program, solved by the simplex method. It is
        found to within 0.1 µs, then rounded to whole samples. Gains take the mean of each pair’s
        level differences at these seats, by weight, off the louder side: a choice of ours, no
        source. Paths and times are those of the arrivals: direct sound, the shortest free way.
      </p>
    </WorkedOut>
  );
}
