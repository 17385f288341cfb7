/**
 * The view past one pillar laid flat, seen from above: the way the eyes look runs to the right of
 * the sheet, so what lies to their left is above. mm on the sheet, y downward.
 */
import type { PillarView, SightLines, Vec3 } from '../../../geometry';

export type Spot = readonly [x: number, y: number];

export interface Sight {
  /** The eye on the pillar's own side, whose line touches its outer edge; and the other one. */
  eye: Spot;
  otherEye: Spot;
  outer: Spot;
  inner: Spot;
  /** Both lines drawn on to beyond the pillar, and the first one's parallel from the other eye. */
  outerEnd: Spot;
  innerEnd: Spot;
  parallelEnd: Spot;
}

export interface ViewPlan {
  after: Sight;
  before: Sight;
  head: Spot;
  /** Outlines: the pillar over all of its height looked at, and its two sections. */
  pillar: Spot[];
  cuts: Spot[][];
  pods: Spot[][];
  /** Unit vector: straight ahead in the car. */
  ahead: Spot;
  box: { x: number; y: number; width: number; height: number };
}

/** Lines run on so far behind the pillar, mm. */
const BEYOND = 230;

/** `null` where there are no lines to draw. */
export function viewPlan({ side, lines, linesBefore, sections }: PillarView): ViewPlan | null {
  if (!lines || !linesBefore || !sections) return null;
  const eyes = [lines.eyes.left, lines.eyes.right];
  const middle = [mean(eyes, 0), mean(eyes, 1)] as const;
  const touched = [lines.outer, lines.inner];
  const way = [mean(touched, 0) - middle[0], mean(touched, 1) - middle[1]] as const;
  const far = Math.sqrt(way[0] ** 2 + way[1] ** 2) || 1;
  const [dx, dy] = [way[0] / far, way[1] / far];
  // Car axes have X rearward and Y to the right: turned a quarter to the left, (dx, dy) is (−dy, dx).
  const turn = ([x, y]: readonly number[]): Spot => {
    const [a, b] = [(x as number) - middle[0], (y as number) - middle[1]];
    return [a * dx + b * dy, a * dy - b * dx];
  };
  const all = [...sections.outer, ...sections.inner];
  const reach = Math.max(...all.map((p) => turn(p)[0])) + BEYOND;
  const sight = (one: SightLines): Sight => {
    const [eye, otherEye] = [one.eyes[side], one.eyes[side === 'left' ? 'right' : 'left']].map(
      turn,
    ) as [Spot, Spot];
    const [outer, inner] = [turn(one.outer), turn(one.inner)];
    const slope = (outer[1] - eye[1]) / (outer[0] - eye[0]);
    return {
      eye,
      otherEye,
      outer,
      inner,
      outerEnd: [reach, eye[1] + slope * (reach - eye[0])],
      innerEnd: [
        reach,
        otherEye[1] + ((inner[1] - otherEye[1]) / (inner[0] - otherEye[0])) * (reach - otherEye[0]),
      ],
      parallelEnd: [reach, otherEye[1] + slope * (reach - otherEye[0])],
    };
  };
  const [after, before] = [sight(lines), sight(linesBefore)];
  const pillar = hull(all.map(turn));
  const pods = sections.pods.map(({ points }) => hull(points.map(turn)));
  const head = turn(sections.head);
  const shown = [head, ...pillar, ...pods.flat(), ...spotsOf(after), ...spotsOf(before)];
  const [xs, ys] = [shown.map(([x]) => x), shown.map(([, y]) => y)];
  const [x, y] = [Math.min(...xs) - MARGIN, Math.min(...ys) - MARGIN];
  return {
    after,
    before,
    head,
    pillar,
    cuts: [sections.outer, sections.inner].map((points) => hull(points.map(turn))),
    pods,
    ahead: [-dx, -dy],
    box: { x, y, width: Math.max(...xs) + MARGIN - x, height: Math.max(...ys) + MARGIN - y },
  };
}

/** Room for an eye's circle and its letter, mm. */
const MARGIN = 40;

const spotsOf = ({ eye, otherEye, outerEnd, innerEnd, parallelEnd }: Sight): Spot[] => [
  eye,
  otherEye,
  outerEnd,
  innerEnd,
  parallelEnd,
];

const mean = (points: readonly Vec3[], k: 0 | 1): number =>
  points.reduce((sum, p) => sum + p[k], 0) / points.length;

/** Convex hull of points in a plane (Andrew 1979: monotone chain). */
export function hull(points: readonly Spot[]): Spot[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  if (sorted.length < 3) return sorted;
  const half = (list: readonly Spot[]): Spot[] => {
    const chain: Spot[] = [];
    for (const p of list) {
      for (;;) {
        const [a, b] = [chain[chain.length - 2], chain[chain.length - 1]];
        if (!a || !b) break;
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0) break;
        chain.pop();
      }
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half([...sorted].reverse())];
}
