/** Where words stand on the sheet so that they lie on nothing else. */

/**
 * Centred on its place, or beside a mark; a mark of its own has no words. Words of the kinds
 * `along` and `apart` may also stand beside or farther off, where marks crowd.
 */
const MANNER = {
  speaker: 'beside',
  length: 'on',
  seat: 'beside',
  zone: 'on',
  obstacle: 'beside',
  reflection: 'apart',
  place: 'beside',
  octave: 'along',
  fan: 'along',
  legend: 'beside',
  cross: 'mark',
  tip: 'mark',
  bend: 'mark',
  pass: 'mark',
  bounce: 'mark',
  level: 'on',
  spot: 'mark',
  pillar: 'apart',
  into: 'apart',
} as const;

export interface LabelWant {
  id: string;
  /** Style of the label: scene-label--KIND. */
  kind: keyof typeof MANNER;
  text: string;
  x: number;
  y: number;
  /** Off the sheet or behind the eye. */
  hidden: boolean;
  /** Free distance from the anchor, CSS pixels. */
  gap: number;
  /** Other places that would do, on the sheet: along a line, or farther out. */
  also?: readonly { x: number; y: number }[];
  /** What it points away from, on the sheet: it stands on the far side of its places. */
  from?: { x: number; y: number };
  /** Higher is placed first; at 100 and above it is shown whatever it covers. */
  weight: number;
  strong?: boolean;
  /** Beside its places rather than on them: the line it speaks of is to be seen. */
  beside?: boolean;
  /** Of an earlier place, until the new one is worked out. */
  faded?: boolean;
  /** Marks for tests and styles, put on the anchor as data-… */
  data?: Readonly<Record<string, string>>;
}

export interface Box {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

/** Nearer to the edge of the sheet than this nothing stands, CSS pixels. */
const EDGE = 4;

export interface LabelSize {
  width: number;
  height: number;
  /** Which of its places it took last; tried first, so that words do not jump about in a drag. */
  stood: number;
}

/**
 * The first of its places that is free and on the sheet, the one it has first of all. What must be
 * seen and finds none free takes the one that covers least.
 */
export function placeLabel(
  want: LabelWant,
  label: LabelSize,
  taken: readonly Box[],
  size: { width: number; height: number },
): Box | null {
  const { width: w, height: h } = label;
  const { x, y } = want;
  if (want.text === '')
    return { left: x - w / 2, top: y - h / 2, right: x + w / 2, bottom: y + h / 2 };
  const boxes = cornersOf(want, w, h).map(([left, top]) => ({
    left,
    top,
    right: left + w,
    bottom: top + h,
  }));
  const free = (box: Box | undefined) =>
    box !== undefined && onSheet(box, size) && !taken.some((other) => overlaps(box, other));
  if (!free(boxes[label.stood])) label.stood = Math.max(0, boxes.findIndex(free));
  const first = boxes[label.stood];
  if (first && free(first)) return first;
  if (want.weight < 100) return null;
  let best: Box | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const box of boxes) {
    const moved = movedOntoSheet(box, size);
    const covered = taken.reduce((sum, other) => sum + sharedArea(moved, other), 0);
    if (covered >= least) continue;
    least = covered;
    best = moved;
  }
  return best;
}

const onSheet = (box: Box, size: { width: number; height: number }): boolean =>
  box.left >= EDGE &&
  box.top >= EDGE &&
  box.right <= size.width - EDGE &&
  box.bottom <= size.height - EDGE;

function movedOntoSheet(box: Box, size: { width: number; height: number }): Box {
  const [w, h] = [box.right - box.left, box.bottom - box.top];
  const left = Math.max(EDGE, Math.min(box.left, size.width - EDGE - w));
  const top = Math.max(EDGE, Math.min(box.top, size.height - EDGE - h));
  return { left, top, right: left + w, bottom: top + h };
}

const sharedArea = (a: Box, b: Box): number =>
  Math.max(0, Math.min(a.right, b.right) - Math.max(a.left, b.left)) *
  Math.max(0, Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top));

function cornersOf(want: LabelWant, w: number, h: number): Corner[] {
  const { x, y, gap, also = [] } = want;
  const manner = MANNER[want.kind];
  if (want.beside) {
    const places = [want, ...also];
    return [18, 40].flatMap((far) => places.flatMap((at) => around(at.x, at.y, far, w, h)));
  }
  if (manner === 'on') return [want, ...also].flatMap((at) => onLine(at, w, h));
  if (manner === 'along') {
    const places = [want, ...also];
    const { from } = want;
    return [
      ...(from ? places.flatMap((at) => beyond(from, at, gap, w, h)) : []),
      ...places.flatMap((at) => around(at.x, at.y, gap, w, h)),
    ];
  }
  const near = around(x, y, gap, w, h);
  if (manner !== 'apart') return near;
  return [...near, ...[1, 2, 3, 4, 5].flatMap((n) => around(x, y, gap + n * (h + 2), w, h))];
}

type Corner = [left: number, top: number];

/** Centred on a place, or just over or under it. */
const onLine = (at: { x: number; y: number }, w: number, h: number): Corner[] => [
  [at.x - w / 2, at.y - h / 2],
  [at.x - w / 2, at.y - h - 2],
  [at.x - w / 2, at.y + 2],
];

/** Past a place as seen from another, straight on and a line of words to either side. */
function beyond(
  from: { x: number; y: number },
  at: { x: number; y: number },
  gap: number,
  w: number,
  h: number,
): Corner[] {
  const [x, y] = [at.x - from.x, at.y - from.y];
  const run = Math.hypot(x, y) || 1;
  const [dx, dy] = [x / run, y / run];
  const off = (w * Math.abs(dx) + h * Math.abs(dy)) / 2 + gap;
  return [0, -1, 1].map((side): Corner => {
    const [a, b] = [side * (h + 2) * -dy, side * (h + 2) * dx];
    return [at.x + dx * off + a - w / 2, at.y + dy * off + b - h / 2];
  });
}

/** Beside, over, under and at the corners of a mark. */
const around = (x: number, y: number, gap: number, w: number, h: number): Corner[] => [
  [x + gap, y - h / 2],
  [x - gap - w, y - h / 2],
  [x - w / 2, y - gap - h],
  [x - w / 2, y + gap],
  [x + gap * 0.7, y - gap * 0.7 - h],
  [x - gap * 0.7 - w, y - gap * 0.7 - h],
  [x + gap * 0.7, y + gap * 0.7],
  [x - gap * 0.7 - w, y + gap * 0.7],
];

const overlaps = (a: Box, b: Box): boolean =>
  a.left < b.right + 2 && b.left < a.right + 2 && a.top < b.bottom + 1 && b.top < a.bottom + 1;
