/** Line segments as one instanced quad each. */
import {
  BufferAttribute,
  DynamicDrawUsage,
  InstancedBufferAttribute,
  InstancedBufferGeometry,
  Sphere,
  Vector3,
} from 'three';
import type { Vec3 } from '../../geometry';
import { type Tone, toneNumber } from '../shading/tones';

export interface Stroke {
  start: Vec3;
  end: Vec3;
  /** Width in CSS pixels. */
  width: number;
  tone: Tone;
  /** Length of one dash in CSS pixels; 0 or left out: solid. */
  dash?: number;
  /** A dot between the dashes, as drawing practice has it for lines of another kind. */
  dotted?: boolean;
  /** Ends where it ends, so that the pieces of a bent line do not lie on each other. */
  blunt?: boolean;
  /** 0 to 1. */
  strength?: number;
  /** Normals of the one or two panels this edge belongs to: seen from behind it turns faint. */
  faces?: readonly Vec3[];
}

/** x: 0 at the start, 1 at the end; y: −1 and 1 across. */
const QUAD = new Float32Array([0, -1, 0, 1, -1, 0, 1, 1, 0, 0, 1, 0]);
const QUAD_INDEX = [0, 1, 2, 0, 2, 3];
const NONE: Vec3 = [0, 0, 0];

const ATTRIBUTES = [
  ['start', 3],
  ['end', 3],
  ['faceA', 3],
  ['faceB', 3],
  ['pen', 4],
] as const;

/** Strokes in car axes; room for `capacity` of them so that {@link setStrokes} can refill. */
export function inkGeometry(
  strokes: readonly Stroke[],
  capacity = strokes.length,
): InstancedBufferGeometry {
  const geometry = new InstancedBufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(QUAD, 3));
  geometry.setIndex(QUAD_INDEX);
  for (const [name, size] of ATTRIBUTES) {
    const attribute = new InstancedBufferAttribute(new Float32Array(capacity * size), size);
    attribute.setUsage(DynamicDrawUsage);
    geometry.setAttribute(name, attribute);
  }
  // Lines are few and never culled; a bound keeps three from reading the quad as one.
  geometry.boundingSphere = new Sphere(new Vector3(), Number.POSITIVE_INFINITY);
  setStrokes(geometry, strokes);
  return geometry;
}

// Number by number: the array's own `set` took five times as long for three of them.
function put(array: Float32Array, at: number, p: Vec3): void {
  array[at] = p[0];
  array[at + 1] = p[1];
  array[at + 2] = p[2];
}

/** Refills a geometry made with enough room; what does not fit is left out. */
export function setStrokes(geometry: InstancedBufferGeometry, strokes: readonly Stroke[]): void {
  const array = (name: string) => (geometry.getAttribute(name) as InstancedBufferAttribute).array;
  const [start, end, faceA, faceB, pen] = ATTRIBUTES.map(([name]) => array(name)) as [
    Float32Array,
    Float32Array,
    Float32Array,
    Float32Array,
    Float32Array,
  ];
  const count = Math.min(strokes.length, pen.length / 4);
  for (let i = 0; i < count; i++) {
    const stroke = strokes[i] as Stroke;
    put(start, 3 * i, stroke.start);
    put(end, 3 * i, stroke.end);
    put(faceA, 3 * i, stroke.faces?.[0] ?? NONE);
    put(faceB, 3 * i, stroke.faces?.[1] ?? NONE);
    // The sign of a width or dash carries the yes or no that goes with it.
    pen[4 * i] = stroke.blunt ? -stroke.width : stroke.width;
    pen[4 * i + 1] = toneNumber(stroke.tone);
    pen[4 * i + 2] = (stroke.dotted ? -1 : 1) * (stroke.dash ?? 0);
    pen[4 * i + 3] = stroke.strength ?? 1;
  }
  geometry.instanceCount = count;
  for (const [name] of ATTRIBUTES) geometry.getAttribute(name).needsUpdate = true;
}

/** A line through points as strokes. */
export function polyline(
  points: readonly Vec3[],
  closed: boolean,
  pen: Omit<Stroke, 'start' | 'end'>,
): Stroke[] {
  const strokes: Stroke[] = [];
  const { width, tone, dash, dotted, blunt, strength, faces } = pen;
  const last = closed ? points.length : points.length - 1;
  for (let i = 0; i < last; i++) {
    const start = points[i] as Vec3;
    const end = points[i + 1] ?? (points[0] as Vec3);
    // Field by field: spreading the pen took ten times as long.
    strokes.push({ start, end, width, tone, dash, dotted, blunt, strength, faces });
  }
  return strokes;
}
