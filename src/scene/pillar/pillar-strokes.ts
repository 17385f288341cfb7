/**
 * What a front pillar hides, as strokes: the eyes, the two lines of sight past it without and with
 * what stands on it, and the hatched wedge between them that neither eye sees.
 */
import {
  along,
  direction,
  mix,
  type PillarView,
  type SightLines,
  sub,
  type Vec3,
} from '../../geometry';
import { polyline, type Stroke } from '../meshes/ink';

/** Lines run on so far behind the pillar, mm: out into the street, not out of the picture. */
const BEYOND = 420;

/** Between two strokes of the wedge, mm. */
const HATCH = 24;

/** Between two strokes of what is newly hidden, mm. */
const ADDED_HATCH = 7;

/** Radius of the ring that stands for an eye, mm: that of an eyeball. */
const EYE = 12;

/** What is nearer than this is the same place, mm. */
const SAME = 0.5;

export interface PillarStrokes {
  strokes: Stroke[];
  /** Where its words stand. */
  at: Vec3;
}

/**
 * @param ownEyes seen from the seat: lines and eyes would run into the lens, so what is hidden is
 * drawn on the pillar alone
 */
export function pillarStrokes(view: PillarView, ownEyes: boolean): PillarStrokes | null {
  const { side, lines, linesBefore } = view;
  if (!lines || !linesBefore) return null;
  const low = Math.min(lines.outer[2], lines.inner[2]);
  const high = Math.max(lines.outer[2], lines.inner[2]);
  const at = mix(lines.outer, lines.inner, 0.5);
  const strokes: Stroke[] = [];
  for (const end of ['outer', 'inner'] as const) {
    const [before, after] = [linesBefore[end], lines[end]];
    strokes.push(post(after, low, high, 'ink'));
    if (near(before, after)) continue;
    strokes.push({ ...post(before, low, high, 'quiet-ink'), dash: 4 });
    strokes.push(...band(before, after, low, high));
  }
  if (ownEyes) return { strokes, at };
  const changed = !near(linesBefore.inner, lines.inner) || !near(linesBefore.outer, lines.outer);
  strokes.push(...sights(lines, side, { tone: 'ink', width: 1.6, strength: 0.95 }));
  if (changed) {
    strokes.push(
      ...sights(linesBefore, side, { tone: 'quiet-ink', width: 1.2, strength: 0.9, dash: 6 }),
    );
  }
  for (const eye of [lines.eyes.left, lines.eyes.right]) {
    const ring = Array.from({ length: 12 }, (_, i): Vec3 => {
      const turn = (i * Math.PI) / 6;
      return [eye[0] + EYE * Math.cos(turn), eye[1] + EYE * Math.sin(turn), eye[2]];
    });
    strokes.push(...polyline(ring, true, { tone: 'ink', width: 1.6, blunt: true }));
  }
  strokes.push(...wedge(lines, side));
  return { strokes, at };
}

type Pen = Omit<Stroke, 'start' | 'end'>;

const near = (a: Vec3, b: Vec3): boolean => Math.abs(a[0] - b[0]) + Math.abs(a[1] - b[1]) < SAME;

/** The eye on the pillar's own side looks past its outer edge, the other one past the inner. */
function ends({ eyes, outer, inner }: SightLines, side: PillarView['side']) {
  const other = side === 'left' ? 'right' : 'left';
  return [
    { eye: eyes[side], touch: outer },
    { eye: eyes[other], touch: inner },
  ] as const;
}

const beyond = ({ eye, touch }: { eye: Vec3; touch: Vec3 }, by: number): Vec3 => {
  const way = direction(sub(touch, eye));
  return way ? along(touch, way, by) : touch;
};

const sights = (lines: SightLines, side: PillarView['side'], pen: Pen): Stroke[] =>
  ends(lines, side).map((end) => ({ start: end.eye, end: beyond(end, BEYOND), ...pen }));

/** Where a line touches, up and down the pillar between the two heights looked at. */
const post = ([x, y]: Vec3, low: number, high: number, tone: 'ink' | 'quiet-ink'): Stroke => ({
  start: [x, y, low],
  end: [x, y, high],
  tone,
  width: 2,
});

/** From where a line touched the bare pillar to where it touches now. */
function band(before: Vec3, after: Vec3, low: number, high: number): Stroke[] {
  const count = Math.max(2, Math.round((high - low) / ADDED_HATCH));
  return Array.from({ length: count + 1 }, (_, i): Stroke => {
    const z = low + ((high - low) * i) / count;
    return {
      start: [before[0], before[1], z],
      end: [after[0], after[1], z],
      tone: 'accent',
      width: 1.3,
      strength: 0.9,
    };
  });
}

/** Strokes from line to line behind the pillar; none where the lines cross, and nothing is hidden. */
function wedge(lines: SightLines, side: PillarView['side']): Stroke[] {
  const [own, other] = ends(lines, side);
  const count = Math.floor(BEYOND / HATCH);
  return Array.from({ length: count + 1 }, (_, i): Stroke => {
    const by = i * HATCH;
    return {
      start: beyond(own, by),
      end: beyond(other, by),
      tone: 'quiet-ink',
      width: 1,
      strength: 0.75 * (1 - (0.7 * i) / count),
    };
  });
}
