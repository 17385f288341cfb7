import { useMemo, useState } from 'react';
import {
  type CrossoverInput,
  crossingsOf,
  type SideSum,
  type Stage,
  sumsAt,
} from '../../../geometry';
import { pairName, seatName } from '../../../plan/names';
import type { PlanOption } from '../../../plan/types';
import { SideMark } from '../../parts/marks';
import { plainReason, plainReasons } from '../../parts/plain-reason';
import { Segments } from '../../parts/segments';
import type { Board } from '../../parts/use-board';
import { useSettled } from '../../parts/use-settled';
import { useStage } from '../../parts/use-stage';
import { WorkedOut } from '../../parts/worked-out';
import { AddCrossing } from './add-crossing';
import { CrossingFields } from './crossing-fields';
import { sumWords } from './crossing-words';
import { SumChart } from './sum-chart';
import { SumsTable } from './sums-table';
import './crossings.css';

const keyOf = ({ below, above }: CrossoverInput): string => `${below} ${above}`;

/** Where pairs hand over to one another, and how the two of each side add up there. */
export default function CrossingsSheet({ board }: { board: Board }) {
  // Some ten milliseconds, and a chart: a drag would stutter.
  const { settled: stage, waiting } = useSettled(useStage(board));
  if (!stage || !board.option || !board.seat)
    return <p className="quiet-text">There is no seat to listen from.</p>;
  return <Crossings stage={stage} option={board.option} seat={board.seat.id} waiting={waiting} />;
}

interface CrossingsProps {
  stage: Stage;
  option: PlanOption;
  seat: string;
  waiting: boolean;
}

function Crossings({ stage, option, seat, waiting }: CrossingsProps) {
  const [chosen, setChosen] = useState('');
  const sums = useMemo(() => sumsAt(stage, seat), [stage, seat]);
  const crossings = useMemo(() => crossingsOf(option), [option]);
  // The highest first: there an error of time costs most.
  const crossing =
    crossings.find(({ crossover }) => keyOf(crossover) === chosen) ?? crossings.at(-1);
  const key = crossing ? keyOf(crossing.crossover) : '';
  const shown = useMemo(
    () => sums.filter((sum) => keyOf(sum.crossing.crossover) === key),
    [sums, key],
  );
  const nameOf = ({ below, above }: CrossoverInput) =>
    `${pairName(below, option.speakers)} to ${pairName(above, option.speakers)}`;
  if (!crossing)
    return (
      <>
        <p className="quiet-text">
          No pair hands over to another: a crossover is proposed where the bands of two pairs meet.
        </p>
        <AddCrossing option={option} onAdd={setChosen} />
      </>
    );
  const name = nameOf(crossing.crossover);
  return (
    <div className="crossings-sheet" data-waiting={waiting}>
      {crossings.length > 1 && (
        <Segments
          label="Which hand-over"
          value={key}
          choices={crossings.map(({ crossover }) => ({
            value: keyOf(crossover),
            label: nameOf(crossover),
          }))}
          onChange={setChosen}
        />
      )}
      {/* Keyed, so that nothing half typed goes over to the next one. */}
      <CrossingFields key={key} option={option} crossing={crossing} name={name} />
      <ul className="side-sums" aria-label={`The sum of ${name} at the ${seatName(seat)}`}>
        {shown.map((sum) => (
          <li key={sum.side}>
            <SideMark side={sum.side} />
            <span className="unseen">{sum.side}: </span>
            <SideWords sum={sum} option={option} />
          </li>
        ))}
      </ul>
      <SumChart crossing={crossing} sums={shown} name={name} />
      <SumsTable option={option} sums={sums} nameOf={(sum) => nameOf(sum.crossing.crossover)} />
      <AddCrossing option={option} onAdd={setChosen} />
      <Limits />
    </div>
  );
}

function SideWords({ sum, option }: { sum: SideSum; option: PlanOption }) {
  const reasons = plainReasons(sum.reasons, option.speakers);
  if (!sum.result) return <span>No sum here. {reasons.join(' ')}</span>;
  return (
    <span>
      <strong>{sumWords(sum.result)}</strong>
      {reasons.map((reason) => (
        <span key={reason} className="quiet-text">
          {' '}
          {plainReason(reason, option.speakers)}
        </span>
      ))}
    </span>
  );
}

function Limits() {
  return (
    <WorkedOut>
      <p>
        The two speakers of one side are added up as pressures, each with its filter, its way to the
        middle of the head, its delay and gain as the alignment sets them, and its poles
        (superposition; Kinsler et al., Fundamentals of Acoustics). Filters: Butterworth (1930);
        Linkwitz-Riley, two equal Butterworth filters in a row (S. H. Linkwitz, J. Audio Eng. Soc.
        24, 1976). Ideal is the same two at the same levels, in time and with the poles usual for
        the filter: swapped above at orders 2 and 6, as they are otherwise. A null is 10 dB or more
        under that, within two octaves of the crossover: a choice of ours.
      </p>
      <p>
        Limits: direct sound in a free field, no reflections. The speakers’ own phase is taken
        alike, and each pair as equally loud on its axis at 1 m, since how loud it is set is the
        tune’s business. Proposed crossovers are Linkwitz-Riley of order 4 where the bands meet, at
        the geometric mean of their ends: common practice, no source.
      </p>
    </WorkedOut>
  );
}
