import type { CabinModel, Seat } from '../cabin/model';
import type { PlanInput, SeatInput } from '../input';

/** Rounding may leave a seat this little short of its rails' end, mm. */
const ON_RAILS = 1e-6;

/**
 * The plan's seats with one of them slid rearward by `mm` (forward where negative); a head placed by
 * hand goes along X. `why`: it cannot.
 */
export function slideSeat(
  plan: PlanInput,
  cabin: CabinModel,
  { id, slideRange }: Seat,
  mm: number,
): { seats: SeatInput[] } | { why: string } {
  const seats: readonly SeatInput[] = plan.seats?.length
    ? plan.seats
    : cabin.seats.map((seat) => ({ id: seat.id }));
  if (!seats.find((seat) => seat.id === id)?.head) {
    if (!slideRange) return { why: `the seat "${id}" does not slide` };
    const [first, last] = slideRange;
    if (mm < first - ON_RAILS || mm > last + ON_RAILS) {
      const end = mm > 0 ? 'rear' : 'front';
      return { why: `the seat is within ${Math.abs(mm)} mm of the ${end} of its rails` };
    }
  }
  return {
    seats: seats.map((seat): SeatInput => {
      if (seat.id !== id) return seat;
      if (!seat.head) return { ...seat, slide: (seat.slide ?? 0) + mm };
      const [x, y, z] = seat.head;
      return { ...seat, head: [x + mm, y, z] };
    }),
  };
}
