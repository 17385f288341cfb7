import type { PaperFacts } from '../facts';
import type { PrintedWords } from '../words/use-words';

/** Who listens, as called on paper: "driver". */
export const listenerName = ({ seat, cabin }: PaperFacts, { names }: PrintedWords): string =>
  seat ? names.person(seat.id, cabin.wheelSide) : '';
