/**
 * The edges a cabin's panels stand out with: free ones, those where two panels make a ridge towards
 * the cabin, and the back of a tight roll such as a dash's lip. Hollow corners and smooth joints
 * are none.
 */
import type { Panel, Patch } from '../../cabin/model';
import { patchNormal, pointOnPatch } from '../../cabin/patch';
import { tessellatePanel } from '../../cabin/tessellate-panel';
import { cross, direction, distance, dot, mix, sub, type Vec3 } from '../../vector';
import { buildEdgeTree, type EdgeTree } from './edge-tree';
import { nearestTriangle, squareToStretch } from './nearest-triangle';

/** Edges of one panel, or of a ridge that several panels make. */
export interface Ridge {
  /** Of the panels, the one the cabin lists first. */
  id: string;
  panels: readonly string[];
  tree: EdgeTree;
}

/** Panels this near an edge share it, mm: where curved ones meet straight ones a hair is left. */
const SHARED = 6;
/** A joint that turns by less than 10° is smooth: common practice, no source. */
const SMOOTH = Math.sin(Math.PI / 18);
/** A panel bent tighter than this radius, mm, is an edge to sound: typical value, from memory. */
const ROLL_RADIUS = 100;
/** As panels are cut into triangles. */
const STRIPS = 12;

const kept = new WeakMap<readonly Panel[], readonly Ridge[]>();

/** Kept by the identity of `panels`. */
export function ridgesOf(panels: readonly Panel[]): readonly Ridge[] {
  let ridges = kept.get(panels);
  if (!ridges) {
    ridges = findRidges(panels);
    kept.set(panels, ridges);
  }
  return ridges;
}

/** A panel with its triangles at hand. */
interface Cut {
  panel: Panel;
  /** Nine numbers a triangle. */
  triangles: Float64Array;
  low: Vec3;
  high: Vec3;
  /** Its four border lines. */
  borders: readonly (readonly Vec3[])[];
}

function findRidges(panels: readonly Panel[]): Ridge[] {
  const cuts = panels.map(cutOf).filter(({ triangles }) => triangles.length > 0);
  const corners = Float64Array.from(
    cuts.flatMap(({ borders }) => borders.flatMap((line) => line[0] as Vec3)),
  );
  const none = new Float64Array(0);
  const shared = new Map<number, number>();
  for (const { borders } of cuts)
    for (const border of borders) {
      const mark = markOf(border);
      shared.set(mark, (shared.get(mark) ?? 0) + 1);
    }
  const lists = new Map<string, { panels: string[]; list: number[] }>();
  const put = (ids: string[], a: Vec3, b: Vec3) => {
    const key = ids.join('\n');
    const known = lists.get(key) ?? { panels: ids, list: [] };
    lists.set(key, known);
    known.list.push(...a, ...b);
  };
  cuts.forEach((cut, index) => {
    for (const border of cut.borders) {
      const isWhole = shared.get(markOf(border)) === 2;
      const pieces = piecesAt(border, isWhole ? none : corners);
      const middle = pieces[pieces.length >> 1];
      if (!middle) continue;
      // Two panels that share a border whole make the same of all of it.
      const all = isWhole ? standingOut(cuts, index, ...middle) : null;
      for (const [a, b] of pieces) {
        const sharers = isWhole ? all : standingOut(cuts, index, a, b);
        if (sharers) put([cut.panel.id, ...sharers], a, b);
      }
    }
    for (const [a, b] of rollLines(cut.panel.patch)) put([cut.panel.id], a, b);
  });
  return [...lists.values()].flatMap(({ panels: ids, list }) => {
    const tree = buildEdgeTree(list);
    return tree ? [{ id: ids[0] as string, panels: ids, tree }] : [];
  });
}

function cutOf(panel: Panel): Cut {
  const { vertices, triangles } = tessellatePanel(panel);
  const out = new Float64Array(9 * triangles.length);
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < triangles.length; i++)
    for (let c = 0; c < 3; c++) {
      const v = vertices[(triangles[i] as readonly number[])[c] as number] as Vec3;
      for (let k = 0; k < 3; k++) out[9 * i + 3 * c + k] = v[k] as number;
    }
  for (const v of vertices)
    for (let k = 0; k < 3; k++) {
      low[k] = Math.min(low[k] as number, (v[k] as number) - SHARED);
      high[k] = Math.max(high[k] as number, (v[k] as number) + SHARED);
    }
  const at = panel.patch.control;
  const line = (...c: readonly number[]) => borderLine(c.map((i) => at[i] as Vec3));
  return {
    panel,
    triangles: out,
    low: low as unknown as Vec3,
    high: high as unknown as Vec3,
    borders: [line(0, 1, 2), line(2, 5, 8), line(8, 7, 6), line(6, 3, 0)],
  };
}

/** A border is a quadratic Bézier curve; a straight one is left whole. */
function borderLine(control: readonly Vec3[]): readonly Vec3[] {
  const [a, b, c] = control as [Vec3, Vec3, Vec3];
  if (distance(b, mix(a, c, 0.5)) <= 1e-6) return [a, c];
  return Array.from({ length: STRIPS + 1 }, (_, k) => {
    const t = k / STRIPS;
    return mix(mix(a, b, t), mix(b, c, t), t);
  });
}

/** The same for the same border whichever way it runs; hardly ever for two. */
function markOf(border: readonly Vec3[]): number {
  const [a, m, b] = [border[0], border[border.length >> 1], border[border.length - 1]];
  const [p, q, r] = [a as Vec3, b as Vec3, m as Vec3];
  const way = border.length === 2 ? 0 : r[0] + 1.7 * r[1] + 2.9 * r[2];
  const sum = p[0] + q[0] + 3.1 * (p[1] + q[1]) + 7.3 * (p[2] + q[2]);
  return sum + 0.37 * distance(p, q) + 0.13 * way;
}

/** The stretches of a border, parted where corners of panels lie on it. */
function piecesAt(border: readonly Vec3[], corners: Float64Array): [Vec3, Vec3][] {
  const pieces: [Vec3, Vec3][] = [];
  for (let i = 0; i + 1 < border.length; i++) {
    const [a, b] = [border[i] as Vec3, border[i + 1] as Vec3];
    const reach = distance(a, b);
    if (!(reach > 0)) continue;
    const cuts = [0, 1];
    const way = sub(b, a);
    for (let c = 0; c < corners.length; c += 3) {
      const x = (corners[c] as number) - a[0];
      const y = (corners[c + 1] as number) - a[1];
      const z = (corners[c + 2] as number) - a[2];
      const at = (x * way[0] + y * way[1] + z * way[2]) / reach;
      if (at < SHARED || at > reach - SHARED) continue;
      if (x * x + y * y + z * z - at * at < SHARED * SHARED) cuts.push(at / reach);
    }
    cuts.sort((s, t) => s - t);
    for (let k = 0; k + 1 < cuts.length; k++) {
      const [s, t] = [cuts[k] as number, cuts[k + 1] as number];
      if (t > s) pieces.push([mix(a, b, s), mix(a, b, t)]);
    }
  }
  return pieces;
}

/**
 * The other panels of a ridge on this stretch of a border, none for a free one; null where it does
 * not stand out, or the ridge is found from a panel before this one.
 */
function standingOut(cuts: readonly Cut[], index: number, a: Vec3, b: Vec3): string[] | null {
  const p = mix(a, b, 0.5);
  const way = direction(sub(b, a));
  const own = way && leaf(cuts[index] as Cut, p, way);
  if (!own) return null;
  const others: string[] = [];
  for (let k = 0; k < cuts.length; k++) {
    const cut = cuts[k] as Cut;
    if (k === index || !holds(cut, p)) continue;
    const other = leaf(cut, p, way);
    if (!other) continue;
    // Inside another panel, not along its border: it ends there.
    if (!cut.borders.some((border) => isOn(border, p))) return null;
    const isRidge = dot(own.normal, other.into) < -SMOOTH && dot(other.normal, own.into) < -SMOOTH;
    if (!isRidge || k < index) return null;
    others.push(cut.panel.id);
  }
  return others;
}

const holds = ({ low, high }: Cut, p: Vec3): boolean =>
  p[0] >= low[0] &&
  p[0] <= high[0] &&
  p[1] >= low[1] &&
  p[1] <= high[1] &&
  p[2] >= low[2] &&
  p[2] <= high[2];

function isOn(line: readonly Vec3[], p: Vec3): boolean {
  for (let i = 0; i + 1 < line.length; i++) {
    const [a, b] = [line[i] as Vec3, line[i + 1] as Vec3];
    if (squareToStretch(sub(a, p), sub(b, p)) < SHARED * SHARED) return true;
  }
  return false;
}

interface Leaf {
  /** Unit, into the cabin. */
  normal: Vec3;
  /** Unit, from the edge into the panel, square to the edge. */
  into: Vec3;
}

/** The panel's triangle nearest a place on an edge, if within reach: how it faces, how it lies. */
function leaf({ triangles: t }: Cut, p: Vec3, way: Vec3): Leaf | null {
  const at = nearestTriangle(t, p, SHARED);
  if (at < 0) return null;
  const [a, b, c] = [0, 3, 6].map((k): Vec3 => {
    return [t[at + k] as number, t[at + k + 1] as number, t[at + k + 2] as number];
  }) as [Vec3, Vec3, Vec3];
  const normal = direction(cross(sub(b, a), sub(c, a)));
  const middle: Vec3 = [
    (a[0] + b[0] + c[0]) / 3 - p[0],
    (a[1] + b[1] + c[1]) / 3 - p[1],
    (a[2] + b[2] + c[2]) / 3 - p[2],
  ];
  const on = dot(middle, way);
  const into = direction([
    middle[0] - on * way[0],
    middle[1] - on * way[1],
    middle[2] - on * way[2],
  ]);
  return normal && into ? { normal, into } : null;
}

/** Lines along the back of a panel that is rolled tightly towards the cabin, either way. */
function* rollLines(patch: Patch): Generator<[Vec3, Vec3]> {
  for (const isU of [true, false]) {
    const at = (s: number, t: number) =>
      isU ? pointOnPatch(patch, s, t) : pointOnPatch(patch, t, s);
    const normalAt = (s: number) => (isU ? patchNormal(patch, s, 0.5) : patchNormal(patch, 0.5, s));
    const [m, n] = [normalAt(0), normalAt(1)];
    const chord = sub(at(1, 0.5), at(0, 0.5));
    const turn = Math.acos(Math.min(1, Math.max(-1, dot(m, n))));
    if (!(Math.sin(turn) > SMOOTH || turn > Math.PI / 2) || !(dot(chord, m) < 0)) continue;
    if (Math.sqrt(dot(chord, chord)) > 2 * ROLL_RADIUS * Math.sin(turn / 2)) continue;
    for (let k = 1; k < STRIPS; k++) {
      const [a, m, b] = [at(k / STRIPS, 0), at(k / STRIPS, 0.5), at(k / STRIPS, 1)];
      const line = borderLine([a, mix(mix(a, b, 0.5), m, 2), b]);
      for (let i = 0; i + 1 < line.length; i++) yield [line[i] as Vec3, line[i + 1] as Vec3];
    }
  }
}
