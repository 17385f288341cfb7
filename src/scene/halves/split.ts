/** How the drawing area is shared when a second option is drawn beside the one on the board. */

export interface Rect {
  left: number;
  top: number;
  width: number;
  height: number;
}

export type Half = 'board' | 'beside';

export interface Split {
  /** `across`: beside each other; `down`: one above the other; `whole`: nothing beside. */
  way: 'whole' | 'across' | 'down';
  /** Where the option on the board is drawn, CSS pixels from the area's top left corner. */
  board: Rect;
  /** As large as `board` to the pixel, so that one camera serves both; `null` where there is none. */
  beside: Rect | null;
}

/** Height of the strip over each half with the option's name and its buttons, CSS pixels. */
export const HEAD = 44;

/** A cabin seen from behind and above is about this many times as wide as it is high. By eye. */
const CAR_ASPECT = 1.4;

/** Width of the widest car that fits a sheet, CSS pixels. */
const carOn = ({ width, height }: Rect): number => Math.min(width, height * CAR_ASPECT);

/** Shares an area out; two halves are cut the way that leaves the car larger. */
export function splitSheet(width: number, height: number, two: boolean): Split {
  if (!two) return { way: 'whole', board: { left: 0, top: 0, width, height }, beside: null };
  const across = {
    left: 0,
    top: HEAD,
    width: Math.max(1, Math.floor(width / 2)),
    height: Math.max(1, height - HEAD),
  };
  const half = Math.floor(height / 2);
  const down = { left: 0, top: HEAD, width, height: Math.max(1, half - HEAD) };
  return carOn(across) >= carOn(down)
    ? { way: 'across', board: across, beside: { ...across, left: width - across.width } }
    : { way: 'down', board: down, beside: { ...down, top: height - half + HEAD } };
}

/** The half a place lies in, and the place in that half; `null` on a strip over one. */
export function halfAt(
  { board, beside }: Split,
  x: number,
  y: number,
): { half: Half; x: number; y: number } | null {
  const within = (rect: Rect) =>
    x >= rect.left && y >= rect.top && x < rect.left + rect.width && y < rect.top + rect.height;
  if (within(board)) return { half: 'board', x: x - board.left, y: y - board.top };
  if (beside && within(beside)) return { half: 'beside', x: x - beside.left, y: y - beside.top };
  return null;
}
