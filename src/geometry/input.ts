/**
 * What the engine is given: the plan contract as plain data (mm, degrees, Hz, °C, kPa).
 * The plan document's schema infers types assignable to these.
 */
import type { DriveUnit } from './sound/closed-box';
import type { Vec3 } from './vector';

export type Side = 'left' | 'right';
export type Role =
  | 'tweeter'
  | 'midrange'
  | 'midbass'
  | 'subwoofer'
  | 'wideband'
  | 'rear-fill'
  | 'centre';

export interface Air {
  temperatureC: number;
  relativeHumidityPercent: number;
  pressureKPa: number;
}

export interface BoxShape {
  shape: 'box';
  center: Vec3;
  /** Full lengths along X, Y, Z before turning. */
  size: Vec3;
  /** About X, then Y, then Z: fixed axes, right-handed, degrees. */
  turnDeg?: Vec3;
}
export interface RingShape {
  shape: 'ring';
  center: Vec3;
  axis: Vec3;
  /** Outer diameter minus one thickness: the circle the tube's centre runs on. */
  diameter: number;
  /** The tube's own diameter. */
  thickness: number;
}
export interface CapsuleShape {
  shape: 'capsule';
  from: Vec3;
  to: Vec3;
  radius: number;
}
export interface MeshShape {
  shape: 'mesh';
  vertices: readonly Vec3[];
  triangles: readonly (readonly [number, number, number])[];
}
export type Shape = BoxShape | RingShape | CapsuleShape | MeshShape;

export type ObstacleInput = Shape & { id: string };
export type KeepClearInput = Shape & { id: string; reason: string };

/** A panel given by the plan: a bilinear patch. Corner order: (u,v) = (0,0) (1,0) (1,1) (0,1). */
export interface PanelInput {
  id: string;
  corners: readonly [Vec3, Vec3, Vec3, Vec3];
  reflectivity?: number;
  mountable?: boolean;
}

/** What the installer measured behind one panel; anything left out stays as usual for it. */
export interface PanelMeasure {
  /** Free depth behind the panel. */
  depthBehind?: number;
  /** Airspace behind it, litres. */
  airspaceBehind?: number;
}

export interface CabinInput {
  /** A file in vehicle-templates/, or "none": no derived panels, seats or obstacles. */
  template: string;
  wheelSide: Side;
  dimensions?: Readonly<Record<string, number>>;
  panels?: readonly PanelInput[];
  /** By panel id. A panel the cabin does not have keeps its entry, for when it is back. */
  measured?: Readonly<Record<string, PanelMeasure>>;
}

/**
 * A listening position. With a template, an entry without `head` adjusts the template's seat of
 * that id. An empty list means every seat of the template; a list means exactly those seats.
 */
export interface SeatInput {
  id: string;
  /** Midpoint between the ears. */
  head?: Vec3;
  /** Turn to the right from straight ahead, degrees. */
  facingDeg?: number;
  earSpacing?: number;
  /** Rearward from the template's seat position. */
  slide?: number;
  /** Added to the torso angle, rearward positive. */
  reclineDeg?: number;
  occupantHeight?: number;
}

export interface Mount {
  panel: string;
  u: number;
  v: number;
  /** From the panel along its normal into the cabin. */
  standoff?: number;
}

export type Aim =
  | { kind: 'direction'; direction: Vec3 }
  | { kind: 'point'; point: Vec3 }
  | { kind: 'seat'; seat: string }
  | { kind: 'normal' };

export interface SpeakerBody {
  flange: number;
  cutout: number;
  /** Mounting depth: from the face its flange is mounted by to its back, behind its flange. */
  depth: number;
  /** Sealed airspace it wants behind it, litres. Left out: none is asked for. */
  airspaceLitres?: number;
}

/**
 * The wedge ring a speaker stands on, between its panel and its flange; mm. What is left out follows
 * from the speaker's body: see `ring/usual-ring.ts`.
 */
export interface SpeakerRing {
  /** Outside diameter. */
  outer?: number;
  /** Bore. */
  bore?: number;
  /** Thickness at its thinnest place. */
  leastThickness?: number;
  /** Radius of the outer front edge; 0: sharp. */
  rimRadius?: number;
  /** The flange lies on the ring's front (so where left out), or is let into it. */
  seat?: 'proud' | 'sunk';
  /** How deep it is let in. */
  flangeThickness?: number;
  /** Diameter of the circle the screws stand on, and how many there are. */
  screwCircle?: number;
  screws?: number;
}

/** A response measured off the axis: see `sound/measured-directivity.ts`. */
export interface OffAxisResponse {
  /** 0 to 180. */
  offAxisDeg: number;
  /** Rising, two at least. */
  frequencyHz: readonly number[];
  /** One for each frequency; any reference, as long as all angles share it. */
  levelDb: readonly number[];
}

export interface SpeakerInput {
  id: string;
  role: Role;
  pair?: string;
  side?: Side;
  /** A free point; one of `position` and `mount` is given. */
  position?: Vec3;
  mount?: Mount;
  /** Left out: the panel's normal when mounted, otherwise no axis is known. */
  aim?: Aim;
  /** Effective radiating diameter. */
  diaphragm?: number;
  bandHz?: readonly [number, number];
  body?: SpeakerBody;
  /** Left out: the speaker stands on its panel, or on what the stand-off is made of. */
  ring?: SpeakerRing;
  /** Measured off-axis responses; left out: a piston of the diaphragm's diameter. */
  responses?: readonly OffAxisResponse[];
  /** Poles swapped in the channel. Left out: as is usual for its crossovers. */
  inverted?: boolean;
  /** fs, Qts and Vas from its own sheet, or measured. */
  smallSignal?: DriveUnit;
}

/** A sealed enclosure drawn on a panel, for one or more speakers. */
export interface SealedPocket {
  id: string;
  /** One the cabin does not have keeps the pocket, without a volume. */
  panel: string;
  /** Corners round its outside, (u, v) on the panel: three or more, no edge crossing another. */
  outline: readonly (readonly [number, number])[];
  /** Outside depth, square to the panel. */
  depth: number;
  /** Behind the panel, or standing before it in the cabin. Left out: behind. */
  lies?: 'behind' | 'before';
  /** Thickness on all sides. Left out: 0. */
  wall?: number;
  /** Ids of the speakers let into its front; each speaker has one pocket at most. */
  speakers: readonly string[];
}

export type CrossoverFamily = 'butterworth' | 'linkwitz-riley';

/** Where one pair hands over to another: both halves of the same family, order and frequency. */
export interface CrossoverInput {
  /** Pair behind the low-pass. */
  below: string;
  /** Pair behind the high-pass. */
  above: string;
  family: CrossoverFamily;
  /** 1 to 8, 6.02 dB per octave each; even for Linkwitz-Riley. */
  order: number;
  frequencyHz: number;
}

export interface OptionInput {
  id: string;
  title?: string;
  speakers: readonly SpeakerInput[];
  /** Left out, or a hand-over that is not listed: proposed from the speakers' bands. */
  crossovers?: readonly CrossoverInput[];
  pockets?: readonly SealedPocket[];
}

export interface SeatWeight {
  id: string;
  /** Above 0; twice the weight, half the error. */
  weight: number;
}

export interface AlignmentInput {
  seat?: string;
  sampleRateHz: number;
  /** Delays for `seat` alone (left out: so), or the best compromise over `seats`. */
  by?: 'seat' | 'seats';
  seats?: readonly SeatWeight[];
}

export interface PlanInput {
  air: Air;
  cabin: CabinInput;
  seats?: readonly SeatInput[];
  obstacles?: readonly ObstacleInput[];
  keepClear?: readonly KeepClearInput[];
  options: readonly OptionInput[];
  alignment: AlignmentInput;
}
