/**
 * Words on the drawing: plain HTML over the canvas, moved by transform within the frame, text only
 * ever set as text. A label that would lie on another keeps quiet.
 */

export interface LabelWant {
  id: string;
  /** Style of the label: scene-label--KIND. */
  kind: 'speaker' | 'length' | 'seat' | 'zone' | 'obstacle' | 'cross' | 'tip';
  text: string;
  x: number;
  y: number;
  /** Off the sheet or behind the eye. */
  hidden: boolean;
  /** Free distance from the anchor, CSS pixels. */
  gap: number;
  /** Other places that would do, on the sheet: along a line. */
  also?: readonly { x: number; y: number }[];
  /** Higher is placed first; at 100 and above it is shown whatever it covers. */
  weight: number;
  strong?: boolean;
  /** Marks for tests and styles, put on the anchor as data-… */
  data?: Readonly<Record<string, string>>;
}

interface Label {
  anchor: HTMLElement;
  tag: HTMLElement;
  text: string;
  width: number;
  height: number;
}

interface Box {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

const EDGE = 4;

export interface Labels {
  lay(wants: readonly LabelWant[], size: { width: number; height: number }): void;
  end(): void;
}

export function createLabels(overlay: HTMLElement): Labels {
  const labels = new Map<string, Label>();

  function labelFor(want: LabelWant): Label {
    let label = labels.get(want.id);
    if (!label) {
      const anchor = document.createElement('div');
      const tag = document.createElement('span');
      anchor.className = 'scene-anchor';
      anchor.append(tag);
      overlay.append(anchor);
      label = { anchor, tag, text: '', width: 0, height: 0 };
      labels.set(want.id, label);
    }
    for (const [key, value] of Object.entries(want.data ?? {})) {
      if (label.anchor.dataset[key] !== value) label.anchor.dataset[key] = value;
    }
    const look = `scene-label scene-label--${want.kind}${want.strong ? ' is-strong' : ''}`;
    if (label.tag.className !== look || label.text !== want.text) {
      label.tag.className = look;
      label.tag.textContent = want.text;
      label.text = want.text;
      // Read once per change of text, never per frame.
      label.width = label.tag.offsetWidth;
      label.height = label.tag.offsetHeight;
    }
    return label;
  }

  return {
    lay(wants, size) {
      const gone = new Set(labels.keys());
      const taken: Box[] = [];
      const order = [...wants].sort((a, b) => b.weight - a.weight);
      for (const want of order) {
        gone.delete(want.id);
        const label = labelFor(want);
        const x = Math.round(want.x * 2) / 2;
        const y = Math.round(want.y * 2) / 2;
        label.anchor.style.transform = `translate(${x}px, ${y}px)`;
        const box = want.hidden ? null : place(want, label, taken, size);
        label.tag.style.visibility = box ? 'visible' : 'hidden';
        if (!box) continue;
        taken.push(box);
        label.tag.style.transform = `translate(${box.left - x}px, ${box.top - y}px)`;
      }
      for (const id of gone) {
        labels.get(id)?.anchor.remove();
        labels.delete(id);
      }
    },
    end() {
      for (const { anchor } of labels.values()) anchor.remove();
      labels.clear();
    },
  };
}

/** Beside, above, below the anchor: the first place that is free and on the sheet. */
function place(
  want: LabelWant,
  label: { width: number; height: number },
  taken: readonly Box[],
  size: { width: number; height: number },
): Box | null {
  const { width: w, height: h } = label;
  const { x, y, gap } = want;
  if (want.text === '')
    return { left: x - w / 2, top: y - h / 2, right: x + w / 2, bottom: y + h / 2 };
  const corners =
    want.kind === 'length' || want.kind === 'zone'
      ? [want, ...(want.also ?? [])].flatMap((at) => onLine(at, w, h))
      : around(x, y, gap, w, h);
  for (const [left, top] of corners) {
    const box = { left, top, right: left + w, bottom: top + h };
    const inside =
      left >= EDGE &&
      top >= EDGE &&
      box.right <= size.width - EDGE &&
      box.bottom <= size.height - EDGE;
    if (inside && !taken.some((other) => overlaps(box, other))) return box;
  }
  if (want.weight < 100) return null;
  const [left, top] = corners[0] as [number, number];
  return { left, top, right: left + w, bottom: top + h };
}

type Corner = [left: number, top: number];

/** Centred on a place, or just over or under it. */
const onLine = (at: { x: number; y: number }, w: number, h: number): Corner[] => [
  [at.x - w / 2, at.y - h / 2],
  [at.x - w / 2, at.y - h - 2],
  [at.x - w / 2, at.y + 2],
];

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
