/** One option laid flat, seen from above: where everything stands on a sheet of so many pixels. */
import {
  type Arrival,
  type CarFromAbove,
  carFromAbove,
  fromAbove,
  type HeadShape,
  headShape,
  type OptionInput,
  type OptionResult,
  type PlanWindow,
  type Seat,
  type SpeakerInput,
  type Spot,
} from '../../geometry';
import { labelRows } from './label-rows';

export interface FlatSpeaker {
  speaker: SpeakerInput;
  at: Spot;
  /** What its sound takes to the seat in view; nothing without a seat. */
  arrival: Arrival | null;
  way: readonly Spot[];
  /** Where its label stands: beside the car, on the speaker's own side. */
  label: { x: number; y: number; side: 'left' | 'right' };
}

export interface FlatPlan {
  car: CarFromAbove;
  head: HeadShape | null;
  speakers: readonly FlatSpeaker[];
  /** Labels have a line more. */
  narrow: boolean;
  /** From mm seen from above to pixels of the sheet. */
  toSheet(spot: Spot): Spot;
}

export interface FlatOf {
  option: OptionInput;
  result: OptionResult;
}

/** Room for labels on both sides, and the height of one of them, px. */
const WIDE = { aside: 144, row: 34 };
/** On a narrow sheet the car would be small beside words in one line. */
const NARROW = { aside: 96, row: 47 };
const NARROW_SHEET = 520;
const EDGE = 8;

export function flatPlan(
  car: CarFromAbove,
  window: PlanWindow,
  seat: Seat | null,
  { option, result }: FlatOf,
  size: { width: number; height: number },
): FlatPlan {
  const [wide, deep] = [window.right - window.left, window.rear - window.front];
  const narrow = size.width < NARROW_SHEET;
  const { aside, row } = narrow ? NARROW : WIDE;
  const inner = Math.max(40, size.width - 2 * aside);
  const scale = Math.min(inner / wide, Math.max(40, size.height - 2 * EDGE) / deep);
  const left = (size.width - wide * scale) / 2;
  const top = (size.height - deep * scale) / 2;
  const toSheet = ([x, y]: Spot): Spot => [
    left + (x - window.left) * scale,
    top + (y - window.front) * scale,
  ];
  const arrivals = result.seats.find(({ id }) => id === seat?.id)?.arrivals ?? [];
  const placed = option.speakers.flatMap((speaker) => {
    const one = result.placed.find((each) => each.speaker === speaker.id);
    if (!one) return [];
    const at = toSheet(fromAbove(one.position));
    const arrival = arrivals.find((each) => each.speaker === speaker.id) ?? null;
    const way = arrival?.way.map((point) => toSheet(fromAbove(point))) ?? [];
    // Where it stands counts: a left speaker on the right would drag its label across the car.
    const side = at[0] < size.width / 2 ? ('left' as const) : ('right' as const);
    return [{ speaker, at, arrival, way, side }];
  });
  const speakers = (['left', 'right'] as const).flatMap((side) => {
    const own = placed.filter((one) => one.side === side).sort((a, b) => a.at[1] - b.at[1]);
    const rows = labelRows(
      own.map(({ at }) => at[1]),
      row,
      EDGE,
      size.height - EDGE,
    );
    return own.map(({ side: _, ...one }, i): FlatSpeaker => {
      const x = side === 'left' ? left - 10 : size.width - left + 10;
      return { ...one, label: { x, y: rows[i] ?? one.at[1], side } };
    });
  });
  return { car, head: seat && headShape(seat), speakers, narrow, toSheet };
}

/** The car cut at the height of the seat's ears; without a seat at that of usual ones, mm. */
export const flatCar = (cabin: Parameters<typeof carFromAbove>[0], seat: Seat | null) =>
  carFromAbove(cabin, seat?.head[2] ?? USUAL_EARS);

/** Typical value, from memory. */
const USUAL_EARS = 900;
