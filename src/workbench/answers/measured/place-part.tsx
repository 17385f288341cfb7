import type { ArrivalChoice, MicrophonePlace, Seat } from '../../../geometry';
import { seatName } from '../../../plan/names';
import { sessionStore } from '../../../store';
import { SelectField } from '../../parts/select-field';
import { capital } from '../capital';
import { measuredStore, useMeasuredState } from './measured-store';
import { PLACES } from './measured-words';

interface PlacePartProps {
  seats: readonly Seat[];
  seat: string;
  /** Whose delays the processor holds when they are on. */
  alignedFor: string;
}

/** Where it was measured and how: what no file tells. */
export function PlacePart({ seats, seat, alignedFor }: PlacePartProps) {
  const { at, delayed, choice } = useMeasuredState((state) => state);
  return (
    <div className="measured-place">
      <SelectField
        label="Measured at the"
        value={seat}
        choices={seats.map(({ id }) => ({ value: id, label: seatName(id) }))}
        onChange={(value) => sessionStore.setState({ seat: value })}
      />
      <SelectField
        label="Microphone at the"
        value={at}
        choices={PLACES}
        onChange={(value) => measuredStore.setState({ at: value as MicrophonePlace })}
      />
      <SelectField
        label="Delays in the processor"
        value={delayed}
        choices={[
          { value: 'off', label: 'off' },
          { value: 'plan', label: `set for the ${seatName(alignedFor)}` },
        ]}
        onChange={(value) => measuredStore.setState({ delayed: value as 'off' | 'plan' })}
      />
      <SelectField
        label="First arrival"
        value={choice}
        choices={CHOICES.map(({ value, label }) => ({ value, label: capital(label) }))}
        onChange={(value) => measuredStore.setState({ choice: value as ArrivalChoice })}
      />
    </div>
  );
}

const CHOICES: readonly { value: ArrivalChoice; label: string }[] = [
  { value: 'surer', label: 'the surer of both' },
  { value: 'edge', label: 'by threshold' },
  { value: 'correlation', label: 'by correlation' },
];
