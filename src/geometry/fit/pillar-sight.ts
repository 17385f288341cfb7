/** The view past one front pillar, made ready once: its own sections, and what pods add to them. */
import type { CabinModel, Panel } from '../cabin/model';
import { type PatchMesh, tessellate } from '../cabin/patch';
import type { Side } from '../input';
import { dot, mirrorY, mix, radians, sub, type Vec3 } from '../vector';
import type { Body } from './body';
import { P_POINTS, seatBackCorrection, travelCorrection } from './eye-points';
import { type Construction, obstructionAngle, type Plan } from './obstruction-angle';
import { groundAt } from './panel-ground';
import { speakerMesh } from './speaker-solid';

/** Lines of sight up and down that the sections are taken at, degrees: UN R125, from memory. */
const UP_DEG = 2;
const DOWN_DEG = -5;

/** Fine enough for a bowed pillar's edges. */
const [ACROSS, UP] = [12, 48];

export interface PillarSight {
  /** Without pods. */
  bare: Construction;
  /** With pods; `null` where one stands where the head turns. */
  past(pods: readonly Plan[]): Construction | null;
  /** What of a body on this pillar stands in the view: points in plan; none where it does not. */
  podOf(body: Body, spot: { u: number; v: number }): Plan[];
  /** A point of the construction in the car, mm. */
  inCar(point: Plan, height: number): Vec3;
  /** Of the eyes and of the two sections, mm. */
  heights: { eyes: number; high: number; low: number };
  /** P, that the head turns about, and the pillar's own sections at the two heights. */
  head: Plan;
  sections: { inner: readonly Plan[]; outer: readonly Plan[] };
}

export type PillarSightAnswer = { ok: true; sight: PillarSight } | { ok: false; reason: string };

/**
 * Sections are taken at the foremost place where sight lines 2° up and 5° down meet the pillar. A
 * pod counts wherever it reaches between those two heights: stricter than the regulation, which
 * looks at the two heights alone (choice of ours), and only with what stands before its panel.
 */
export function pillarSight(cabin: CabinModel, side: Side): PillarSightAnswer {
  const panel = cabin.panels.find(({ id }) => id === pillarOf(side));
  if (!panel) return { ok: false, reason: `there is no ${side} A-pillar in this cabin` };
  const eyes = headPoints(cabin, side === cabin.wheelSide);
  if (!eyes)
    return { ok: false, reason: 'without a body style it is not known where the eyes are' };
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
    return { ok: false, reason: 'the pillar does not cross the heights the regulation looks at' };
  const [inner, outer] = [sectionAt(pillar, high), sectionAt(pillar, low)];
  const past = (pods: readonly Plan[]) =>
    obstructionAngle([p[0], p[1]], [...outer, ...pods], [...inner, ...pods]);
  const bare = past([]);
  if (!bare) return { ok: false, reason: WHERE_THE_HEAD_TURNS };
  const [least, most] = [Math.min(low, high), Math.max(low, high)];
  return {
    ok: true,
    sight: {
      bare,
      past,
      podOf: (body, spot) =>
        body.flange === 0 || body.low[2] > most || body.high[2] < least
          ? []
          : podPoints(body, panel, spot, least, most, turn),
      inCar: ([x, y], height) => turn([x, y, height]),
      heights: { eyes: p[2], high, low },
      head: [p[0], p[1]],
      sections: { inner, outer },
    },
  };
}

export const pillarOf = (side: Side): string => `pillar-${side}`;

export const WHERE_THE_HEAD_TURNS = 'the pillar or a pod stands where the head turns';

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
