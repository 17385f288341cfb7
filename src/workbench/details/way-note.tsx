import { lineWords } from '../../exchange/line-words';
import { seatName } from '../../plan/names';
import { formatLength } from '../../plan/units';
import { useSession } from '../../store';
import { LineSign } from '../parts/marks';
import { thingName, withArticle } from '../parts/names';
import type { Board } from '../parts/use-board';

/** What is in the way of one speaker at the seat in view; nothing while its line is free. */
export function WayNote({ board, speakerId }: { board: Board; speakerId: string }) {
  const unit = useSession((session) => session.lengthUnit);
  const arrival = board.seat?.arrivals.find(({ speaker }) => speaker === speakerId);
  if (!board.seat || !arrival || arrival.line === 'clear') return null;
  const words = lineWords(
    arrival,
    (id) => withArticle(thingName(board.cabin, id)),
    // A detour under a millimetre is still one.
    (mm) => formatLength(mm, unit, unit === 'mm' && mm < 0.95 ? 1 : undefined),
  );
  return (
    <p className="way-note">
      <LineSign line={arrival.line} wordless /> To the {seatName(board.seat.id)}: {words}.
    </p>
  );
}
