import type { CabinModel } from '../../../geometry';
import { optionTitle } from '../../../plan/edits';
import { seatName } from '../../../plan/names';
import { sessionStore, usePlan, useSession } from '../../../store';
import { slowMotionStore, useSlowMotion } from '../../../store/slow-motion';
import { Segments } from '../../parts/segments';

const DELAYS = [
  { value: 'none', label: 'Without delays' },
  { value: 'aligned', label: 'With delays' },
] as const;

/** Which delays, whose ears, and which option beside. */
export function Choices({ cabin, seat }: { cabin: CabinModel; seat: string }) {
  const delays = useSlowMotion((state) => state.delays);
  return (
    <div className="sheet-bar slow-choices">
      <Segments
        label="Delays"
        value={delays}
        choices={DELAYS}
        onChange={(value) => slowMotionStore.delayBy(value)}
      />
      <select
        aria-label="Whose ears"
        value={seat}
        onChange={(event) => sessionStore.setState({ seat: event.target.value })}
      >
        {cabin.seats.map(({ id }) => (
          <option key={id} value={id}>
            {seatName(id)}
          </option>
        ))}
      </select>
      <BesideIt />
    </div>
  );
}

function BesideIt() {
  const options = usePlan(({ plan }) => plan.options);
  const chosen = useSession((session) => session.option);
  const beside = useSession((session) => session.beside);
  const onBoard = options.find(({ id }) => id === chosen) ?? options[0];
  if (options.length < 2) return null;
  return (
    <select
      aria-label="Second option"
      value={beside ?? ''}
      onChange={(event) => sessionStore.setState({ beside: event.target.value || null })}
    >
      <option value="">Beside it: none</option>
      {options
        .filter(({ id }) => id !== onBoard?.id)
        .map((option) => (
          <option key={option.id} value={option.id}>
            Beside it: {optionTitle(option)}
          </option>
        ))}
    </select>
  );
}
