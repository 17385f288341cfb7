/** The cabin as the engine sees it: plain data, mm, car axes. */
import type { BoxShape, CapsuleShape, MeshShape, RingShape, Role, Shape, Side } from '../input';
import type { Vec3 } from '../vector';

/**
 * A patch: a biquadratic Bézier surface with nine control points, row by row:
 * `control[3 * j + i]` belongs to Bernstein i in u and j in v. A bilinear patch is the special
 * case whose middle points are midpoints, so one surface type serves every panel, and neighbours
 * that share an edge share its three control points exactly: no gap.
 */
export interface Patch {
  control: readonly Vec3[];
  /** +1: the normal into the cabin is ∂P/∂u × ∂P/∂v; −1: its opposite. */
  facing: 1 | -1;
}

export type Material = 'glass' | 'hard-trim' | 'soft-trim' | 'carpet' | 'headliner' | 'metal';

export interface Panel {
  id: string;
  /** In words, e.g. "left A-pillar". */
  name: string;
  patch: Patch;
  mountable: boolean;
  material: Material;
  /** Pressure reflection factor, 0 to 1. */
  reflectivity: number;
  /** Usual depth free behind the panel, mm; `null` where nothing can be behind it (glass). */
  depthBehind: number | null;
  /** Usual airspace behind it, litres. */
  airspaceBehind: number | null;
  /** What is usual for it, of those of the two above that were measured in this car. */
  usual?: Readonly<{ depthBehind?: number | null; airspaceBehind?: number | null }>;
  /** Roles commonly mounted here. */
  roles: readonly Role[];
  /** Part of the cabin's closed skin: derived, or given in the place of one that is, and not lying loose. */
  ofSkin: boolean;
  /** True for panels the plan gave by corners. */
  given: boolean;
}

/** Something drawn: triangles with a material. Used for drawing only. */
export interface Drawn {
  material: Material | 'leather' | 'fabric' | 'rubber' | 'skin' | 'cloth' | 'dark-trim' | 'paint';
  mesh: MeshShape;
}

export interface Obstacle {
  id: string;
  name: string;
  shape: Shape;
  /** How to draw it when its shape alone would look crude. */
  drawn?: readonly Drawn[];
  /** The seat whose own occupant this is part of, and which part. */
  occupant?: { seat: string; part: 'head' | 'torso' | 'legs' | 'arms' };
  /** The seat (id) this belongs to and moves with, when it is seat furniture. */
  seat?: string;
  /** True for obstacles the plan gave. */
  given: boolean;
}

export interface KeepClearZone {
  id: string;
  name: string;
  /** airbag, pedal, sight line, duct, column, glove box, glass travel, … in words. */
  reason: string;
  shape: BoxShape | RingShape | CapsuleShape | MeshShape;
  given: boolean;
}

export interface Seat {
  id: string;
  name: string;
  /** Midpoint between the ears. */
  head: Vec3;
  ears: Record<Side, Vec3>;
  /** Mid-eye point: where the occupant sees from. */
  eye: Vec3;
  facingDeg: number;
  earSpacing: number;
  /** How far the seat can slide, rearward positive, from where it stands now; null when fixed. */
  slideRange: readonly [number, number] | null;
  /** How the occupant sits, for drawing and for what gets in the way; null without a cabin. */
  posture: SeatPosture | null;
}

/** Where the seat stands and how its occupant sits in it. */
export interface SeatPosture {
  /** The hip joint: the seat's reference point where it stands now. */
  hip: Vec3;
  /** Backrest angle rearward of vertical, degrees. */
  torsoDeg: number;
  stature: number;
  /** 1 front, 2 rear; null for a place the template has no seat for. */
  row: 1 | 2 | null;
}

/** A named point an installer can put a tape to. */
export interface ReferencePoint {
  id: string;
  name: string;
  point: Vec3;
}

/** Where the tape goes for one dimension, for a drawing: seen from the side, above or ahead. */
export interface DimensionLine {
  dimension: string;
  view: 'side' | 'plan' | 'front';
  from: Vec3;
  to: Vec3;
}

/** Drawing-only lines: the car's outline round the cabin, in 3D. */
export interface BodyLine {
  id: string;
  points: readonly Vec3[];
  closed: boolean;
}

export interface CabinModel {
  template: string;
  wheelSide: Side;
  /** Every dimension with its value, defaults filled in; mm or degrees. */
  dimensions: Readonly<Record<string, number>>;
  panels: readonly Panel[];
  obstacles: readonly Obstacle[];
  keepClear: readonly KeepClearZone[];
  seats: readonly Seat[];
  references: readonly ReferencePoint[];
  /** Drawn, but in nobody's way: instrument faces, pedals, door handles, seams. */
  trim: readonly Drawn[];
  bodyLines: readonly BodyLine[];
  dimensionLines: readonly DimensionLine[];
}

/** A refusal in one sentence, with the plan path it is about. */
export interface Refusal {
  message: string;
  path: string;
}

export type CabinAnswer = { ok: true; cabin: CabinModel } | { ok: false; error: Refusal };
