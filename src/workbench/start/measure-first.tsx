import { useMemo } from 'react';
import { buildCabin, type CabinModel, type DimensionInfo, getTemplate } from '../../geometry';
import { setDimension } from '../../plan/edits';
import { formatLength, type LengthUnit } from '../../plan/units';
import { useSession } from '../../store';
import { refusalOf } from '../dimensions/cabin-edit';
import { DimensionField } from '../dimensions/dimension-field';
import { TapeDrawing } from '../dimensions/drawing/tape-drawing';
import { showDimension } from '../dimensions/show-dimension';
import { sentence } from '../parts/check-number';
import { type NewCar, planOf, withReferenceStage } from './new-car';
import { useRanking } from './use-ranking';
import { type WorthMeasuring, worthMeasuring } from './worth-measuring';

export interface MeasureFirstProps {
  car: NewCar;
  onChange: (car: NewCar) => void;
}

/** The few dimensions that move the answers most, each with where to hold the tape. */
export function MeasureFirst({ car, onChange }: MeasureFirstProps) {
  const { template, wheelSide } = car;
  // Ranked for the body style as it is typically: the list must not reorder itself while it is
  // worked through.
  const reference = useMemo(
    () => withReferenceStage(planOf({ template, wheelSide, title: '', dimensions: {} })),
    [template, wheelSide],
  );
  const { ranking, stop, again } = useRanking(reference);

  if (ranking.kind === 'working')
    return (
      <div className="measure-wait" role="status">
        {ranking.slow && (
          <>
            <label>
              Trying every dimension on a three-way front stage…
              <progress value={ranking.done} max={ranking.total} />
            </label>
            <button type="button" onClick={stop}>
              Stop
            </button>
          </>
        )}
      </div>
    );
  if (ranking.kind !== 'ranked')
    return (
      <div className="measure-wait" role="status">
        <p>
          {ranking.kind === 'stopped'
            ? 'Stopped. All dimensions can be entered later, under “Dimensions”.'
            : `The list could not be worked out: ${sentence(ranking.message)}`}
        </p>
        <button type="button" onClick={again}>
          Work it out
        </button>
      </div>
    );
  return <MeasureList car={car} list={worthMeasuring(ranking.ranks)} onChange={onChange} />;
}

function MeasureList(props: MeasureFirstProps & { list: readonly WorthMeasuring[] }) {
  const { car, list, onChange } = props;
  const unit = useSession((state) => state.lengthUnit);
  const cabin = useMemo(() => {
    const answer = buildCabin(planOf(car));
    return answer.ok ? answer.cabin : null;
  }, [car]);
  const set = (info: DimensionInfo, value: number | null): string | null => {
    const why = value === null ? null : refusalOf(planOf(car), setDimension(info.id, value));
    if (why !== null) return why;
    const { [info.id]: _, ...others } = car.dimensions;
    onChange({ ...car, dimensions: value === null ? others : { ...others, [info.id]: value } });
    return null;
  };
  const typical = getTemplate(car.template)?.dimensions;
  if (!cabin || !typical) return null;
  return (
    <ol className="measure-list">
      {list.map(({ info, rank }) => (
        <li key={info.id}>
          <MeasureCard
            cabin={cabin}
            info={info}
            rank={rank}
            unit={unit}
            field={
              <DimensionField
                info={info}
                unit={unit}
                value={car.dimensions[info.id] ?? typical[info.id as keyof typeof typical]}
                typical={typical[info.id as keyof typeof typical]}
                measured={car.dimensions[info.id] !== undefined}
                onSet={(value) => set(info, value)}
                onReset={() => set(info, null)}
              />
            }
          />
        </li>
      ))}
    </ol>
  );
}

interface MeasureCardProps extends WorthMeasuring {
  cabin: CabinModel;
  unit: LengthUnit;
  field: React.ReactNode;
}

function MeasureCard({ cabin, info, rank, unit, field }: MeasureCardProps) {
  const off = showDimension(info, rank.uncertainty, unit);
  const effects = [
    rank.difference &&
      `a left-right difference by up to ${formatLength(rank.difference.change, unit)}`,
    rank.path && `a path by up to ${formatLength(rank.path.change, unit)}`,
  ].filter(Boolean);
  return (
    <>
      <TapeDrawing
        cabin={cabin}
        dimension={info.id}
        name={info.label}
        unit={info.unit}
        value={showDimension(info, cabin.dimensions[info.id] ?? 0, unit)}
      />
      {field}
      <p>{info.measure}</p>
      <p className="footnote">{`${off} wrong moves ${effects.join(' and ')}.`}</p>
    </>
  );
}
