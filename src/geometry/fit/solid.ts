/** Solids made ready for the question whether a body touches them: closed triangles in a tree. */
import { across, loft, ring, torus } from '../cabin/furniture/solid';
import type { BoxShape, CapsuleShape, MeshShape, RingShape, Shape } from '../input';
import { buildTriangleTree } from '../paths/build-triangle-tree';
import { boxAxes } from '../paths/segment-hits';
import { type TriangleTree, visitCrossed } from '../paths/triangle-tree';
import { add, along, direction, scale, sub, type Vec3 } from '../vector';

export interface Solid {
  tree: TriangleTree;
  /** True where the mesh has an inside. */
  closed: boolean;
}

/** Flat faces stray this far from a round solid, half inside and half outside, mm. */
const ROUNDNESS = 0.1;

/** Sides of a circle so that it strays no farther than that; even, so that it mirrors. */
const sidesOf = (radius: number): number =>
  Math.max(12, 2 * Math.ceil(Math.PI / Math.acos(Math.max(0, 1 - ROUNDNESS / radius)) / 2));

/** A polygon of this many sides with the circle's mean radius is so much larger. */
const evenOut = (sides: number): number => 2 / (1 + Math.cos(Math.PI / sides));

function boxMesh(box: BoxShape): MeshShape {
  const [a, b, c] = boxAxes(box);
  const half = scale(box.size, 0.5);
  const corner = (i: number, j: number, k: number): Vec3 =>
    along(along(along(box.center, a, i * half[0]), b, j * half[1]), c, k * half[2]);
  const end = (k: number) => [
    corner(-1, -1, k),
    corner(1, -1, k),
    corner(1, 1, k),
    corner(-1, 1, k),
  ];
  return loft([end(-1), end(1)]);
}

function capsuleMesh({ from, to, radius }: CapsuleShape): MeshShape {
  const axis = direction(sub(to, from)) ?? ([0, 0, 1] as Vec3);
  const [a, b] = across(axis);
  const sides = sidesOf(radius);
  const r = radius * evenOut(sides);
  const rings: Vec3[][] = [];
  const steps = Math.ceil(sides / 4);
  const put = (centre: Vec3, turn: number) => {
    const reach = Math.max(1e-3, Math.cos(turn)) * r;
    const middle = along(centre, axis, Math.sin(turn) * radius);
    rings.push(ring(middle, scale(a, reach), scale(b, reach), sides));
  };
  for (let i = -steps; i <= 0; i++) put(from, (i * Math.PI) / 2 / steps);
  for (let i = 0; i <= steps; i++) put(to, (i * Math.PI) / 2 / steps);
  return loft(rings);
}

function ringMesh({ center, axis, diameter, thickness }: RingShape): MeshShape {
  const [tube, radius] = [thickness / 2, diameter / 2];
  const [section, around] = [sidesOf(tube), sidesOf(radius + tube)];
  return torus(center, axis, radius * evenOut(around), tube * evenOut(section), around, section);
}

/** The solid as triangles; round ones within {@link ROUNDNESS}. */
export function meshOfShape(shape: Shape): MeshShape {
  switch (shape.shape) {
    case 'box':
      return boxMesh(shape);
    case 'capsule':
      return capsuleMesh(shape);
    case 'ring':
      return ringMesh(shape);
    case 'mesh':
      return shape;
  }
}

/** True when every edge is gone along as often one way as the other: the mesh has an inside. */
export function isClosed({ vertices, triangles }: MeshShape): boolean {
  const open = new Map<number, number>();
  const go = (i: number, j: number) => {
    const key = i < j ? i * vertices.length + j : j * vertices.length + i;
    open.set(key, (open.get(key) ?? 0) + (i < j ? 1 : -1));
  };
  for (const [a, b, c] of triangles) {
    go(a, b);
    go(b, c);
    go(c, a);
  }
  if (triangles.length === 0) return false;
  for (const n of open.values()) if (n !== 0) return false;
  return true;
}

const solids = new WeakMap<Shape, Solid | null>();

/** Made once for each shape; `null` where there is nothing to touch. */
export function solidOf(shape: Shape): Solid | null {
  let solid = solids.get(shape);
  if (solid === undefined) {
    const mesh = meshOfShape(shape);
    const tree = buildTriangleTree(mesh.vertices, mesh.triangles);
    solid = tree && { tree, closed: shape.shape !== 'mesh' || isClosed(mesh) };
    solids.set(shape, solid);
  }
  return solid;
}

/** A direction along no axis and no likely edge, so that the ray seldom grazes one. */
const RAY: Vec3 = [0.3391, 0.5407, 0.7698];

/**
 * True inside a closed mesh: the ray out of it leaves more often than it enters. Counting both ways
 * lets bodies overlap that were merged into one mesh.
 */
export function isInside({ tree, closed }: Solid, point: Vec3): boolean {
  if (!closed) return false;
  const { bounds } = tree;
  let reach = 1;
  for (let k = 0; k < 3; k++) {
    const [low, high] = [bounds[k] as number, bounds[k + 3] as number];
    if ((point[k] as number) < low || (point[k] as number) > high) return false;
    reach += high - low;
  }
  let turns = 0;
  visitCrossed(tree, point, add(point, scale(RAY, reach)), 0, 1, (_, __, emerging) => {
    turns += emerging ? 1 : -1;
    return false;
  });
  return turns !== 0;
}
