/**
 * A capsule as a body of flat faces. All capsules are one, turned, stretched and scaled: corners,
 * edges and which way those stand out are found once, for a model.
 */
import type { CapsuleShape } from '../../input';
import { along, direction, distance, sub, type Vec3 } from '../../vector';
import { buildTriangleTree } from '../build-triangle-tree';
import type { TriangleTree } from '../triangle-tree';
import { type Body, bodyOf, boundsOf, type Faces, planesOf } from './body';
import { piecesOf } from './pieces';
import { across, closeRings } from './rings';

type Triangle = readonly [number, number, number];

/** Faces round a capsule, and from its side to its tip. */
const ROUND = 24;
const CAP = 6;

/** Shorter ones are balls, whose two middle rings may be one, mm. */
const LONG = 1;

/** The model: from 0 0 0 to 0 0 this, radius 1. */
const MODEL_LENGTH = 8;

interface Model {
  body: Body;
  triangles: readonly Triangle[];
}

let model: Model | null = null;

export function capsuleBody(id: string, { from, to, radius }: CapsuleShape): Body {
  const axis = direction(sub(to, from)) ?? ([0, 0, 1] as const);
  const [u, v] = across(axis);
  if (!(distance(from, to) > LONG && radius > 0)) {
    const { vertices, triangles } = capsuleMesh(from, to, radius, u, v, axis);
    return bodyOf(id, vertices, triangles, false);
  }
  model ??= buildModel();
  const { body, triangles } = model;
  const vertices: Vec3[] = [];
  const corners = new Float64Array(body.corners.length);
  for (let c = 0; c < corners.length; c += 3) {
    const z = body.corners[c + 2] as number;
    const isFar = z > MODEL_LENGTH / 2;
    const p = isFar ? to : from;
    const x = radius * (body.corners[c] as number);
    const y = radius * (body.corners[c + 1] as number);
    const lift = radius * (isFar ? z - MODEL_LENGTH : z);
    const corner: Vec3 = [
      p[0] + x * u[0] + y * v[0] + lift * axis[0],
      p[1] + x * u[1] + y * v[1] + lift * axis[1],
      p[2] + x * u[2] + y * v[2] + lift * axis[2],
    ];
    corners.set(corner, c);
    vertices.push(corner);
  }
  const outward = new Float64Array(body.outward.length);
  for (let o = 0; o < outward.length; o += 3) {
    const x = body.outward[o] as number;
    const y = body.outward[o + 1] as number;
    const z = body.outward[o + 2] as number;
    outward[o] = x * u[0] + y * v[0] + z * axis[0];
    outward[o + 1] = x * u[1] + y * v[1] + z * axis[1];
    outward[o + 2] = x * u[2] + y * v[2] + z * axis[2];
  }
  let tree: TriangleTree | null | undefined;
  let faces: Faces | null = null;
  return {
    id,
    corners,
    edges: body.edges,
    outward,
    tree() {
      if (tree === undefined) tree = buildTriangleTree(vertices, triangles);
      return tree;
    },
    faces() {
      const beside = body.faces()?.beside;
      if (beside) faces ??= { planes: planesOf(vertices, triangles), beside };
      return faces;
    },
    closed: true,
    bounds: boundsOf(vertices),
  };
}

function buildModel(): Model {
  const end: Vec3 = [0, 0, MODEL_LENGTH];
  const { vertices, triangles } = capsuleMesh([0, 0, 0], end, 1, [1, 0, 0], [0, 1, 0], [0, 0, 1]);
  return { body: bodyOf('model', vertices, triangles, false), triangles };
}

function capsuleMesh(from: Vec3, to: Vec3, radius: number, u: Vec3, v: Vec3, axis: Vec3) {
  // A face between two meridians and two circles lies nearer than its corners by both cosines.
  const side = radius / Math.cos(Math.PI / ROUND);
  const ball = side / Math.cos(Math.PI / (4 * CAP));
  const rings: Vec3[][] = [];
  const ring = (center: Vec3, lift: number, r: number) => {
    const points: Vec3[] = [];
    for (let i = 0; i < ROUND; i++) {
      const t = (2 * Math.PI * i) / ROUND;
      const p = along(along(center, u, r * Math.cos(t)), v, r * Math.sin(t));
      points.push(along(p, axis, lift));
    }
    rings.push(points);
  };
  for (let k = CAP - 1; k >= 0; k--) {
    const t = (Math.PI / 2) * (k / CAP);
    ring(from, -ball * Math.sin(t), ball * Math.cos(t));
  }
  for (let k = 0; k < CAP; k++) {
    const t = (Math.PI / 2) * (k / CAP);
    ring(to, ball * Math.sin(t), ball * Math.cos(t));
  }
  const { vertices, triangles } = closeRings(rings, [
    along(from, axis, -ball),
    along(to, axis, ball),
  ]);
  const [piece] = piecesOf(vertices, triangles);
  return piece ?? { vertices, triangles };
}
