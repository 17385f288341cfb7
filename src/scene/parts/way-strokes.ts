/** How one line from a speaker to the head is drawn. */
import { type Arrival, distance, mix, type Vec3 } from '../../geometry';
import { polyline, type Stroke } from '../meshes/ink';
import type { Pass } from '../pick/nearest-pass';

export interface LinePen {
  /** The line of the speaker chosen or pointed at. */
  mine: boolean;
  /** Another speaker's line is the one looked at. */
  quiet: boolean;
}

/**
 * Free: one whole line. A near miss: dash-dot, and where it matters a short stroke to what it
 * passes. Blocked: the way round whole, the straight line faint and dashed; without a way round
 * the dashed line alone.
 */
export function wayStrokes(
  from: Vec3,
  head: Vec3,
  arrival: Pick<Arrival, 'line' | 'way'>,
  pass: Pass | null,
  { mine, quiet }: LinePen,
): Stroke[] {
  const width = mine ? 3 : 1.9;
  const strength = quiet && !mine ? 0.6 : 1;
  if (arrival.line === 'clear') return [{ start: from, end: head, tone: 'free', width, strength }];
  if (arrival.line === 'grazing') {
    const line: Stroke = { start: from, end: head, tone: 'free', width, strength };
    const strokes: Stroke[] = [{ ...line, dash: mine ? 17 : 13, dotted: true }];
    if (pass) {
      strokes.push({
        start: pass.onLine,
        end: pass.onBody,
        tone: 'blocked',
        width: 1.6,
        dash: 2.5,
      });
    }
    return strokes;
  }
  const bent = arrival.way.length > 2;
  const straight: Stroke = {
    start: from,
    end: head,
    tone: 'blocked',
    width: bent ? 1.2 : width,
    dash: bent ? 5 : 7,
    strength: bent ? 0.55 * strength : strength,
  };
  if (!bent) return [straight];
  const pen = { tone: 'blocked', width, strength, blunt: true } as const;
  return [straight, ...polyline(arrival.way, false, pen)];
}

/** Bends nearer together than this are one, as round a rim or a limb, mm. */
const ONE_BEND = 70;

/** Where a way bends, for the eye: one place for each body it goes round. */
export function bendsOf(way: readonly Vec3[]): Vec3[] {
  const bends: Vec3[] = [];
  let run: Vec3[] = [];
  const close = () => {
    const [first, last] = [run[0], run[run.length - 1]];
    if (first && last) bends.push(middleAlong(run));
    run = [];
  };
  for (const point of way.slice(1, -1)) {
    const before = run[run.length - 1];
    if (before && distance(before, point) > ONE_BEND) close();
    run.push(point);
  }
  close();
  return bends;
}

/** Half way along a polyline. */
function middleAlong(points: readonly Vec3[]): Vec3 {
  let left = 0;
  for (let i = 1; i < points.length; i++)
    left += distance(points[i - 1] as Vec3, points[i] as Vec3) / 2;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1] as Vec3, points[i] as Vec3];
    const step = distance(a, b);
    if (step >= left && step > 0) return mix(a, b, left / step);
    left -= step;
  }
  return points[points.length - 1] as Vec3;
}
