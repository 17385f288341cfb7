/** A wedge ring between a panel and a speaker: what it is made from, and what it becomes. */
import type { MeshShape } from '../input';
import type { Vec3 } from '../vector';

export interface RingInput {
  /** Outside diameter, mm. */
  outer: number;
  /** Bore, mm: the speaker's cut-out. */
  bore: number;
  /** Thickness where the ring is thinnest, at its outer edge, mm: the least that may be. */
  leastThickness: number;
  /** Radius of the outer front edge, mm; 0: sharp. */
  rimRadius: number;
  /** Where the speaker's flange lies: let into the ring's front, or on it. */
  seat:
    | { kind: 'proud' }
    /** Diameter of the recess, and its depth: the flange's thickness, mm. */
    | { kind: 'sunk'; recess: number; depth: number };
  /** Screws on this circle, mm; left out: none are told. */
  screws?: { circle: number; count: number };
}

export interface RingPlace {
  /** The speaker's reference point: middle of the ring's front; mm, car axes. */
  position: Vec3;
  /** Unit, out of the speaker. */
  axis: Vec3;
  /** Unit, of the panel at the spot, into the cabin. */
  normal: Vec3;
  /** From the panel to `position` along the normal, mm. */
  standoff: number;
}

/** What to turn or cut it by, mm. */
export interface RingSections {
  /** Along the axis, at the outer edge and at the bore, on the thin and on the thick side. */
  thinOuter: number;
  thinBore: number;
  thickBore: number;
  thickOuter: number;
  /** At the middle. */
  middle: number;
  /** The back is an ellipse on the panel: its two diameters, outside and bore. */
  backOuter: readonly [number, number];
  backBore: readonly [number, number];
  /**
   * Middle of the bore on the panel, as a step from the spot along the panel, mm: where the hole's
   * middle is marked, on the thick side's line, since a tilted bore does not come out at the spot.
   */
  boreShift: number;
}

/** All of a ring but its mesh. */
export interface RingForm {
  /** Between the panel's normal and the aim. */
  wedgeDeg: number;
  /** More than `MOST_WEDGE_DEG`. */
  overLimit: boolean;
  /** Unit, along the panel from the thin to the thick side; `null` for a ring without a wedge. */
  thickSide: Vec3 | null;
  sections: RingSections;
  /** mm³. */
  volume: number;
}

export interface WedgeRing extends RingForm {
  /** Closed; mm, the ring's own axes: Z out of the front, whose middle is the origin, X to thick. */
  mesh: MeshShape;
}

/** `standoffNeeded`: with that much of it, and no other change, there is a ring. */
export interface RingRefusal {
  ok: false;
  message: string;
  standoffNeeded: number | null;
}

export type RingShapeAnswer = { ok: true; ring: RingForm } | RingRefusal;
export type RingAnswer = { ok: true; ring: WedgeRing } | RingRefusal;
