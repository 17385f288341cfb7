import { type FlatPanel, flatPanel, type Panel, type Vec3 } from '../../../geometry';

const flats = new WeakMap<Panel, FlatPanel>();

/** Laid flat once for each panel: it stands still while a corner moves. */
export function flatOf(panel: Panel): FlatPanel {
  let flat = flats.get(panel);
  if (!flat) {
    flat = flatPanel(panel);
    flats.set(panel, flat);
  }
  return flat;
}

/** Paper round the panel for the words at its edges, pixels. */
export const MARGIN = { side: 14, top: 14, bottom: 38 } as const;

/** A drawing is no higher than this, pixels, words left out. */
const HIGHEST = 250;

/** Pixels to a millimetre, so that all panels fit their width: drawn side by side to one scale. */
export function commonScale(flats: readonly FlatPanel[], width: number): number {
  return Math.min(
    ...flats.map(({ size: [wide, high] }) =>
      Math.min((width - 2 * MARGIN.side) / Math.max(wide, 1), HIGHEST / Math.max(high, 1)),
    ),
  );
}

const AXIS_WORDS = [
  ['front', 'rear'],
  ['left', 'right'],
  ['down', 'up'],
] as const;

/** Where in the car that end of a drawing is: "front", "rear", "left", "right", "up", "down". */
export function wordFor(way: Vec3): string {
  const [x, y, z] = way.map(Math.abs) as [number, number, number];
  const axis = x >= y && x >= z ? 0 : y >= z ? 1 : 2;
  return AXIS_WORDS[axis][way[axis] > 0 ? 1 : 0];
}

/** A round length for a scale bar of about `pixels`: mm for millimetres, else whole inches. */
export function barLength(scale: number, unit: 'mm' | 'in', pixels = 80): number {
  const lengths = unit === 'mm' ? [20, 50, 100, 200, 500] : [1, 2, 4, 8, 16].map((n) => n * 25.4);
  return lengths.findLast((mm) => mm * scale <= pixels) ?? (lengths[0] as number);
}
