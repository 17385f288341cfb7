/** The car as a drawing: tones and visible lines, all in vectors, in mm of the car. */
import type { CabinModel, Vec3 } from '../../geometry';
import { type Area, areasOf } from './areas';
import { type Camera, cameraOf, type ViewId } from './camera';
import { type Edge, type EdgeKind, edgesOf } from './edges';
import { type Box, createGrid, rasterInPlace } from './raster';
import { sectionEdges } from './section';
import { type Rows, type Solid, solidsFor } from './solids';
import { thinned } from './thin';
import { joined, type Point, visibleStretches } from './visible-lines';

export interface CarDrawing {
  camera: Camera;
  /** What is drawn lies in it, mm of the drawing. */
  box: Box;
  areas: Area[];
  outlines: Point[][];
  folds: Point[][];
  glass: Point[][];
  /** From the side: where the roof, the screen and the dash are cut. */
  section: Point[][];
  /** The body round the cabin. */
  body: Point[][];
}

/** Cells across the drawing: about 0.15 mm each on paper. */
const CELLS = 1100;
/** Lines are thinned by this many cells. */
const THIN = 0.25;

const kept = new WeakMap<CabinModel, Map<string, CarDrawing>>();

const keyOf = (view: ViewId, rows: Rows) => (view === 'behind' ? `${view} ${rows}` : view);

/** The drawing of a cabin in one view; worked out once for each, some 0.2 to 0.5 s. */
export function drawCar(cabin: CabinModel, view: ViewId, rows: Rows): CarDrawing {
  const views = kept.get(cabin) ?? new Map<string, CarDrawing>();
  kept.set(cabin, views);
  const key = keyOf(view, rows);
  let drawing = views.get(key);
  if (!drawing) {
    drawing = drawn(cabin, cameraFor(cabin, view), rows);
    views.set(key, drawing);
  }
  return drawing;
}

/** True when {@link drawCar} answers at once. */
export const isDrawn = (cabin: CabinModel, view: ViewId, rows: Rows): boolean =>
  kept.get(cabin)?.has(keyOf(view, rows)) ?? false;

/** What the view from behind looks at: in front of the front seats' heads, in the middle of the car. */
function cameraFor(cabin: CabinModel, view: ViewId): Camera {
  const front = cabin.seats.filter(({ posture }) => posture?.row === 1);
  const x = front[0]?.head[0] ?? 900;
  return cameraOf(view, cabin.wheelSide, [x - 150, 0, 500]);
}

function drawn(cabin: CabinModel, camera: Camera, rows: Rows): CarDrawing {
  const solids = solidsFor(cabin, camera, rows);
  const box = boxOf(cabin, camera, solids);
  const grid = createGrid(box, CELLS / Math.max(box.right - box.left, 1));
  for (const solid of solids) rasterInPlace(grid, solid, camera);
  const edges = solids.map((solid) => ({ solid, edges: edgesOf(solid, camera) }));
  const cut = camera.id === 'side' ? sectionEdges(cabin, camera) : [];
  const seen = (list: readonly Edge[]) =>
    joined(visibleStretches(list, grid)).map((line) => thinned(line, THIN / grid.fine));
  const lines = (which: (kind: EdgeKind, glass: boolean) => boolean) =>
    seen(
      edges.flatMap(({ solid, edges: own }) => own.filter(({ kind }) => which(kind, solid.glass))),
    );
  return {
    camera,
    box,
    areas: areasOf(grid),
    outlines: lines((kind, glass) => kind === 'outline' && !glass),
    folds: lines((kind, glass) => kind === 'fold' && !glass),
    glass: lines((_, glass) => glass),
    section: seen(cut),
    body:
      camera.id === 'behind'
        ? []
        : cabin.bodyLines
            .filter(({ id }) => camera.id === 'side' || !/^(profile|tyre|rim)/.test(id))
            .filter(({ id }) => !/^section/.test(id))
            .map(({ points, closed }) => {
              const flat = points.map((point): Point => {
                const [x, y] = camera.project(point);
                return [x, y];
              });
              return closed && flat[0] ? [...flat, flat[0]] : flat;
            }),
  };
}

/** Runs on behind the seats: let the frame cut it. */
const RUNS_ON = /^(floor|sill|tunnel|rear-door|b-pillar|roof)/;

/** Round everything: the body from above and the side; from behind what stands round the seats. */
function boxOf(cabin: CabinModel, camera: Camera, solids: readonly Solid[]): Box {
  const box: Box = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };
  const take = (point: Vec3) => {
    const [x, y] = camera.project(point);
    box.left = Math.min(box.left, x);
    box.right = Math.max(box.right, x);
    box.top = Math.min(box.top, y);
    box.bottom = Math.max(box.bottom, y);
  };
  const counts = ({ id, glass }: Solid) => camera.id !== 'behind' || !(glass || RUNS_ON.test(id));
  for (const { vertices } of solids.filter(counts)) for (const point of vertices) take(point);
  if (camera.id !== 'behind')
    for (const { points } of cabin.bodyLines) for (const point of points) take(point);
  if (!(box.right > box.left)) return { left: -1000, top: -1000, right: 2000, bottom: 1000 };
  return box;
}
