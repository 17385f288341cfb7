import type { AlignmentInput, CabinModel, SeatWeight } from '../../../geometry';
import { setAlignment, setSeatWeights } from '../../../plan/edits';
import { seatName } from '../../../plan/names';
import { planStore } from '../../../store';
import { numberKind } from '../../parts/field-kind';
import { NumberField } from '../../parts/number-field';
import { planSink } from '../../parts/plan-sink';
import { Segments } from '../../parts/segments';
import { SelectField } from '../../parts/select-field';
import { useLocked } from '../../parts/use-board';

const weightKind = numberKind('', 2, 0.5);

/**
 * The seats a compromise is over: those the plan lists, else the front ones, else all, alike. What
 * is not listed is a proposal of ours for the choice on screen.
 */
export function countingSeats(cabin: CabinModel, alignment: AlignmentInput): SeatWeight[] {
  const ids = cabin.seats.map(({ id }) => id);
  const listed = alignment.seats?.filter(({ id }) => ids.includes(id)) ?? [];
  if (listed.length > 0) return listed;
  // A compromise without a list is over all seats, as the engine has it.
  const front = alignment.by === 'seats' ? [] : ids.filter((id) => id.startsWith('front-'));
  return (front.length > 1 ? front : ids).map((id) => ({ id, weight: 1 }));
}

interface SeatChoiceProps {
  cabin: CabinModel;
  alignment: AlignmentInput;
}

/** For one seat or for several, and which of them count how much. */
export function SeatChoice({ cabin, alignment }: SeatChoiceProps) {
  const locked = useLocked();
  const several = alignment.by === 'seats';
  const counting = countingSeats(cabin, alignment);
  const aligned = alignment.seat ?? cabin.seats[0]?.id ?? '';
  const choose = (by: 'seat' | 'seats') => {
    if (locked || by === (several ? 'seats' : 'seat')) return;
    const recipe = by === 'seats' ? { by, seats: counting } : { by: undefined };
    planStore.edit(
      `align for ${by === 'seats' ? 'several seats' : 'one seat'}`,
      setAlignment(recipe),
    );
  };
  return (
    <div className="seat-choice">
      <Segments
        label="Delays for one seat or for several"
        value={several ? 'seats' : 'seat'}
        choices={[
          { value: 'seat', label: 'Delays for one seat' },
          { value: 'seats', label: 'for several' },
        ]}
        onChange={choose}
      />
      {several ? (
        <fieldset className="seat-weights">
          <legend className="unseen">Which seats count, and how much</legend>
          {cabin.seats.map(({ id }) => (
            <SeatWeightField key={id} id={id} counting={counting} cabin={cabin} locked={locked} />
          ))}
        </fieldset>
      ) : (
        <SelectField
          label="Seat"
          value={aligned}
          disabled={locked}
          choices={cabin.seats.map(({ id }) => ({ value: id, label: seatName(id) }))}
          onChange={(seat) =>
            planStore.edit(`align for the ${seatName(seat)}`, setAlignment({ seat }))
          }
        />
      )}
    </div>
  );
}

interface SeatWeightFieldProps {
  id: string;
  counting: readonly SeatWeight[];
  cabin: CabinModel;
  locked: boolean;
}

function SeatWeightField({ id, counting, cabin, locked }: SeatWeightFieldProps) {
  const own = counting.find((one) => one.id === id);
  const name = seatName(id);
  const weigh = (weight: number | null) =>
    setSeatWeights(
      cabin.seats.flatMap((seat) => {
        if (seat.id === id) return weight === null ? [] : [{ ...own, id, weight }];
        return counting.filter((one) => one.id === seat.id);
      }),
    );
  return (
    <fieldset className="seat-weight">
      <legend className="unseen">{name}</legend>
      <label className="tick">
        <input
          type="checkbox"
          checked={own !== undefined}
          // The last one stays: a compromise over no seat is none.
          disabled={locked || (own !== undefined && counting.length === 1)}
          onChange={(event) =>
            planStore.edit(
              event.target.checked ? `count the ${name}` : `leave out the ${name}`,
              weigh(event.target.checked ? 1 : null),
            )
          }
        />
        {name}
      </label>
      {own && (
        <NumberField
          label="Weight"
          value={own.weight}
          kind={weightKind}
          min={0.1}
          max={10}
          readOnly={locked}
          sink={planSink(`weigh the ${name}`, (weight) => weigh(weight))}
        />
      )}
    </fieldset>
  );
}
