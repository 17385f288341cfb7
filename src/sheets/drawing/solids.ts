/** What of a cabin is drawn, as triangles: panels that face the reader, furniture, heads. */
import { type CabinModel, type Obstacle, tessellatePanel, type Vec3 } from '../../geometry';
import type { Camera } from './camera';

/** What a surface is drawn like. */
export type Tone = 'panel' | 'dash' | 'seat' | 'dark' | 'person';

export interface Solid {
  id: string;
  tone: Tone;
  vertices: readonly Vec3[];
  triangles: readonly (readonly [number, number, number])[];
  /** Panels are looked at from inside the cabin alone: the side nearer to the eye is left away. */
  oneSided: boolean;
  /** Glass hides nothing. */
  glass: boolean;
}

const panelSolids = new WeakMap<CabinModel, readonly Solid[]>();

function panelsOf(cabin: CabinModel): readonly Solid[] {
  let solids = panelSolids.get(cabin);
  if (!solids) {
    solids = cabin.panels.map((panel): Solid => {
      const { vertices, triangles } = tessellatePanel(panel);
      return {
        id: panel.id,
        tone: /^(dash|under-dash|console|centre-side)/.test(panel.id) ? 'dash' : 'panel',
        vertices,
        triangles,
        oneSided: !panel.given,
        glass: panel.material === 'glass',
      };
    });
    panelSolids.set(cabin, solids);
  }
  return solids;
}

function toneOf({ id, seat }: Obstacle, material: string): Tone {
  if (/skin|cloth/.test(material)) return 'person';
  if (/soft|hard/.test(material) || /^door-|binnacle/.test(id)) return 'dash';
  return /leather|fabric/.test(material) && (seat || !/wheel|selector/.test(id)) ? 'seat' : 'dark';
}

/** Fixed to a door: gone with it. */
const ON_DOOR = /^door-(?:armrest|pocket)-(left|right)$/;

/** Of the people only heads are drawn: bodies would hide the seats and the way of the sound. */
const isDrawn = ({ occupant }: Obstacle): boolean => !occupant || occupant.part === 'head';

const obstacleSolids = new WeakMap<Obstacle, readonly Solid[]>();

function furnitureOf(obstacle: Obstacle): readonly Solid[] {
  let solids = obstacleSolids.get(obstacle);
  if (!solids) {
    const own =
      obstacle.shape.shape === 'mesh' ? [{ material: 'soft-trim', mesh: obstacle.shape }] : [];
    const parts = obstacle.drawn ?? own;
    solids = parts.map(
      ({ material, mesh }, i): Solid => ({
        id: `${obstacle.id}/${i}`,
        tone: toneOf(obstacle, material),
        vertices: mesh.vertices,
        triangles: mesh.triangles,
        oneSided: false,
        glass: false,
      }),
    );
    obstacleSolids.set(obstacle, solids);
  }
  return solids;
}

/** Whether a panel shows its cabin side to the eye, by its middle triangle. */
function facesEye({ vertices, triangles }: Solid, camera: Camera): boolean {
  const [a, b, c] = triangles[Math.floor(triangles.length / 2)] ?? [0, 0, 0];
  const [p, q, r] = [vertices[a], vertices[b], vertices[c]].map((v) => camera.project(v as Vec3));
  if (!p || !q || !r) return false;
  return turn(p, q, r) < 0;
}

/** Below 0: wound against the clock on the drawing, whose y runs down; so facing the eye. */
export const turn = (
  [ax, ay]: readonly number[],
  [bx, by]: readonly number[],
  [cx, cy]: readonly number[],
): number =>
  ((bx as number) - (ax as number)) * ((cy as number) - (ay as number)) -
  ((by as number) - (ay as number)) * ((cx as number) - (ax as number));

/** How far back the view from behind goes: the front seats alone, or all. */
export type Rows = 'front' | 'all';

/** Everything drawn in one view. */
export function solidsFor(cabin: CabinModel, camera: Camera, rows: Rows): Solid[] {
  const panels = panelsOf(cabin);
  const door = (side: string) => panels.find(({ id }) => id === `door-upper-${side}`);
  const furniture = cabin.obstacles.filter((one) => {
    if (!isDrawn(one)) return false;
    const side = ON_DOOR.exec(one.id)?.[1];
    const on = side ? door(side) : undefined;
    return !on || camera.id === 'above' || facesEye(on, camera);
  });
  const solids = [...panels, ...furniture.flatMap(furnitureOf)];
  return camera.id === 'behind' ? solids.filter(isRoundSeats(cabin, rows)) : solids;
}

/** Behind the last listener begins what would only make the picture small: the luggage room. */
function isRoundSeats({ seats }: CabinModel, rows: Rows): (solid: Solid) => boolean {
  const heads = seats
    .filter(({ posture }) => rows === 'all' || posture?.row !== 2)
    .map(({ head }) => head[0]);
  const last = Math.max(...heads);
  if (!Number.isFinite(last)) return () => true;
  return ({ vertices }) =>
    vertices.reduce((sum, [x]) => sum + x, 0) / Math.max(vertices.length, 1) < last + BEHIND_HEAD;
}

/** The seat's own back and head restraint still belong to the picture, mm. */
const BEHIND_HEAD = 200;
