/**
 * The cabin as a flat drawing: plain shapes on the paper, taken from the engine's own panels,
 * obstacles and body lines, so that a drawing always shows the car as it is dimensioned.
 */
import { type CabinModel, type Obstacle, type Panel, pointOnPatch } from '../../../geometry';
import { convexHull } from './hull';
import { type Point, project, type View } from './project';
import { shapePoints } from './shape-points';

export type ShapeKind = 'body' | 'panel' | 'glass' | 'section' | 'seat' | 'person' | 'wheel';

export interface FlatShape {
  id: string;
  kind: ShapeKind;
  /** mm on the paper. */
  points: readonly Point[];
  closed: boolean;
}

/** Samples along a curved edge: enough for a smooth line at drawing size. */
const EDGE_STEPS = 10;

/** Panels worth drawing in each view; the rest would only lie over them. */
const SHOWN: Record<View, RegExp> = {
  side: /glass|^(pillar|mirror-corner|[bcd]-pillar|door-(upper|lower)|rear-(door|quarter)|kick|sill)/,
  plan: /^(screen|rear-glass|parcel-shelf|dash-(top|roll)|pillar|mirror-corner|door-(upper|lower)|rear-(door|quarter)|b-pillar-waist|kick-(left|right)|console-top)/,
  front:
    /^(screen|roof$|roof-edge-(left|right)|pillar|side-glass|dash-(roll|face|lower)|door-(upper|lower)|kick|console-top|tunnel)/,
};
/** Cut along the car's centre in the side view: the profile of screen, roof, dash and console. */
const CENTRE_CUT =
  /^(screen|roof(-rear)?|rear-glass|parcel-shelf|rear-wall|dash-(top|roll|face)-center|console-(top|end)|tunnel-top)$/;

const drawn = new WeakMap<CabinModel, Partial<Record<View, readonly FlatShape[]>>>();

/** Everything drawn of a cabin in one view, back to front; worked out once for each. */
export function flatShapes(cabin: CabinModel, view: View): readonly FlatShape[] {
  let views = drawn.get(cabin);
  if (!views) {
    views = {};
    drawn.set(cabin, views);
  }
  views[view] ??= shapesOf(cabin, view);
  return views[view];
}

function shapesOf(cabin: CabinModel, view: View): FlatShape[] {
  return [
    ...bodyShapes(cabin, view),
    ...cabin.panels
      .filter((panel) => SHOWN[view].test(panel.id))
      // Left and right lie on each other from the side: one of them is enough.
      .filter((panel) => view !== 'side' || !panel.id.endsWith('-right'))
      .map((panel) => panelShape(panel, view)),
    ...cabin.obstacles.flatMap((obstacle) => obstacleShape(obstacle, view)),
    ...(view === 'side'
      ? cabin.panels.filter((panel) => CENTRE_CUT.test(panel.id)).map(centreCut)
      : []),
  ];
}

/** The car's outline alone. */
export function bodyShapes(cabin: CabinModel, view: View): FlatShape[] {
  // Looking forward from inside, the body lies outside of what is seen.
  if (view === 'front') return [];
  const lines =
    view === 'plan'
      ? cabin.bodyLines.filter(({ id }) => !/^(profile|tyre|rim)/.test(id))
      : cabin.bodyLines;
  return lines.map((line) => ({
    id: line.id,
    kind: 'body',
    points: line.points.map((point) => project(view, point)),
    closed: line.closed,
  }));
}

export function panelShape(panel: Panel, view: View): FlatShape {
  const points: Point[] = [];
  const put = (u: number, v: number) => points.push(project(view, pointOnPatch(panel.patch, u, v)));
  for (let i = 0; i < EDGE_STEPS; i++) put(i / EDGE_STEPS, 0);
  for (let i = 0; i < EDGE_STEPS; i++) put(1, i / EDGE_STEPS);
  for (let i = EDGE_STEPS; i > 0; i--) put(i / EDGE_STEPS, 1);
  for (let i = EDGE_STEPS; i > 0; i--) put(0, i / EDGE_STEPS);
  return {
    id: panel.id,
    kind: panel.material === 'glass' ? 'glass' : 'panel',
    points,
    closed: true,
  };
}

function centreCut(panel: Panel): FlatShape {
  const points = Array.from({ length: EDGE_STEPS + 1 }, (_, i) =>
    project('side', pointOnPatch(panel.patch, 0.5, i / EDGE_STEPS)),
  );
  return { id: `cut-${panel.id}`, kind: 'section', points, closed: false };
}

function obstacleShape(obstacle: Obstacle, view: View): FlatShape[] {
  if (obstacle.given || !isShown(obstacle, view)) return [];
  const kind: ShapeKind = obstacle.occupant ? 'person' : obstacle.seat ? 'seat' : 'wheel';
  const clouds = obstacle.drawn
    ? obstacle.drawn.map((part) => part.mesh.vertices)
    : [shapePoints(obstacle.shape)];
  return clouds.map((points, i) => ({
    id: `${obstacle.id}-${i}`,
    kind,
    points: convexHull(points.map((point) => project(view, point))),
    closed: true,
  }));
}

/** One person is enough to tell the scale, and only from the side does one not hide the car. */
function isShown(obstacle: Obstacle, view: View): boolean {
  if (obstacle.occupant) return view === 'side' && obstacle.occupant.seat === 'front-left';
  // Looking forward, the seats would hide the dash.
  if (view === 'front') return obstacle.seat === undefined && !/seat/.test(obstacle.id);
  return view !== 'side' || !obstacle.id.endsWith('-right');
}
