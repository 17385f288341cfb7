/** The airspace of a sealed enclosure drawn on a panel: closed mesh, less walls and speaker. */
import type { Panel } from '../cabin/model';
import { patchNormal, pointOnPatch } from '../cabin/patch';
import type { MeshShape, SpeakerBody } from '../input';
import { along, dot, sub, type Vec3 } from '../vector';
import { roundBody } from './body';
import { LITRE, meshVolume } from './mesh-volume';
import { areaOf, inset, isSimple, type Point2, triangulate } from './outline';

export interface PocketInput {
  /** Corners round the outside of the enclosure, (u, v) on the panel, three at least. */
  outline: readonly Point2[];
  /** Outside depth, square to the panel at the outline's middle. */
  depth: number;
  /** Behind the panel, or standing before it in the cabin. Left out: behind. */
  lies?: 'behind' | 'before';
  /** Wall thickness on all sides, front and back included. Left out: 0. */
  wall?: number;
  /** The speakers let into its front, with what they stand off the panel. */
  speakers?: readonly { body: SpeakerBody; standoff?: number }[];
}

export interface Pocket {
  /** Of the outside, of the walls, of the speakers' bodies, and what is left; litres. */
  outsideLitres: number;
  wallLitres: number;
  speakerLitres: number;
  netLitres: number;
  /** The airspace as a closed mesh, the speakers not taken out; mm, car axes. */
  mesh: MeshShape;
}

export type PocketAnswer = { ok: true; pocket: Pocket } | { ok: false; message: string };

/** Each triangle of the front is cut into four so many times: a curved panel is followed. */
const CUTS = 4;

const refuse = (message: string): PocketAnswer => ({ ok: false, message });

/**
 * Net volume of an enclosure from its drawn outline and depth: what lies under the outline on the
 * panel's own surface, straight back along the normal at its middle, to a back of the same shape.
 * A speaker counts with its whole cylinder inside the front wall; baskets are open and displace
 * less.
 * @returns the pocket, or one sentence saying why there is none
 */
export function pocketOf(panel: Panel, input: PocketInput): PocketAnswer {
  const { outline, depth, lies = 'behind', wall = 0 } = input;
  if (!(depth > 0 && Number.isFinite(depth)))
    return refuse(`the depth must be more than 0, got ${depth}`);
  if (!(wall >= 0)) return refuse(`the walls must be 0 or more thick, got ${wall}`);
  if (outline.length < 3 || !isSimple(outline))
    return refuse('the outline must have three corners or more, and none of its edges may cross');
  const frame = frameAt(panel, outline);
  const drawn = outline.map(([u, v]) => frame.flat(u, v));
  const outer = areaOf(drawn) < 0 ? [...drawn].reverse() : drawn;
  if (!isSimple(outer) || areaOf(outer) < 1e-3)
    return refuse('the outline encloses nothing on this panel');
  const inner = wall > 0 ? inset(outer, wall) : outer;
  const room = depth - 2 * wall;
  if (!inner || room <= 0) return refuse(`walls of ${wall} mm leave no room inside`);
  const way = lies === 'behind' ? -1 : 1;
  const outside = solidUnder(frame, outer, 0, way * depth);
  const mesh = solidUnder(frame, inner, way * wall, way * (depth - wall));
  const outsideLitres = meshVolume(outside) / LITRE;
  const insideLitres = meshVolume(mesh) / LITRE;
  const speakerLitres = speakersLitres(input);
  const netLitres = insideLitres - speakerLitres;
  if (netLitres <= 0) return refuse('the speakers fill all of the room inside');
  return {
    ok: true,
    pocket: {
      outsideLitres,
      wallLitres: outsideLitres - insideLitres,
      speakerLitres,
      netLitres,
      mesh,
    },
  };
}

/**
 * How far before a pocket's front a speaker stands that stands off the panel by as much, mm: the
 * front of one before the panel is its depth off it.
 */
export const standoffFrom = (
  { depth, lies }: Pick<PocketInput, 'depth' | 'lies'>,
  standoff = 0,
): number => (lies === 'before' ? Math.max(0, standoff - depth) : standoff);

/** What the bodies of its speakers take up of a pocket's room, litres. */
export const speakersLitres = (pocket: PocketInput): number =>
  (pocket.speakers ?? []).reduce((sum, speaker) => sum + bodyLitres(speaker, pocket), 0);

/** The part of a speaker's cylinder behind the front wall, no deeper than the room, litres. */
function bodyLitres(
  { body, standoff }: { body: SpeakerBody; standoff?: number },
  pocket: PocketInput,
): number {
  const { depth, wall = 0 } = pocket;
  const behind = body.depth - standoffFrom(pocket, standoff) - wall;
  const inside = Math.min(depth - 2 * wall, Math.max(0, behind));
  return ((Math.PI / 4) * body.cutout ** 2 * inside) / LITRE;
}

interface Frame {
  normal: Vec3;
  /** A place of the panel laid flat along the normal at the outline's middle. */
  flat(u: number, v: number): Point2;
  /** The panel's surface over a flat place. */
  surface(p: Point2): Vec3;
}

function frameAt({ patch }: Panel, outline: readonly Point2[]): Frame {
  const mean = (k: 0 | 1) => outline.reduce((sum, p) => sum + p[k], 0) / outline.length;
  const [u0, v0] = [mean(0), mean(1)];
  const origin = pointOnPatch(patch, u0, v0);
  const normal = patchNormal(patch, u0, v0);
  const {
    across: [a, b],
  } = roundBody(origin, normal, { flange: 0, cutout: 0, depth: 0 });
  const flat = (u: number, v: number): Point2 => {
    const p = sub(pointOnPatch(patch, u, v), origin);
    return [dot(p, a), dot(p, b)];
  };
  return {
    normal,
    flat,
    surface(want) {
      // Newton on (u, v), beyond the panel's edges too: an inset never leaves it by much.
      let [u, v] = [u0, v0];
      for (let step = 0; step < 40; step++) {
        const f = flat(u, v);
        const [x, y] = [f[0] - want[0], f[1] - want[1]];
        if (Math.abs(x) + Math.abs(y) < 1e-9) break;
        const e = 1e-6;
        const [fu, fv] = [flat(u + e, v), flat(u, v + e)];
        const [xu, yu] = [(fu[0] - f[0]) / e, (fu[1] - f[1]) / e];
        const [xv, yv] = [(fv[0] - f[0]) / e, (fv[1] - f[1]) / e];
        const det = xu * yv - xv * yu;
        if (Math.abs(det) < 1e-9) break;
        u -= (x * yv - y * xv) / det;
        v -= (xu * y - yu * x) / det;
      }
      return pointOnPatch(patch, u, v);
    },
  };
}

/** The closed mesh between two copies of the surface over a flat polygon, `from` and `to` out. */
function solidUnder(frame: Frame, polygon: readonly Point2[], from: number, to: number): MeshShape {
  const { points, triangles, rim } = refined(polygon, triangulate(polygon));
  const ground = points.map(frame.surface);
  const n = points.length;
  const [low, high] = from < to ? [from, to] : [to, from];
  const vertices = [
    ...ground.map((p) => along(p, frame.normal, low)),
    ...ground.map((p) => along(p, frame.normal, high)),
  ];
  const all: [number, number, number][] = [];
  for (const [a, b, c] of triangles) all.push([a, c, b], [a + n, b + n, c + n]);
  for (const [a, b] of rim) all.push([a, b, b + n], [a, b + n, a + n]);
  return { shape: 'mesh', vertices, triangles: all };
}

/** Triangles cut into four again and again, all alike so that no gap opens; and the rim's edges. */
function refined(polygon: readonly Point2[], rough: readonly [number, number, number][]) {
  const points: Point2[] = [...polygon];
  let triangles = [...rough];
  let rim = polygon.map((_, i): [number, number] => [i, (i + 1) % polygon.length]);
  for (let cut = 0; cut < CUTS; cut++) {
    const halves = new Map<string, number>();
    const half = (i: number, j: number): number => {
      const key = i < j ? `${i} ${j}` : `${j} ${i}`;
      const known = halves.get(key);
      if (known !== undefined) return known;
      const [a, b] = [points[i] as Point2, points[j] as Point2];
      points.push([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]);
      halves.set(key, points.length - 1);
      return points.length - 1;
    };
    triangles = triangles.flatMap(([a, b, c]): [number, number, number][] => {
      const [ab, bc, ca] = [half(a, b), half(b, c), half(c, a)];
      return [
        [a, ab, ca],
        [ab, b, bc],
        [ca, bc, c],
        [ab, bc, ca],
      ];
    });
    rim = rim.flatMap(([a, b]): [number, number][] => {
      const m = half(a, b);
      return [
        [a, m],
        [m, b],
      ];
    });
  }
  return { points, triangles, rim };
}
