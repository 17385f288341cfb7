import { useMemo } from 'react';
import {
  compareOptions,
  isBeyond,
  type MeasuredOption,
  type SeatWeight,
  scoreUncertainty,
  type Trials,
  type Verdict,
  verdictsOf,
  weighedBy,
  weightsOf,
  whyOption,
} from '../../../geometry';
import { optionTitle } from '../../../plan/edits';
import { seatName } from '../../../plan/names';
import { sessionStore, useSession, useShownPlan } from '../../../store';
import type { Board } from '../../parts/use-board';
import { baselineOf, chosenOptions, rivalOf } from './chosen-options';
import { CompareHow } from './compare-how';
import { CompareTable } from './compare-table';
import './compare.css';
import { Working } from '../steps/working';
import { type Kept, useKept } from './kept';
import { MisfitList } from './misfit-list';
import { OneOption } from './one-option';
import { OptionChoice } from './option-choice';
import { OtherSeats } from './other-seats';
import { Trying } from './trying';
import { useComparison, useStages } from './use-comparison';
import { Weights } from './weights';
import { type WhyVerdict, type WhyWording, whySentences } from './why-words';

/** Options side by side, and why the one on the board. */
export default function CompareSheet({ board }: { board: Board }) {
  const { options } = useShownPlan();
  const { stages, waiting } = useStages();
  const [kept, keep] = useKept();
  const onBoard = board.option?.id ?? null;
  const chosen = chosenOptions(
    options.map(({ id }) => id),
    kept.chosen,
    onBoard,
  );
  const seat = board.seat?.id ?? '';
  const { measured, measuring, stale, trials, trying } = useComparison(stages, chosen, seat);
  if (!board.option || !board.seat)
    return <p className="quiet-text">There is no seat to listen from.</p>;
  if (options.length < 2) return <OneOption option={board.option} />;
  if (!measured || measuring.work.state === 'stopped')
    return <Working of={measuring} words="Measuring the options…" />;
  return (
    <div className="compare-sheet" data-waiting={waiting || stale}>
      <div className="compare-bar">
        <label className="group-select">
          <span>Compared at</span>
          <select
            value={seat}
            onChange={(event) => sessionStore.setState({ seat: event.target.value })}
          >
            {board.cabin.seats.map(({ id }) => (
              <option key={id} value={id}>
                {seatName(id)}
              </option>
            ))}
          </select>
        </label>
        <OptionChoice
          options={options}
          chosen={chosen}
          board={onBoard}
          onChange={(ids) => keep({ chosen: ids })}
        />
      </div>
      {waiting && <p className="footnote">These follow when you let go.</p>}
      <Compared
        measured={measured}
        trials={trials}
        trying={trials ? null : trying}
        seat={seat}
        board={onBoard}
        kept={kept}
        keep={keep}
      />
    </div>
  );
}

interface ComparedProps {
  measured: readonly MeasuredOption[];
  trials: Trials | null;
  trying: ReturnType<typeof useComparison>['trying'] | null;
  seat: string;
  board: string | null;
  kept: Kept;
  keep: (change: Partial<Kept>) => void;
}

function Compared({ measured, trials, trying, seat, board, kept, keep }: ComparedProps) {
  const unit = useSession((session) => session.lengthUnit);
  const fahrenheit = useSession((session) => session.temperatureUnit === 'F');
  const ids = measured.map(({ option }) => option);
  const baseline = baselineOf(ids, kept.baseline);
  const seats = useMemo(() => verdictSeats(measured, seat), [measured, seat]);
  const verdicts = useMemo(
    () => verdictsOf(measured, kept.weights, seats, trials),
    [measured, kept.weights, seats, trials],
  );
  const rows = useMemo(
    () => compareOptions(measured, baseline, trials),
    [measured, baseline, trials],
  );
  const own = board !== null && ids.includes(board) ? board : (ids[0] ?? '');
  const rival = rivalOf(own, baseline, verdicts);
  const why = useMemo(() => {
    if (rival === null) return null;
    const told = rival === baseline ? rows : compareOptions(measured, rival, trials);
    return whyOption(told, own, rival, seat);
  }, [rows, measured, own, rival, baseline, trials, seat]);
  const verdict = useMemo(
    () => (rival === null ? null : verdictOn(own, rival, measured, verdicts, kept, seats, trials)),
    [own, rival, measured, verdicts, kept, seats, trials],
  );
  const options = measured.map(({ stage }) => stage.option);
  const wording: WhyWording = {
    unit,
    speed: measured[0]?.stage.result.speedOfSound ?? 1,
    option: (id) => {
      const option = options.find((one) => one.id === id);
      return `“${option ? optionTitle(option) : id}”`;
    },
  };
  const here = rows.filter(
    ({ measure }) =>
      (measure.seat === seat || measure.seat === null) && measure.kind !== 'imageOctaveDeg',
  );
  const differing = here.filter(({ alike }) => !alike);
  const folded = here.length - differing.length;
  return (
    <>
      {why && (
        <section aria-labelledby="compare-why" className="compare-why">
          <h3 id="compare-why">Why {wording.option(own)}</h3>
          <ul className="sheet-words">
            {whySentences(why, seat, verdict, trials !== null, wording).map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </section>
      )}
      {trying && <Trying of={trying} />}
      <CompareTable
        caption={`Options compared at the ${seatName(seat)}`}
        options={options}
        rows={kept.showAlike ? here : differing}
        verdicts={verdicts}
        board={board}
        baseline={baseline}
        onBaseline={(id) => keep({ baseline: id })}
        wording={wording}
      />
      <p className="footnote">
        A diamond and heavy figures mark the best of a row, or those as good as the best; without
        one none can be told from the others.
      </p>
      {folded > 0 && (
        <label className="tick">
          <input
            type="checkbox"
            checked={kept.showAlike}
            onChange={(event) => keep({ showAlike: event.target.checked })}
          />
          {`Show ${folded === 1 ? 'the row that is' : `the ${folded} rows that are`} alike in all`}
        </label>
      )}
      <Weights weights={kept.weights} onChange={(weights) => keep({ weights })} />
      <MisfitList measured={measured} />
      {why && <OtherSeats why={why} tried={trials !== null} wording={wording} />}
      <CompareHow unit={unit} fahrenheit={fahrenheit} />
    </>
  );
}

/** The scores of two options, and whether they differ by more than is uncertain. */
function verdictOn(
  own: string,
  rival: string,
  measured: readonly MeasuredOption[],
  verdicts: readonly Verdict[],
  { weights }: Kept,
  seats: readonly SeatWeight[],
  trials: Trials | null,
): WhyVerdict | null {
  const [a, b] = [own, rival].map((id) => measured.find(({ option }) => option === id));
  const [here, there] = [own, rival].map((id) => verdicts.find(({ option }) => option === id));
  if (!a || !b || !here || !there) return null;
  if (here.score === null || there.score === null || !trials)
    return { own: here, other: there, sure: null };
  const by = weighedBy(measured, seats);
  const sure = isBeyond(
    here.score - there.score,
    scoreUncertainty(a, b, trials, weights, seats, by),
  );
  return { own: here, other: there, sure };
}

/** Where delays are for several seats, those; else the seat in view. */
function verdictSeats(measured: readonly MeasuredOption[], seat: string): readonly SeatWeight[] {
  const stage = measured[0]?.stage;
  if (stage?.plan.alignment?.by !== 'seats') return [{ id: seat, weight: 1 }];
  const there = weightsOf(stage).filter(({ id }) =>
    stage.result.seats.some((one) => one.id === id),
  );
  return there.length > 0 ? there : [{ id: seat, weight: 1 }];
}
