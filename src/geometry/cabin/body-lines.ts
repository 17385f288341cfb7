/**
 * The car round the cabin, as a draughtsman would outline it: for drawing only. Roof and screen
 * follow the cabin's dimensions; bonnet, tail and wheels come from the template. All proportions
 * here are typical, from memory.
 */
import type { Vec3 } from '../vector';
import type { Dimensions } from './dimensions';
import type { BodyLine } from './model';
import { pointOnPatch } from './patch';
import { layOut } from './shell/build-shell';
import type { TemplateData } from './templates';

type Point = readonly [x: number, z: number];

/** Skin and glass outside the trim. */
const ROOF_SKIN = 42;
const GLASS_SKIN = 12;
/** Ground clearance under sills and bumpers. */
const CLEARANCE = 185;
/** Wheel arch outside the tyre; the rim inside it, as a share. */
const ARCH_GAP = 38;
const RIM = 0.66;
const TYRE_WIDTH_INSET = 25;
const CIRCLE_POINTS = 48;

/** Outline of the whole car; both sides and the centreline. Empty while dimensions disagree. */
export function bodyLines(d: Dimensions, template: TemplateData): BodyLine[] {
  const { body } = template;
  const layout = layOut(d, { rows: template.rows, thirdSideGlass: body.thirdSideGlass });
  if (layout.conflicts.length > 0) return [];
  const { front, rear, roof } = layout;
  const half = body.width / 2;
  const rearAxleX = body.frontAxleX + body.wheelbase;
  const lowZ = body.groundZ + CLEARANCE;
  const lines: BodyLine[] = [];
  const put = (id: string, points: readonly Vec3[], closed = false) =>
    lines.push({ id, points, closed });
  const both = (id: string, points: readonly Vec3[], closed = false) => {
    put(
      `${id}-left`,
      points.map(([x, y, z]) => [x, -y, z] as const),
      closed,
    );
    put(`${id}-right`, points, closed);
  };

  // Centreline: nose, bonnet, screen, roof, rear glass, tail.
  const roofLine = [roof.roof, roof.rearRoof].flatMap((net, part) =>
    Array.from({ length: 13 }, (_, k): Point => {
      const p = pointOnPatch({ control: net, facing: 1 }, 0.5, k / 12);
      const lift =
        part === 0 ? GLASS_SKIN + (ROOF_SKIN - GLASS_SKIN) * Math.min(1, k / 5) : ROOF_SKIN;
      return [p[0], p[2] + lift];
    }).slice(part),
  );
  const bonnet = bonnetLine(body.noseX, body.noseHeight, lowZ, front.base);
  const glassFoot: Point = [d.tailX + GLASS_SKIN, d.shelfHeight + GLASS_SKIN];
  const tail = rounded(
    body.style === 'van' ? [roofEnd(roofLine), ...body.tail] : [glassFoot, ...body.tail],
    55,
  );
  const screenFoot: Point = [front.base[0] - GLASS_SKIN, front.base[2] + GLASS_SKIN];
  const profile = [...bonnet, screenFoot, ...roofLine, ...tail];
  put(
    'profile',
    profile.map(([x, z]) => [x, 0, z] as const),
  );

  // Side: lower edge with the wheel arches, shoulder line, roof rail.
  const arch = body.tyreDiameter / 2 + ARCH_GAP;
  const axleZ = body.groundZ + body.tyreDiameter / 2;
  const last = body.tail[body.tail.length - 1] as Point;
  const tailX = Math.max(...body.tail.map((p) => p[0]));
  const lower: Point[] = [
    [body.noseX + 45, lowZ + 20],
    ...archLine(body.frontAxleX, axleZ, arch, lowZ),
    ...archLine(rearAxleX, axleZ, arch, lowZ),
    [last[0], last[1]],
  ];
  both(
    'lower-edge',
    lower.map(([x, z]) => [x, endTaper(x, body.noseX, tailX) * half, z] as const),
  );
  const shoulderTail = shoulderEnd(body.tail, rear.tail);
  const shoulder: Point[] = [
    [body.noseX + 70, body.noseHeight - 45],
    [body.frontAxleX, 0.55 * body.noseHeight + 0.45 * front.baseCorner[2] - 45],
    [front.pillarFoot[0], front.pillarFoot[2] + 6],
    [rear.bFront[0], rear.bFront[2] + 6],
    ...shoulderTail,
  ];
  both(
    'shoulder',
    rounded(shoulder, 120).map(
      ([x, z]) => [x, endTaper(x, body.noseX, tailX) * half * 0.985, z] as const,
    ),
  );
  for (const [id, x] of [
    ['front', body.frontAxleX],
    ['rear', rearAxleX],
  ] as const) {
    both(`tyre-${id}`, circle(x, half - TYRE_WIDTH_INSET, axleZ, body.tyreDiameter / 2), true);
    both(
      `rim-${id}`,
      circle(x, half - TYRE_WIDTH_INSET, axleZ, (RIM * body.tyreDiameter) / 2),
      true,
    );
  }

  // Across the car: nose and tail in plan, bonnet's sides, and a pickup's bed.
  const noseEnd: Vec3 = [body.noseX + 170, 0.8 * half, body.noseHeight];
  put('nose', bowed(noseEnd, body.noseX, body.noseHeight));
  put('nose-low', bowed([body.noseX + 150, 0.84 * half, lowZ + 20], body.noseX + 40, lowZ + 20));
  both('bonnet-edge', [
    noseEnd,
    [body.frontAxleX, 0.84 * half, body.noseHeight + 0.72 * (front.base[2] - body.noseHeight)],
    [front.baseCorner[0] - 30, front.baseCorner[1] + 20, front.baseCorner[2]],
  ]);
  const tailPoint = body.tail.find((p) => p[0] > tailX - 60) ?? last;
  put('tail', bowed([tailPoint[0] - 110, 0.84 * half, tailPoint[1]], tailPoint[0], tailPoint[1]));
  put('tail-low', bowed([last[0] - 110, 0.84 * half, last[1]], last[0], last[1]));
  const [sill, edge] = [front.belt(rear.bFront[0]), roof.sideB];
  const halfSection: Vec3[] = [
    [edge[0], 0.9 * half, lowZ],
    [edge[0], half, sill[2] * 0.45],
    [edge[0], 0.975 * half, sill[2] + 6],
    [edge[0], edge[1] + ROOF_SKIN, edge[2] + 8],
    [edge[0], 0.62 * edge[1], edge[2] + ROOF_SKIN + 0.62 * d.roofCrown],
    [edge[0], 0, edge[2] + ROOF_SKIN + d.roofCrown],
  ];
  both('section', halfSection);
  if (body.style === 'van') both('load-box', boxLine(body.tail, half));
  if (body.style === 'pickup') both('bed', bedLine(body.tail, half));
  return lines;
}

const roofEnd = (line: readonly Point[]): Point => line[line.length - 1] as Point;

function bonnetLine(noseX: number, noseZ: number, lowZ: number, base: Vec3): Point[] {
  const mid = lowZ + 0.62 * (noseZ - lowZ);
  const corner: Point[] = [
    [noseX + 40, lowZ + 20],
    [noseX, mid - 60],
    [noseX + 15, mid + 40],
    [noseX + 75, noseZ],
    [noseX + 0.42 * (base[0] - noseX), noseZ + 0.68 * (base[2] - noseZ)],
    [base[0] - 75, base[2] + 4],
  ];
  return rounded(corner, 110);
}

/** A polyline with its corners rounded: each cut by at most `reach` along its arms. */
function rounded(points: readonly Point[], reach: number): Point[] {
  const made: Point[] = [points[0] as Point];
  for (let i = 1; i < points.length - 1; i++) {
    const [a, b, c] = [points[i - 1] as Point, points[i] as Point, points[i + 1] as Point];
    const towards = (p: Point): Point => {
      const l = Math.sqrt((p[0] - b[0]) ** 2 + (p[1] - b[1]) ** 2) || 1;
      const k = Math.min(reach, 0.48 * l) / l;
      return [b[0] + k * (p[0] - b[0]), b[1] + k * (p[1] - b[1])];
    };
    const [p, q] = [towards(a), towards(c)];
    for (let s = 0; s <= 4; s++) {
      const t = s / 4;
      const w = [(1 - t) * (1 - t), 2 * t * (1 - t), t * t] as const;
      made.push([w[0] * p[0] + w[1] * b[0] + w[2] * q[0], w[0] * p[1] + w[1] * b[1] + w[2] * q[1]]);
    }
  }
  made.push(points[points.length - 1] as Point);
  return made;
}

function archLine(x: number, z: number, radius: number, low: number): Point[] {
  const start = Math.asin(Math.max(-0.95, Math.min(0.95, (low - z) / radius)));
  return Array.from({ length: 17 }, (_, k) => {
    const a = Math.PI - start - ((Math.PI - 2 * start) * k) / 16;
    return [x + radius * Math.cos(a), z + radius * Math.sin(a)] as const;
  });
}

const circle = (x: number, y: number, z: number, radius: number): Vec3[] =>
  Array.from({ length: CIRCLE_POINTS }, (_, k) => {
    const a = (2 * Math.PI * k) / CIRCLE_POINTS;
    return [x + radius * Math.cos(a), y, z + radius * Math.sin(a)] as const;
  });

/** Half width against the body's, narrowing over the last half metre at either end. */
function endTaper(x: number, noseX: number, tailX: number): number {
  const t = Math.min(1, Math.min(x - noseX, tailX - x) / 520);
  return 1 - 0.16 * (1 - Math.max(0, t)) ** 2;
}

/** A line across the car from one side to the other, bowed to `x` in the middle. */
const bowed = (end: Vec3, x: number, z: number): Vec3[] =>
  Array.from({ length: 13 }, (_, k) => {
    const s = k / 6 - 1;
    return [x + (end[0] - x) * s * s, s * end[1], z] as const;
  });

/** Where the shoulder line runs out at the tail: below the glass, at the lamps' height. */
function shoulderEnd(tail: readonly Point[], glassFoot: Vec3): Point[] {
  const high = tail.filter((p) => p[1] < glassFoot[2] + 30 && p[1] > glassFoot[2] * 0.72);
  const end = high[high.length - 1] ?? (tail[0] as Point);
  return [
    [Math.min(glassFoot[0], end[0] - 60), glassFoot[2] - 12],
    [end[0] - 20, end[1]],
  ];
}

function bedLine(tail: readonly Point[], half: number): Vec3[] {
  const [a, b] = [tail[1] as Point, tail[2] as Point];
  const y = 0.86 * half;
  return [
    [a[0] + 40, 0, a[1]],
    [a[0] + 40, y, a[1]],
    [b[0] - 20, y, b[1]],
    [b[0] - 20, 0, b[1]],
  ];
}

/** The upper edge of a van's load box, and its rear corner down to the bumper. */
function boxLine(tail: readonly Point[], half: number): Vec3[] {
  const [a, b] = [tail[0] as Point, tail[1] as Point];
  const [corner, low] = [tail[3] as Point, tail[tail.length - 1] as Point];
  return [
    [a[0], 0.84 * half, a[1] - 30],
    [b[0], 0.84 * half, b[1] - 30],
    [corner[0] - 20, 0.93 * half, corner[1]],
    [low[0] - 20, 0.93 * half, low[1]],
  ];
}
