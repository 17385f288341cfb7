import type { CabinModel, MapQuantity, SpeakerInput, SpotAim } from '../../../geometry';
import { seatName, speakerName } from '../../../plan/names';
import { formatLength } from '../../../plan/units';
import { useSession } from '../../../store';
import { numberKind } from '../../parts/field-kind';
import { NumberField } from '../../parts/number-field';
import { SelectField } from '../../parts/select-field';
import { capital } from '../capital';
import { QUANTITIES, WORDS } from './map-quantities';
import { type MapChoice, STEPS } from './map-request';

interface MapChoicesProps {
  choice: MapChoice;
  onChange: (change: Partial<MapChoice>) => void;
  cabin: CabinModel;
  seats: readonly string[];
  speaker: SpeakerInput;
  speakers: readonly SpeakerInput[];
}

/** What is painted; the rarer choices folded away, in words while they are. */
export function MapChoices(props: MapChoicesProps) {
  const { choice, onChange, cabin, seats, speaker, speakers } = props;
  const unit = useSession(({ lengthUnit }) => lengthUnit);
  const step = (mm: number) => formatLength(mm, unit, unit === 'in' ? 1 : 0);
  return (
    <>
      <SelectField
        className="map-quantity"
        label="Paint"
        value={choice.quantity}
        choices={QUANTITIES.map((value) => ({ value, label: WORDS[value].title }))}
        onChange={(quantity) => onChange({ quantity: quantity as MapQuantity })}
        hint={WORDS[choice.quantity].means}
      />
      {choice.quantity === 'blend' && <WeightFields {...props} />}
      <details className="sheet-more map-more">
        <summary>
          {seats.map((id) => capital(seatName(id))).join(', ')}; every {step(choice.step)}
          {!choice.fits && '; fit not checked'}
        </summary>
        <div className="map-more-fields">
          <fieldset className="map-seats">
            <legend>Seats; the worst counts</legend>
            {cabin.seats.map(({ id }) => {
              const on = seats.includes(id);
              return (
                <label key={id} className="tick">
                  <input
                    type="checkbox"
                    checked={on}
                    disabled={on && seats.length === 1}
                    onChange={() =>
                      onChange({
                        seats: cabin.seats.flatMap((seat) =>
                          (seat.id === id ? !on : seats.includes(seat.id)) ? [seat.id] : [],
                        ),
                      })
                    }
                  />
                  {capital(seatName(id))}
                </label>
              );
            })}
          </fieldset>
          <SelectField
            label="Difference against"
            value={choice.partner ?? ''}
            choices={[
              { value: '', label: 'its mirror image' },
              ...speakers
                .filter(({ id }) => id !== speaker.id)
                .map((one) => ({
                  value: one.id,
                  label: `${speakerName(one, speakers)} where it is`,
                })),
            ]}
            onChange={(partner) => onChange({ partner: partner || null })}
          />
          <SelectField
            label="A spot every"
            value={String(choice.step)}
            choices={Object.entries(STEPS).map(([name, mm]) => ({
              value: String(mm),
              label: `${step(mm)}, ${name}`,
            }))}
            onChange={(mm) => onChange({ step: Number(mm) })}
          />
          <label className="tick">
            <input
              type="checkbox"
              checked={choice.fits}
              onChange={(event) => onChange({ fits: event.target.checked })}
            />
            Check whether it fits
          </label>
        </div>
      </details>
    </>
  );
}

const weightKind = numberKind('', 2, 0.1);

const WEIGHTS: readonly [SpotAim, string][] = [
  ['difference', 'Difference'],
  ['offAxisDeg', 'Off-axis angle'],
  ['obstructionDb', 'Obstruction'],
  ['firstReflectionTime', 'Early reflection'],
];

function WeightFields({ choice, onChange }: Pick<MapChoicesProps, 'choice' | 'onChange'>) {
  return (
    <fieldset className="map-weights">
      <legend className="unseen">Weights of the blend</legend>
      {WEIGHTS.map(([aim, label]) => (
        <NumberField
          key={aim}
          label={label}
          value={choice.weights[aim]}
          kind={weightKind}
          min={0}
          max={10}
          sink={{
            commit: (weight) => onChange({ weights: { ...choice.weights, [aim]: weight } }),
          }}
        />
      ))}
    </fieldset>
  );
}
