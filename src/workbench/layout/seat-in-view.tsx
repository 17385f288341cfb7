import { seatName } from '../../plan/names';
import { sessionStore } from '../../store';
import { useBoard } from '../parts/use-board';

/** Whose answers are shown. */
export function SeatInView() {
  const { board } = useBoard();
  const seats = board?.cabin.seats ?? [];
  return (
    <label className="inline">
      <span className="quiet-text">Listen at</span>
      <select
        aria-label="Listen at"
        value={board?.seat?.id ?? ''}
        disabled={seats.length === 0}
        onChange={(event) => sessionStore.setState({ seat: event.target.value })}
      >
        {seats.map(({ id }) => (
          <option key={id} value={id}>
            {seatName(id)}
          </option>
        ))}
      </select>
    </label>
  );
}
