/** Where the reference points of a spot lie, as one sees it who looks square at its panel. */
import {
  type CabinModel,
  dot,
  type MarkOut,
  outlineOf,
  type Point2,
  panelFrame,
  patchNormal,
  pointOnPatch,
  sub,
  type Vec3,
  type Way,
  wayOf,
} from '../../geometry';

export interface Neighbourhood {
  /** Panels round about, the spot's own last: closed outlines, mm from the spot, x right, y up. */
  outlines: readonly { id: string; own: boolean; points: readonly Point2[] }[];
  /** Reference points of the tapes, in their order. */
  points: readonly Point2[];
  low: Point2;
  high: Point2;
  /** Where the drawing's right and up lead in the car. */
  right: Way;
  up: Way;
}

/** A panel this far before the spot, toward the looker, or behind it is not of its neighbourhood, mm. */
const BEFORE = 450;
const BEHIND = 700;

/** Room round spot and points, as a share of the larger side, and mm at least. */
const ROOM = 0.14;
const LEAST_ROOM = 60;

/** A drawing no wider than this times its height, nor the other way round. */
const LONGEST = 1.7;

/** @param normal unit, of the panel at the spot, into the cabin */
export function neighbourhood(
  { panels }: Pick<CabinModel, 'panels'>,
  { spot, panel: own, tapes }: MarkOut,
  normal: Vec3,
): Neighbourhood {
  const frame = panelFrame(normal);
  const seen = (p: Vec3): Point2 => {
    const from = sub(p, spot);
    return [dot(from, frame.right), dot(from, frame.up)];
  };
  const points = tapes.map(({ reference }) => seen(reference.point));
  const { low, high } = frameOf([[0, 0], ...points]);
  const outlines = panels.flatMap(({ id, patch }) => {
    const middle = pointOnPatch(patch, 0.5, 0.5);
    const ahead = dot(sub(middle, spot), normal);
    // Only what looks at the looker is seen: the other side of the car has its back to him.
    const faces = dot(patchNormal(patch, 0.5, 0.5), normal) > 0.05;
    if (id !== own && (!faces || ahead > BEFORE || ahead < -BEHIND)) return [];
    const outline = outlineOf(patch).map(seen);
    const apart =
      outline.every(([x]) => x < low[0]) ||
      outline.every(([x]) => x > high[0]) ||
      outline.every(([, y]) => y < low[1]) ||
      outline.every(([, y]) => y > high[1]);
    return apart ? [] : [{ id, own: id === own, points: outline }];
  });
  outlines.sort((a, b) => Number(a.own) - Number(b.own));
  return { outlines, points, low, high, right: wayOf(frame.right), up: frame.upIs };
}

function frameOf(points: readonly Point2[]): { low: Point2; high: Point2 } {
  const ends = ([0, 1] as const).map((k) => {
    const all = points.map((p) => p[k]);
    return [Math.min(...all), Math.max(...all)] as const;
  }) as [readonly [number, number], readonly [number, number]];
  const spans = ends.map(([a, b]) => b - a) as [number, number];
  const room = Math.max(LEAST_ROOM, ROOM * Math.max(...spans));
  const sizes = spans.map((span) => span + 2 * room) as [number, number];
  const wide = Math.max(sizes[0], sizes[1] / LONGEST);
  const high = Math.max(sizes[1], sizes[0] / LONGEST);
  const middle = ends.map(([a, b]) => (a + b) / 2) as [number, number];
  return {
    low: [middle[0] - wide / 2, middle[1] - high / 2],
    high: [middle[0] + wide / 2, middle[1] + high / 2],
  };
}
