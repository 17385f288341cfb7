/**
 * How open the cabin is round each corner of a mesh: the soft darkening of footwells, creases and
 * under-seats. Painted on vertices once a cabin stands still, in small slices, so drawing a frame
 * pays nothing for it.
 */
import type { BufferAttribute, BufferGeometry } from 'three';
import { firstCrossed, type TriangleTree, type Vec3 } from '../../geometry';
import { geometryTree } from '../meshes/geometry-tree';
import { mergeTriangles } from '../meshes/merge-triangles';

/** Farther than this nothing darkens, mm. By eye. */
const REACH = 560;
/** Off the surface, so a ray does not meet the triangle it starts on, mm. */
const LIFT = 3;
/** Directions round the normal, spread evenly by cosine (Malley's method over a golden spiral). */
const DIRECTIONS = spread(10);

function spread(count: number): [number, number, number][] {
  return Array.from({ length: count }, (_, i) => {
    const r = Math.sqrt((i + 0.5) / count);
    const t = i * Math.PI * (3 - Math.sqrt(5));
    return [r * Math.cos(t), r * Math.sin(t), Math.sqrt(1 - r * r)];
  });
}

/** A surface and where it stands: its own origin in car axes. */
export interface Shaded {
  geometry: BufferGeometry;
  at: Vec3;
}

/**
 * Works through `targets`, yielding often; each gets its `openness` attribute (0 closed, 1 open)
 * filled when its turn is over. `occluders` are all surfaces that take light away.
 */
export function* paintOpenness(
  targets: readonly Shaded[],
  occluders: readonly Shaded[],
): Generator<void, void, void> {
  const merged = mergeTriangles(occluders);
  if (!merged) return;
  const tree = geometryTree(merged);
  merged.dispose();
  if (!tree) return;
  yield;
  for (const { geometry, at } of targets) {
    const position = geometry.getAttribute('position');
    const normal = geometry.getAttribute('normal');
    const values = new Float32Array(position.count);
    const known = new Map<string, number>();
    for (let i = 0; i < position.count; i++) {
      const p = [
        position.getX(i) + at[0],
        position.getY(i) + at[1],
        position.getZ(i) + at[2],
      ] as const;
      const n = [normal.getX(i), normal.getY(i), normal.getZ(i)] as const;
      const key = `${p.map(Math.round).join()}|${n.map((x) => Math.round(x * 4)).join()}`;
      let open = known.get(key);
      if (open === undefined) {
        open = opennessAt(tree, p, n);
        known.set(key, open);
        if (known.size % 16 === 0) yield;
      }
      values[i] = open;
    }
    const attribute = geometry.getAttribute('openness') as BufferAttribute;
    attribute.array.set(values);
    attribute.needsUpdate = true;
  }
}

type Triple = readonly [number, number, number];

function opennessAt(tree: TriangleTree, p: Triple, n: Triple): number {
  const helper: Triple = Math.abs(n[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
  let ax = helper[1] * n[2] - helper[2] * n[1];
  let ay = helper[2] * n[0] - helper[0] * n[2];
  let az = helper[0] * n[1] - helper[1] * n[0];
  const size = Math.sqrt(ax * ax + ay * ay + az * az) || 1;
  ax /= size;
  ay /= size;
  az /= size;
  const bx = n[1] * az - n[2] * ay;
  const by = n[2] * ax - n[0] * az;
  const bz = n[0] * ay - n[1] * ax;
  const from: Triple = [p[0] + LIFT * n[0], p[1] + LIFT * n[1], p[2] + LIFT * n[2]];
  let sum = 0;
  for (const [x, y, z] of DIRECTIONS) {
    const to: Triple = [
      from[0] + REACH * (x * ax + y * bx + z * n[0]),
      from[1] + REACH * (x * ay + y * by + z * n[1]),
      from[2] + REACH * (x * az + y * bz + z * n[2]),
    ];
    const hit = firstCrossed(tree, from, to);
    sum += hit ? hit.at ** 0.7 : 1;
  }
  return sum / DIRECTIONS.length;
}

/** Runs a generator in slices while the page is idle; returns a way to stop it. */
export function inSlices(work: Generator<void, void, void>, done: () => void): () => void {
  const SLICE = 7;
  let timer: ReturnType<typeof setTimeout> | null = null;
  const step = () => {
    const until = performance.now() + SLICE;
    do {
      if (work.next().done) {
        timer = null;
        done();
        return;
      }
    } while (performance.now() < until);
    timer = setTimeout(step, 4);
  };
  timer = setTimeout(step, 0);
  return () => {
    if (timer) clearTimeout(timer);
    work.return();
  };
}
