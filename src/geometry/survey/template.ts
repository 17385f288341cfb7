/** What is drawn on paper at true size and laid on a panel: cut-out, ring, flange, screws, aim. */
import type { Panel } from '../cabin/model';
import { bodyOf } from '../fit/body';
import type { Point2 } from '../fit/outline';
import { groundAt, liftOf } from '../fit/panel-ground';
import { depthBehindPanel } from '../fit/panel-problems';
import type { SpeakerBody, SpeakerInput } from '../input';
import type { PlacedSpeaker } from '../result';
import { formOfSpeaker, inputOfSpeaker, placeOfSpeaker } from '../ring/speaker-ring';
import { usualRing } from '../ring/usual-ring';
import { ringFrame, screwPlaces } from '../ring/wedge-ring';
import { add, along, clamp, degrees, direction, dot, scale, sub, type Vec3 } from '../vector';
import type { TapeReading } from './mark-out';
import { type PanelFrame, panelFrame } from './panel-frame';

export interface Ellipse {
  centre: Point2;
  /** Half axes, the longer first, mm. */
  half: readonly [number, number];
  /** Of the longer one, from x toward y, degrees. */
  turnDeg: number;
}

/**
 * All in one plane, mm, x right and y up as seen from the cabin. `panel`: the panel's tangent plane at
 * the spot, which is the origin. `face`: square to the axis through the speaker's front, for what
 * stands wholly before its panel on no ring, as in a pod; the origin is the front's middle.
 */
export interface MarkTemplate {
  plane: 'panel' | 'face';
  frame: PanelFrame;
  /** Where the speaker's axis leaves the panel: the middle of all that is round. */
  middle: Point2;
  /** The hole; `null` where the body stands wholly before the panel on a ring. */
  cutout: Ellipse | null;
  /** The flange's edge, moved onto the panel along the axis. */
  flange: Ellipse;
  /** What the mounting ring covers; `null` without one. */
  ring: Ellipse | null;
  screwCircle: Ellipse;
  /** Screws of the ring, moved onto the panel along the axis; none where only the usual circle is known. */
  screws: readonly Point2[];
  /** Which way the axis leans over the panel, and how far from its normal; `null`: it does not. */
  lean: { way: Point2; deg: number } | null;
  /** Which way each tape's reference point lies, along the panel. */
  rays: readonly { reference: string; way: Point2 }[];
  /** The panel leaves the flat paper by up to this within what is drawn, mm. */
  lift: number;
  /** Bounds of what is drawn round the spot. */
  low: Point2;
  high: Point2;
}

/** Nearer than this to the normal an axis does not lean, degrees: less than is marked. */
const NO_LEAN_DEG = 0.05;

/** @returns `null` without a panel, a body or an aim out of the panel */
export function markTemplate(
  panel: Panel | null,
  speaker: SpeakerInput,
  placed: PlacedSpeaker,
  tapes: readonly TapeReading[],
): MarkTemplate | null {
  const place = placeOfSpeaker(speaker, placed);
  const { body, mount } = speaker;
  if (!panel || !place || !body || !mount) return null;
  const { axis, normal, position, standoff } = place;
  const cosine = clamp(dot(axis, normal), -1, 1);
  if (!(cosine > 0.1)) return null;
  const ground = groundAt(panel, mount.u, mount.v);
  const behind = depthBehindPanel(bodyOf({ speaker, placed }), ground, standoff);
  const made = formOfSpeaker(speaker, placed);
  const input = made?.ok ? inputOfSpeaker(speaker) : null;
  if (behind <= 0 && !input) return faceTemplate(axis, body);
  const frame = panelFrame(normal);
  const spot = along(position, normal, -standoff);
  const flat = (p: Vec3): Point2 => {
    const from = sub(p, spot);
    return [dot(from, frame.right), dot(from, frame.up)];
  };
  /** Along the axis onto the panel. */
  const down = (p: Vec3): Point2 => flat(along(p, axis, -dot(sub(p, spot), normal) / cosine));
  const leanDeg = degrees(Math.acos(cosine));
  const leaning = direction(sub(axis, scale(normal, cosine)));
  const lean =
    leaning && leanDeg > NO_LEAN_DEG
      ? { way: [dot(leaning, frame.right), dot(leaning, frame.up)] as const, deg: leanDeg }
      : null;
  const middle = down(position);
  const turnDeg = lean ? degrees(Math.atan2(lean.way[1], lean.way[0])) : 0;
  const round = (diameter: number): Ellipse => ({
    centre: middle,
    half: [diameter / 2 / (lean ? cosine : 1), diameter / 2],
    turnDeg,
  });

  const usual = input ?? usualRing(body, {});
  const { x, y } = ringFrame(place);
  const screws = input
    ? screwPlaces(input).map(([a, b]) => down(add(position, add(scale(x, a), scale(y, b)))))
    : [];
  const ring = input ? round(input.outer) : null;
  const flange = round(body.flange);
  const widest = ring ?? flange;
  const [reachX, reachY] = reachOf(widest);
  return {
    plane: 'panel',
    frame,
    middle,
    cutout: behind > 0 ? round(input ? input.bore : body.cutout) : null,
    flange,
    ring,
    screwCircle: round(usual.screws?.circle ?? body.cutout),
    screws,
    lean,
    rays: tapes.map(({ reference }) => ({
      reference: reference.id,
      way: unit(flat(reference.point)),
    })),
    lift: liftOf(ground.bend, 0, widest.half[0]),
    low: [Math.min(0, middle[0] - reachX), Math.min(0, middle[1] - reachY)],
    high: [Math.max(0, middle[0] + reachX), Math.max(0, middle[1] + reachY)],
  };
}

/** Circles as in the speaker's own drawing. */
function faceTemplate(axis: Vec3, body: SpeakerBody): MarkTemplate {
  const round = (diameter: number): Ellipse => ({
    centre: [0, 0],
    half: [diameter / 2, diameter / 2],
    turnDeg: 0,
  });
  const reach = body.flange / 2;
  return {
    plane: 'face',
    frame: panelFrame(axis),
    middle: [0, 0],
    cutout: round(body.cutout),
    flange: round(body.flange),
    ring: null,
    screwCircle: round(usualRing(body, {}).screws?.circle ?? body.cutout),
    screws: [],
    lean: null,
    rays: [],
    lift: 0,
    low: [-reach, -reach],
    high: [reach, reach],
  };
}

/** Half width and half height of an ellipse. */
function reachOf({ half: [long, short], turnDeg }: Ellipse): Point2 {
  const turn = (turnDeg * Math.PI) / 180;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return [
    Math.sqrt((long * c) ** 2 + (short * s) ** 2),
    Math.sqrt((long * s) ** 2 + (short * c) ** 2),
  ];
}

function unit([x, y]: Point2): Point2 {
  const size = Math.sqrt(x * x + y * y);
  return size > 0 ? [x / size, y / size] : [0, 1];
}
