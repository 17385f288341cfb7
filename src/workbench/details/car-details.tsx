import { speedOfSound } from '../../geometry';
import { setAir, setAlignment } from '../../plan/edits';
import { seatName } from '../../plan/names';
import { formatNumber } from '../../plan/units';
import { planStore, sessionStore, useSession, useShownPlan } from '../../store';
import { CautionsNote, StoryNote } from '../cautions';
import { DimensionsPanel } from '../dimensions';
import { numberKind, temperatureKind } from '../parts/field-kind';
import { NumberField } from '../parts/number-field';
import { planSink } from '../parts/plan-sink';
import { Segments } from '../parts/segments';
import { SelectField } from '../parts/select-field';
import { type Board, useLocked } from '../parts/use-board';
import { ObstacleList } from './obstacle-list';
import { WhoListens } from './who-listens';

/** Nothing selected: what goes for the whole car. */
export function CarDetails({ board }: { board: Board | null }) {
  return (
    <>
      <h2>The whole car</h2>
      <StoryNote />
      {board && <WhoListens board={board} />}
      {board && <Alignment board={board} />}
      <AirFields />
      <section aria-labelledby="dimensions-head">
        <h3 id="dimensions-head">Dimensions</h3>
        <DimensionsPanel />
      </section>
      {board && <ObstacleList board={board} />}
      <CautionsNote compact />
    </>
  );
}

/** Common rates of car processors, Hz: common practice, no source. */
const RATES = [44100, 48000, 88200, 96000, 192000] as const;

function Alignment({ board }: { board: Board }) {
  const { alignment } = useShownPlan();
  const locked = useLocked();
  const rates = [...new Set([...RATES, alignment.sampleRateHz])].sort((a, b) => a - b);
  return (
    <section aria-labelledby="align-head">
      <h3 id="align-head">Align for</h3>
      <div className="fields fields-2">
        <SelectField
          label="Seat"
          value={alignment.seat ?? board.cabin.seats[0]?.id ?? ''}
          disabled={locked}
          choices={board.cabin.seats.map(({ id }) => ({ value: id, label: seatName(id) }))}
          onChange={(seat) => planStore.edit('align for another seat', setAlignment({ seat }))}
        />
        <SelectField
          label="Sample rate"
          value={String(alignment.sampleRateHz)}
          disabled={locked}
          choices={rates.map((rate) => ({
            value: String(rate),
            label: `${formatNumber(rate / 1000, rate % 1000 === 0 ? 0 : 1)} kHz`,
          }))}
          onChange={(rate) =>
            planStore.edit('change the sample rate', setAlignment({ sampleRateHz: Number(rate) }))
          }
        />
      </div>
    </section>
  );
}

function AirFields() {
  const { air } = useShownPlan();
  const unit = useSession((session) => session.temperatureUnit);
  const locked = useLocked();
  const { speed, withinCramerRange } = speedOfSound(air);
  return (
    <section aria-labelledby="air-head">
      <div className="section-head">
        <h3 id="air-head">Air</h3>
        <Segments
          label="Unit of temperature"
          value={unit}
          choices={[
            { value: 'C', label: '°C' },
            { value: 'F', label: '°F' },
          ]}
          onChange={(temperatureUnit) => sessionStore.setState({ temperatureUnit })}
        />
      </div>
      <div className="fields fields-3">
        <NumberField
          label="Temperature"
          value={air.temperatureC}
          kind={temperatureKind(unit)}
          min={-40}
          max={60}
          readOnly={locked}
          sink={planSink('change the temperature', (temperatureC) => setAir({ temperatureC }))}
        />
        <NumberField
          label="Humidity"
          value={air.relativeHumidityPercent}
          kind={numberKind('%', 1, 1)}
          min={0}
          max={100}
          readOnly={locked}
          sink={planSink('change the humidity', (relativeHumidityPercent) =>
            setAir({ relativeHumidityPercent }),
          )}
        />
        <NumberField
          label="Pressure, kPa"
          value={air.pressureKPa}
          kind={numberKind('', 3, 0.1)}
          min={50}
          max={110}
          readOnly={locked}
          sink={planSink('change the pressure', (pressureKPa) => setAir({ pressureKPa }))}
        />
      </div>
      <p>
        Sound travels <strong>{formatNumber(speed, 1)} m/s</strong>.
        {!withinCramerRange && (
          <span className="footnote">
            {' '}
            Outside 0 to 30 °C the temperature law of ISO 9613-1 carries Cramer’s value on.
          </span>
        )}
      </p>
    </section>
  );
}
