/** What each front pillar hides from both eyes of the person at the wheel, without and with pods. */
import type { CabinModel, Panel } from '../cabin/model';
import { type PatchMesh, tessellate } from '../cabin/patch';
import type { OptionInput, Side } from '../input';
import type { PlacedSpeaker } from '../result';
import { dot, mirrorY, mix, radians, sub, type Vec3 } from '../vector';
import { type Body, bodyOf } from './body';
import { P_POINTS, seatBackCorrection, travelCorrection } from './eye-points';
import { type Construction, obstructionAngle, type Plan } from './obstruction-angle';
import { groundAt } from './panel-ground';
import { speakerMesh } from './speaker-solid';

/** At most so much of the view may one pillar hide, degrees: UN R125, from memory. */
export const PILLAR_LIMIT_DEG = 6;

/** Lines of sight up and down that the sections are taken at, degrees: UN R125, from memory. */
const UP_DEG = 2;
const DOWN_DEG = -5;

export const PILLAR_VIEW_CAUTION =
  'Worked out on the model’s inner pillar panel after the construction of UN Regulation No. 125; ' +
  'the car’s own pillar, seals and opaque borders hide more. This is not type approval: the ' +
  'vehicle rules where the car is driven decide, and the view has to be tried from the seat.';

export interface PillarView {
  side: Side;
  panel: string;
  /** True for the pillar on the side of the wheel. */
  driver: boolean;
  /** Binocular obstruction without pods, with them, and what they add; degrees. */
  beforeDeg: number | null;
  afterDeg: number | null;
  addedDeg: number | null;
  /** More than {@link PILLAR_LIMIT_DEG} with the pods. */
  overLimit: boolean;
  /** Speakers on this pillar; and those of them whose body is not known, which count as nothing. */
  speakers: string[];
  unknown: string[];
  /** Eyes, and where the two lines of sight touch, with the pods; mm, at section height. */
  lines: { eyes: Record<Side, Vec3>; outer: Vec3; inner: Vec3 } | null;
  /** Why the angles are null. */
  reason?: string;
}

export interface PillarViewSubject {
  cabin: CabinModel;
  option: OptionInput;
  placed: readonly PlacedSpeaker[];
}

/** Fine enough for a bowed pillar's edges. */
const [ACROSS, UP] = [12, 48];

/**
 * Both front pillars, left one first. Sections are taken at the foremost place where sight lines
 * 2° up and 5° down meet the pillar. A pod counts wherever it reaches between those two heights:
 * stricter than the regulation, which looks at the two heights alone (choice of ours), and only
 * with what stands before its panel.
 */
export function pillarViews(subject: PillarViewSubject): PillarView[] {
  return (['left', 'right'] as const).map((side) => viewPast(side, subject));
}

function viewPast(side: Side, { cabin, option, placed }: PillarViewSubject): PillarView {
  const panel = cabin.panels.find(({ id }) => id === `pillar-${side}`);
  const driver = side === cabin.wheelSide;
  const on = option.speakers.filter(({ mount }) => mount?.panel === `pillar-${side}`);
  const view: PillarView = {
    side,
    panel: `pillar-${side}`,
    driver,
    beforeDeg: null,
    afterDeg: null,
    addedDeg: null,
    overLimit: false,
    speakers: on.map(({ id }) => id),
    unknown: on.filter(({ body }) => !body).map(({ id }) => id),
    lines: null,
  };
  if (!panel) return { ...view, reason: `there is no ${side} A-pillar in this cabin` };
  const eyes = headPoints(cabin, driver);
  if (!eyes) return { ...view, reason: 'without a body style it is not known where the eyes are' };
  // Every pillar is looked at as the one on the left.
  const turn = side === 'left' ? (p: Vec3) => p : mirrorY;
  const mesh = tessellate(panel.patch, ACROSS, UP);
  const pillar = { ...mesh, vertices: mesh.vertices.map(turn) };
  const [p, middle] = [turn(eyes.p), turn(eyes.middle)];
  const [high, low] = [
    heightOfSection(pillar, middle, UP_DEG),
    heightOfSection(pillar, middle, DOWN_DEG),
  ];
  if (high === null || low === null)
    return { ...view, reason: 'the pillar does not cross the heights the regulation looks at' };
  const [inner, outer] = [sectionAt(pillar, high), sectionAt(pillar, low)];
  const before = obstructionAngle([p[0], p[1]], outer, inner);
  const pods = on.flatMap((speaker): Plan[] => {
    const place = placed.find((one) => one.speaker === speaker.id);
    if (!place || !speaker.body || !speaker.mount) return [];
    const body = bodyOf({ speaker, placed: place });
    return podPoints(body, panel, speaker.mount, Math.min(low, high), Math.max(low, high), turn);
  });
  const after = obstructionAngle([p[0], p[1]], [...outer, ...pods], [...inner, ...pods]);
  if (!before || !after)
    return { ...view, reason: 'the pillar or a pod stands where the head turns' };
  return {
    ...view,
    beforeDeg: before.angleDeg,
    afterDeg: after.angleDeg,
    addedDeg: after.angleDeg - before.angleDeg,
    overLimit: after.angleDeg > PILLAR_LIMIT_DEG,
    lines: linesOf(after, p[2], high, low, side, turn),
  };
}

function linesOf(
  { eyes, outer, inner }: Construction,
  eyeHeight: number,
  high: number,
  low: number,
  side: Side,
  turn: (p: Vec3) => Vec3,
): PillarView['lines'] {
  const at = ([x, y]: Plan, z: number): Vec3 => turn([x, y, z]);
  const [one, other] = [at(eyes.left, eyeHeight), at(eyes.right, eyeHeight)];
  return {
    eyes: side === 'left' ? { left: one, right: other } : { left: other, right: one },
    outer: at(outer, low),
    inner: at(inner, high),
  };
}

/** P for a pillar and the point between the two, in the car as it is; null without dimensions. */
function headPoints(
  { dimensions: d, wheelSide }: CabinModel,
  driver: boolean,
): { p: Vec3; middle: Vec3 } | null {
  const { seatReach, seatHeight, seatOffset, torsoAngle, seatTravel } = d;
  if ([seatReach, seatHeight, seatOffset, torsoAngle, seatTravel].some((x) => x === undefined))
    return null;
  const lean = seatBackCorrection(torsoAngle as number);
  const x = (seatReach as number) + lean.x + travelCorrection(seatTravel as number);
  const z = (seatHeight as number) + lean.z;
  const at = ([dx, dy, dz]: Vec3): Vec3 => {
    const leftHandDrive: Vec3 = [x + dx, dy - (seatOffset as number), z + dz];
    return wheelSide === 'left' ? leftHandDrive : mirrorY(leftHandDrive);
  };
  return { p: at(driver ? P_POINTS.driver : P_POINTS.passenger), middle: at(P_POINTS.middle) };
}

/** Where the edges of the mesh pass height 0 of `level`, as points. */
function crossings({ vertices, triangles }: PatchMesh, level: (p: Vec3) => number): Vec3[] {
  const points: Vec3[] = [];
  for (const triangle of triangles) {
    for (let i = 0; i < 3; i++) {
      const a = vertices[triangle[i] as number] as Vec3;
      const b = vertices[triangle[(i + 1) % 3] as number] as Vec3;
      const [ha, hb] = [level(a), level(b)];
      if (ha === 0) points.push(a);
      else if (ha * hb < 0) points.push(mix(a, b, ha / (ha - hb)));
    }
  }
  return points;
}

/** Height of the foremost place where sight lines so many degrees up meet the pillar. */
function heightOfSection(pillar: PatchMesh, eye: Vec3, upDeg: number): number | null {
  const rise = Math.tan(radians(upDeg));
  let foremost: Vec3 | null = null;
  for (const p of crossings(pillar, ([x, , z]) => z - eye[2] - (eye[0] - x) * rise))
    if (!foremost || p[0] < foremost[0]) foremost = p;
  return foremost ? foremost[2] : null;
}

const sectionAt = (pillar: PatchMesh, height: number): Plan[] =>
  crossings(pillar, ([, , z]) => z - height).map(([x, y]) => [x, y]);

/** What of a pod stands before its panel between two heights, in plan. */
function podPoints(
  body: Body,
  panel: Panel,
  { u, v }: { u: number; v: number },
  low: number,
  high: number,
  turn: (p: Vec3) => Vec3,
): Plan[] {
  const { point, normal } = groundAt(panel, u, v);
  const { vertices, triangles } = speakerMesh(body);
  return triangles.flatMap((corners) => {
    let left = corners.map((k) => vertices[k] as Vec3);
    for (const height of [
      (p: Vec3) => dot(sub(p, point), normal),
      (p: Vec3) => p[2] - low,
      (p: Vec3) => high - p[2],
    ])
      left = keepAbove(left, height);
    return left.map((p): Plan => {
      const [x, y] = turn(p);
      return [x, y];
    });
  });
}

/** The part of a flat polygon where `height` is 0 or more. */
function keepAbove(polygon: readonly Vec3[], height: (p: Vec3) => number): Vec3[] {
  return polygon.flatMap((a, i) => {
    const b = polygon[(i + 1) % polygon.length] as Vec3;
    const [ha, hb] = [height(a), height(b)];
    const kept: Vec3[] = ha >= 0 ? [a] : [];
    if (ha * hb < 0) kept.push(mix(a, b, ha / (ha - hb)));
    return kept;
  });
}
