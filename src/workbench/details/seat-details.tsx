import type { Seat } from '../../geometry';
import { changeSeat, type SeatFields } from '../../plan/edits';
import { seatName } from '../../plan/names';
import { planStore, sessionStore, useSession, useShownPlan } from '../../store';
import { angleKind, lengthKind } from '../parts/field-kind';
import { NumberField } from '../parts/number-field';
import { planSink } from '../parts/plan-sink';
import { SelectField } from '../parts/select-field';
import { type Board, useLocked } from '../parts/use-board';
import { VectorFields } from '../parts/vector-fields';
import { DetailsHead } from './details-head';

/** Everything about one seat: how it stands and who sits in it, or where its head was placed. */
export function SeatDetails({ board, seat }: { board: Board; seat: Seat }) {
  const { cabin } = board;
  const unit = useSession((session) => session.lengthUnit);
  const inView = useSession((session) => session.seat) || cabin.seats[0]?.id;
  const locked = useLocked();
  const given = useShownPlan().seats?.find(({ id }) => id === seat.id);
  const ids = cabin.seats.map(({ id }) => id);
  const name = seatName(seat.id);
  const undoLabel = `adjust the ${name}`;
  const change = (fields: SeatFields) => changeSeat(seat.id, fields, ids);
  const byHand = given?.head !== undefined;
  const fitted = seat.posture !== null && seat.posture.row !== null;
  const length = lengthKind(unit);
  const slide = given?.slide ?? 0;
  const range = seat.slideRange;

  return (
    <>
      <DetailsHead title={name}>
        {inView === seat.id ? 'Its answers are in view.' : 'Another seat is in view.'}
      </DetailsHead>
      {inView !== seat.id && (
        <button type="button" onClick={() => sessionStore.setState({ seat: seat.id })}>
          Listen here
        </button>
      )}
      <section aria-labelledby="sits-head">
        <h3 id="sits-head">How the head is found</h3>
        {fitted && (
          <SelectField
            label="From"
            value={byHand ? 'hand' : 'seat'}
            disabled={locked}
            choices={[
              { value: 'seat', label: 'how the seat stands' },
              { value: 'hand', label: 'a head placed by hand' },
            ]}
            onChange={(value) =>
              planStore.edit(undoLabel, change({ head: value === 'hand' ? seat.head : null }))
            }
          />
        )}
        {byHand ? (
          <VectorFields
            legend="Middle of the head, between the ears"
            value={seat.head}
            kind={length}
            undoLabel={undoLabel}
            recipe={(head) => change({ head })}
          />
        ) : (
          <div className="fields fields-2">
            {range && (
              <NumberField
                label="Slid rearward"
                value={slide}
                kind={length}
                min={slide + range[0]}
                max={slide + range[1]}
                readOnly={locked}
                hint="from the usual place"
                sink={planSink(undoLabel, (value) => change({ slide: value }))}
              />
            )}
            <NumberField
              label="Reclined"
              value={given?.reclineDeg ?? 0}
              kind={angleKind}
              min={-30}
              max={60}
              readOnly={locked}
              hint="more than usual"
              sink={planSink(undoLabel, (reclineDeg) => change({ reclineDeg }))}
            />
            <NumberField
              label="Occupant’s height"
              value={given?.occupantHeight ?? null}
              placeholder={seat.posture ? length.show(seat.posture.stature) : undefined}
              kind={length}
              min={1200}
              max={2200}
              readOnly={locked}
              onClear={() => planStore.edit(undoLabel, change({ occupantHeight: null }))}
              sink={planSink(undoLabel, (occupantHeight) => change({ occupantHeight }))}
            />
          </div>
        )}
      </section>
      <section aria-labelledby="head-head">
        <h3 id="head-head">The head</h3>
        <div className="fields fields-2">
          <NumberField
            label="Turned to the right"
            value={seat.facingDeg}
            kind={angleKind}
            min={-180}
            max={180}
            readOnly={locked}
            hint="from straight ahead"
            sink={planSink(undoLabel, (facingDeg) => change({ facingDeg }))}
          />
          <NumberField
            label="Ear to ear"
            value={seat.earSpacing}
            kind={length}
            min={80}
            max={250}
            readOnly={locked}
            onClear={() => planStore.edit(undoLabel, change({ earSpacing: null }))}
            sink={planSink(undoLabel, (earSpacing) => change({ earSpacing }))}
          />
        </div>
      </section>
    </>
  );
}
