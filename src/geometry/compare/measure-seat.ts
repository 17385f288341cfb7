/** What the arrivals at one seat say of an option: quick, straight from the answer. */
import type { Side } from '../input';
import type { Arrival, Line } from '../result';
import { obstructionAt } from '../sound/arrival-obstruction';
import { middleOf } from '../stage/arrivals';
import { arrivalOf, missingSide, SIDES, type Stage, seatResultOf } from '../study/stage';
import { type WhoGroup, whoIn } from './groups';
import { type Measure, type MeasureKind, measureOf, type Value } from './measure';

/** How bad a line is, in the order of `Line`. */
export const LINES: readonly Line[] = ['clear', 'grazing', 'blocked'];

export type Put = (measure: Measure, value: Value) => void;

/** Per pair and lone speaker, and the spread of the paths of each side. */
export function measureSeat(stage: Stage, seatId: string, put: Put): void {
  const seat = seatResultOf(stage, seatId);
  if (!seat) return;
  const byId = (id: string): Arrival | null => arrivalOf(seat, id);
  for (const group of whoIn(stage.option.speakers)) {
    const { who, pair, members } = group;
    const tell = (kind: MeasureKind, value: Value) => put(measureOf(kind, seatId, { who }), value);
    if (pair !== null) {
      const found = seat.pairs.find((one) => one.pair === pair);
      const reason = found?.reasons?.[0] ?? missingSide(pair, missing(group));
      const side = nearer(found?.difference ?? null);
      tell('difference', {
        value: found?.difference ?? null,
        ...(side && { side }),
        ...(typeof found?.difference !== 'number' && { reason }),
      });
      const level = found?.levelDifferenceDb ?? null;
      tell('levelDifferenceDb', { value: level, ...(level === null && { reason }) });
    }
    const arrivals = members.flatMap((speaker) => {
      const arrival = byId(speaker.id);
      return arrival ? [{ speaker, arrival }] : [];
    });
    tell(
      'offAxisDeg',
      worst(arrivals, ({ arrival }) => arrival.offAxisDeg, 'no angle to the listener is known'),
    );
    tell(
      'line',
      worst(arrivals, ({ arrival }) => LINES.indexOf(arrival.line), ''),
    );
    tell(
      'obstructionDb',
      worst(
        arrivals,
        ({ speaker, arrival }) =>
          obstructionAt(arrival, middleOf(speaker), stage.result.speedOfSound),
        'something blocks the line and no way round is known, so its loss is not',
      ),
    );
    const first = arrivals.flatMap(({ speaker, arrival: { reflections } }) => {
      const time = reflections[0]?.extraTime;
      return time === undefined ? [] : [{ time, side: speaker.side }];
    });
    const earliest = first.sort((a, b) => a.time - b.time)[0];
    tell(
      'firstReflectionTime',
      earliest
        ? { value: earliest.time, ...(earliest.side && { side: earliest.side }) }
        : { value: null, none: true },
    );
  }
  for (const side of SIDES) {
    const paths = stage.option.speakers.flatMap((speaker) => {
      const arrival = speaker.side === side ? byId(speaker.id) : null;
      return arrival ? [arrival.path] : [];
    });
    put(
      measureOf('pathSpread', seatId, { side }),
      paths.length < 2
        ? { value: null, reason: `fewer than two speakers stand on the ${side}` }
        : { value: Math.max(...paths) - Math.min(...paths) },
    );
  }
}

const missing = ({ members }: WhoGroup): Side =>
  members.some(({ side }) => side === 'left') ? 'right' : 'left';

const nearer = (difference: number | null): Side | null =>
  !difference ? null : difference < 0 ? 'left' : 'right';

type Heard = {
  arrival: Arrival;
  speaker: Stage['option']['speakers'][number];
};

/** The largest over the speakers, and whose it is; not known where one of them is not. */
function worst(
  arrivals: readonly Heard[],
  read: (one: Heard) => number | null,
  why: string,
): Value {
  if (arrivals.length === 0) return { value: null, reason: 'there is no such speaker' };
  let most: { value: number; side: Side | undefined } | null = null;
  for (const one of arrivals) {
    const value = read(one);
    if (value === null) return { value: null, reason: why };
    if (!most || value > most.value) most = { value, side: one.speaker.side };
  }
  const { value, side } = most as { value: number; side: Side | undefined };
  const even = arrivals.length > 1 && arrivals.every((one) => read(one) === value);
  return { value, ...(side && !even && { side }) };
}
