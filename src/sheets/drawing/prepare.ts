/** What takes longer than a moment: the drawings and the comparison, worked out in steps. */
import { type MeasuredOption, measureInSteps, type Stage } from '../../geometry';
import { sessionStore } from '../../store';
import type { PaperFacts } from '../facts';
import type { ViewId } from './camera';
import { type CarDrawing, drawCar, isDrawn } from './draw-car';
import { preparing } from './progress';
import type { Rows } from './solids';

export interface Prepared {
  drawings: Readonly<Record<ViewId, CarDrawing>>;
  measured: readonly MeasuredOption[];
}

const VIEWS: readonly ViewId[] = ['behind', 'above', 'side'];

const kept = new WeakMap<PaperFacts['results'], Map<Rows, Promise<Prepared>>>();

/** Behind the front heads a speaker or a listener needs the whole car drawn, mm. */
const FRONT_ROOM = 300;

/** The front seats alone are drawn from behind where nobody listens and nothing stands farther back. */
function rowsOf({ cabin, seat, result }: PaperFacts): Rows {
  const front = cabin.seats.filter(({ posture }) => posture?.row === 1).map(({ head }) => head[0]);
  if (front.length === 0) return 'all';
  const limit = Math.max(...front) + FRONT_ROOM;
  const far = [...result.placed.map(({ position }) => position), ...(seat ? [seat.head] : [])];
  return far.every(([x]) => x < limit) ? 'front' : 'all';
}

/** Lets the page answer to the user between two steps. */
const pause = () => new Promise((resolve) => setTimeout(resolve));

/**
 * Drawings and measures for papers; the same promise for the same answer of the engine. Given up
 * when the reader leaves the room meanwhile, and begun again when they come back.
 */
export function prepare(facts: PaperFacts): Promise<Prepared> {
  const rows = rowsOf(facts);
  const known = kept.get(facts.results) ?? new Map<Rows, Promise<Prepared>>();
  kept.set(facts.results, known);
  let promise = known.get(rows);
  if (!promise) {
    promise = work(facts, rows);
    known.set(rows, promise);
    promise.catch(() => known.delete(rows));
  }
  return promise;
}

async function work({ plan, cabin, results }: PaperFacts, rows: Rows): Promise<Prepared> {
  const stages = plan.options.flatMap((option): Stage[] => {
    const result = results.find(({ id }) => id === option.id);
    return result ? [{ plan, cabin, option, result }] : [];
  });
  // A step for each view, then as many as the comparison takes: one a seat, and one an option.
  const seats = stages.reduce((sum, { result }) => sum + result.seats.length + 1, 0);
  const goOn = async (done: number) => {
    preparing.setState({ steps: { done, total: VIEWS.length + seats } });
    await pause();
    if (sessionStore.getState().paper === null) throw new Error('the papers were closed');
  };
  try {
    for (const [i, view] of VIEWS.entries()) {
      if (isDrawn(cabin, view, rows)) continue;
      await goOn(i);
      drawCar(cabin, view, rows);
    }
    const steps = measureInSteps(stages);
    for (;;) {
      const step = steps.next();
      if (step.done) return { drawings: drawingsOf(cabin, rows), measured: step.value };
      await goOn(VIEWS.length + step.value.done);
    }
  } finally {
    preparing.setState({ steps: null });
  }
}

const drawingsOf = (cabin: PaperFacts['cabin'], rows: Rows): Prepared['drawings'] => ({
  behind: drawCar(cabin, 'behind', rows),
  above: drawCar(cabin, 'above', rows),
  side: drawCar(cabin, 'side', rows),
});
