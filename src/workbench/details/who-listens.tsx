import { setSeats } from '../../plan/edits';
import { seatName } from '../../plan/names';
import { planStore, sessionStore, useSession } from '../../store';
import { type Board, useLocked } from '../parts/use-board';
import { useAllSeats } from './all-seats';

/** The seats of the car: whose answers are in view, which ones count, and a way to adjust each. */
export function WhoListens({ board }: { board: Board }) {
  const locked = useLocked();
  const inView = useSession((session) => session.seat);
  const listening = board.cabin.seats.map(({ id }) => id);
  const all = useAllSeats(listening);
  const shown = listening.includes(inView) ? inView : listening[0];
  return (
    <section aria-labelledby="seats-head">
      <h3 id="seats-head">Seats</h3>
      <ul className="seat-list">
        {all.map((id) => {
          const on = listening.includes(id);
          return (
            <li key={id}>
              <label className="tick">
                <input
                  type="checkbox"
                  checked={on}
                  disabled={locked || (on && listening.length === 1)}
                  onChange={() => {
                    const ids = all.filter((seat) =>
                      seat === id ? !on : listening.includes(seat),
                    );
                    planStore.edit('change who listens', setSeats(ids, all));
                  }}
                />
                {seatName(id)}
              </label>
              {on && (
                <span className="row">
                  <button
                    type="button"
                    aria-pressed={id === shown}
                    onClick={() => sessionStore.setState({ seat: id })}
                  >
                    In view<span className="unseen">: {seatName(id)}</span>
                  </button>
                  <button
                    type="button"
                    onClick={() => sessionStore.setState({ selection: { kind: 'seat', id } })}
                  >
                    Adjust<span className="unseen"> the {seatName(id)}</span>
                  </button>
                </span>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
