import { useMemo } from 'react';
import { compareOptions } from '../../../geometry';
import { seatName } from '../../../plan/names';
import { useSession, useShownPlan } from '../../../store';
import type { Board } from '../../parts/use-board';
import { baselineOf, chosenOptions } from '../compare/chosen-options';
import '../compare/compare.css';
import { useKept } from '../compare/kept';
import { Trying } from '../compare/trying';
import { useComparison, useStages } from '../compare/use-comparison';
import { Working } from '../steps/working';
import { StageHow } from './stage-how';
import { StageTable } from './stage-table';
import { spreadSentences } from './stage-words';
import './stage.css';

/** How each option holds together as one stage: paths, hand-overs, image. */
export default function StageSheet({ board }: { board: Board }) {
  const { options } = useShownPlan();
  const unit = useSession((session) => session.lengthUnit);
  const { stages, waiting } = useStages();
  const [kept] = useKept();
  const seat = board.seat?.id ?? '';
  const chosen = chosenOptions(
    options.map(({ id }) => id),
    kept.chosen,
    board.option?.id ?? null,
  );
  const { measured, measuring, stale, trials, trying } = useComparison(
    stages,
    chosen,
    chosen.length > 1 ? seat : '',
  );
  const rows = useMemo(
    () =>
      measured
        ? compareOptions(
            measured,
            baselineOf(
              measured.map(({ option }) => option),
              kept.baseline,
            ),
            trials,
          ).filter(({ measure }) => measure.seat === seat)
        : [],
    [measured, kept.baseline, trials, seat],
  );
  if (!board.option || !board.seat)
    return <p className="quiet-text">There is no seat to listen from.</p>;
  if (!measured || measuring.work.state === 'stopped')
    return <Working of={measuring} words="Measuring the options…" />;
  const shown = measured.map(({ stage }) => stage.option);
  return (
    <div className="compare-sheet stage-sheet" data-waiting={waiting || stale}>
      <ul className="sheet-words" aria-label={`Path spread at the ${seatName(seat)}`}>
        {spreadSentences(shown, rows, unit).map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      {shown.length > 1 && !trials && <Trying of={trying} />}
      <StageTable
        options={shown}
        rows={rows}
        seat={seat}
        board={board.option.id}
        wording={{ unit, speed: measured[0]?.stage.result.speedOfSound ?? 1 }}
      />
      <p className="footnote">
        {waiting && 'These follow when you let go. '}
        {shown.length > 1 &&
          'A diamond and heavy figures mark the best of a column, or those as good as the best. '}
        L is to the left of straight ahead, R to the right.
      </p>
      <StageHow />
    </div>
  );
}
