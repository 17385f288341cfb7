import { useMemo } from 'react';
import {
  type PairSensitivity,
  SENSITIVITY_STEP,
  type Stage,
  sensitivityInSteps,
} from '../../../geometry';
import { pairName, seatName } from '../../../plan/names';
import { formatLength, formatTime } from '../../../plan/units';
import { useSession } from '../../../store';
import type { Board } from '../../parts/use-board';
import { useSettled } from '../../parts/use-settled';
import { useStage } from '../../parts/use-stage';
import { WorkedOut } from '../../parts/worked-out';
import { useSteps } from '../steps/use-steps';
import { Working } from '../steps/working';
import { MattersTable } from './matters-table';
import { type MattersWording, mattersSentence } from './matters-words';
import './matters.css';

/** How much each pair's difference gives way when something is a little off. */
export default function MattersSheet({ board }: { board: Board }) {
  const { settled: stage, waiting } = useSettled(useStage(board));
  const seat = board.seat?.id;
  const start = useMemo(
    () => (stage && seat ? () => sensitivityInSteps(stage, seat) : null),
    [stage, seat],
  );
  const steps = useSteps<PairSensitivity[]>(start);
  const { work } = steps;
  if (!stage || !seat) return <p className="quiet-text">There is no seat to listen from.</p>;
  if (work.state !== 'done')
    return <Working of={steps} words="Trying what happens when things are a little off…" />;
  if (work.value.length === 0)
    return <p className="quiet-text">There is no pair in this option.</p>;
  return (
    <div className="matters-sheet" data-waiting={waiting}>
      <Matters pairs={work.value} stage={stage} seat={seat} />
      {waiting && <p className="footnote">These follow when you let go.</p>}
      <Limits />
    </div>
  );
}

interface MattersProps {
  pairs: readonly PairSensitivity[];
  stage: Stage;
  seat: string;
}

function Matters({ pairs, stage, seat }: MattersProps) {
  const unit = useSession((session) => session.lengthUnit);
  const degrees = useSession((session) => session.temperatureUnit);
  const { mm, temperatureC } = SENSITIVITY_STEP;
  const step = formatLength(mm, unit);
  // A step, not a temperature: no offset.
  const warmth = degrees === 'F' ? `${temperatureC * 1.8} °F` : `${temperatureC} °C`;
  const digits = unit === 'in' ? 2 : 1;
  const wording: MattersWording = {
    step,
    warmth,
    length: (value) => formatLength(value, unit, digits),
    time: (ms) => formatTime(ms, 3),
    pair: (id) => pairName(id, stage.option.speakers),
    speed: stage.result.speedOfSound,
  };
  return (
    <>
      <ul className="matters-sentences" aria-label={`What matters most at the ${seatName(seat)}`}>
        {pairs.map((pair) => (
          <li key={pair.pair}>{mattersSentence(pair, wording)}</li>
        ))}
      </ul>
      <MattersTable pairs={pairs} stage={stage} unit={unit} step={step} warmth={warmth} />
      <p className="footnote">
        The change of left minus right. A plus, and a filled bar to the right, says that the left
        gets later; a minus, and a hollow bar to the left, that the right does. Bars are by time, so
        that temperature stands beside lengths.
      </p>
    </>
  );
}

function Limits() {
  return (
    <WorkedOut>
      <p>
        Each is tried, both ways, and the paths are worked out anew, the way round whatever is then
        in the way included; the way that does more is told. Lengths along a panel are measured on
        its surface, a stand-off goes along. Both means as mirror images, as a tied pair moves;
        alone is what a hole marked out wrong on that side does. The seat goes along its rails, a
        head placed by hand straight back or forward. Temperature changes no path, only the speed of
        sound (Cramer, J. Acoust. Soc. Am. 93, 1993).
      </p>
      <p>
        Limits: one thing off at a time, and by this much; twice as far is about twice as much as
        long as nothing comes into the way.
      </p>
    </WorkedOut>
  );
}
