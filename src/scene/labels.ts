/**
 * Words on the drawing: plain HTML over the canvas, moved by transform within the frame, text only
 * ever set as text. A label that would lie on another keeps quiet.
 */
import { type Box, type LabelSize, type LabelWant, placeLabel } from './place-label';

export type { LabelWant };

interface Label extends LabelSize {
  anchor: HTMLElement;
  tag: HTMLElement;
  text: string;
  measured: boolean;
  leader: HTMLElement | null;
}

/** Nearer than this words need no line to their mark, CSS pixels. */
const LONG_WAY = 16;

export interface Labels {
  lay(wants: readonly LabelWant[], size: { width: number; height: number }): void;
  end(): void;
}

export function createLabels(overlay: HTMLElement): Labels {
  const labels = new Map<string, Label>();
  const sizes = new Map<string, { width: number; height: number }>();
  let sheetWidth = 0;

  function labelFor(want: LabelWant): Label {
    let label = labels.get(want.id);
    if (!label) {
      const anchor = document.createElement('div');
      const tag = document.createElement('span');
      anchor.className = 'scene-anchor';
      anchor.append(tag);
      overlay.append(anchor);
      label = {
        anchor,
        tag,
        text: '',
        measured: false,
        leader: null,
        width: 0,
        height: 0,
        stood: 0,
      };
      labels.set(want.id, label);
    }
    for (const [key, value] of Object.entries(want.data ?? {})) {
      if (label.anchor.dataset[key] !== value) label.anchor.dataset[key] = value;
    }
    const marks = `${want.strong ? ' is-strong' : ''}${want.faded ? ' is-faded' : ''}`;
    const look = `scene-label scene-label--${want.kind}${marks}`;
    if (label.tag.className !== look || label.text !== want.text) {
      label.tag.className = look;
      label.tag.textContent = want.text;
      label.text = want.text;
      label.measured = false;
    }
    return label;
  }

  /** Figures are all as wide as each other, so "647 mm" is measured once for "871 mm" as well. */
  function sizeOf(tag: HTMLElement): { width: number; height: number } {
    const key = `${tag.className}|${tag.textContent?.replace(/\d/g, '0')}`;
    let size = sizes.get(key);
    if (!size) {
      size = { width: tag.offsetWidth, height: tag.offsetHeight };
      sizes.set(key, size);
    }
    return size;
  }

  /** A hairline from words that had to stand far off to the mark they speak of. */
  function lead(label: Label, want: LabelWant, box: Box | null): void {
    const far = box && want.kind === 'reflection' ? outOf(box, want) : null;
    const length = far ? Math.hypot(far.x, far.y) : 0;
    if (!far || length < LONG_WAY) {
      if (label.leader) label.leader.hidden = true;
      return;
    }
    if (!label.leader) {
      label.leader = document.createElement('i');
      label.leader.className = 'scene-leader';
      label.anchor.prepend(label.leader);
    }
    label.leader.hidden = false;
    label.leader.style.width = `${length}px`;
    label.leader.style.transform = `rotate(${Math.atan2(far.y, far.x)}rad)`;
  }

  return {
    lay(wants, size) {
      if (size.width !== sheetWidth) {
        // On a narrow sheet long words are broken.
        sheetWidth = size.width;
        sizes.clear();
        for (const label of labels.values()) label.measured = false;
      }
      const gone = new Set(labels.keys());
      const taken: Box[] = [];
      const order = [...wants].sort((a, b) => b.weight - a.weight);
      const named = order.map((want) => [want, labelFor(want)] as const);
      // All words first, then all sizes: reading between writes would lay the page out each time.
      for (const [, label] of named) {
        if (label.measured) continue;
        const { width, height } = sizeOf(label.tag);
        label.width = width;
        label.height = height;
        label.measured = true;
      }
      for (const [want, label] of named) {
        gone.delete(want.id);
        const x = Math.round(want.x * 2) / 2;
        const y = Math.round(want.y * 2) / 2;
        label.anchor.style.transform = `translate(${x}px, ${y}px)`;
        const box = want.hidden ? null : placeLabel(want, label, taken, size);
        label.tag.style.visibility = box ? 'visible' : 'hidden';
        lead(label, want, box);
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

/** From a mark to the nearest place of its words' box. */
function outOf(box: Box, at: { x: number; y: number }): { x: number; y: number } {
  return {
    x: Math.max(box.left, Math.min(at.x, box.right)) - at.x,
    y: Math.max(box.top, Math.min(at.y, box.bottom)) - at.y,
  };
}
