import { type FanRay, onRing } from './fan-layout';

export interface FanLabel {
  octaveHz: number;
  text: string;
  x: number;
  y: number;
  anchor: 'start' | 'middle' | 'end';
}

/** A letter of the small type, on the wide side, and how high it stands, px. */
const LETTER = 7.5;
const HIGH = 10;
/** From a mark's middle to its label. */
const OFF = 8;

/** 125, 4k: an octave's label on the drawing. */
export const octaveLabel = (hz: number): string => (hz >= 1000 ? `${hz / 1000}k` : String(hz));

/**
 * The octaves' labels, each beside its mark where nothing stands yet: on the side away from the
 * mark without delays and gains, else on the other, above or below. One that finds no room is left
 * out; the table beside the drawing has it.
 */
export function fanLabels(rays: readonly FanRay[]): FanLabel[] {
  const taken: Box[] = rays.flatMap(({ onDeg, offDeg, radius }) =>
    [onDeg, offDeg].flatMap((deg) => (deg === null ? [] : [around(onRing(deg, radius))])),
  );
  // The outer ones first: they have the most room, and leave the inner ones theirs.
  return [...rays].reverse().flatMap((ray): FanLabel[] => {
    const { onDeg, offDeg, radius, octaveHz } = ray;
    if (onDeg === null) return [];
    const at = onRing(onDeg, radius);
    const text = octaveLabel(octaveHz);
    const shift = onDeg - (offDeg ?? onDeg) || onDeg;
    for (const place of places(shift >= 0)) {
      const label: FanLabel = {
        octaveHz,
        text,
        x: at.x + place.dx,
        y: at.y + place.dy,
        anchor: place.anchor,
      };
      const box = boxOf(label);
      if (taken.some((other) => meet(box, other))) continue;
      taken.push(box);
      return [label];
    }
    return [];
  });
}

function places(right: boolean): { dx: number; dy: number; anchor: FanLabel['anchor'] }[] {
  const beside = (sign: number) => ({
    dx: sign * OFF,
    dy: 4,
    anchor: sign > 0 ? ('start' as const) : ('end' as const),
  });
  const level = (dy: number) => ({ dx: 0, dy, anchor: 'middle' as const });
  const first = right ? 1 : -1;
  return [beside(first), beside(-first), level(-OFF), level(OFF + 9), level(-22), level(OFF + 23)];
}

interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

const around = ({ x, y }: { x: number; y: number }): Box => ({
  left: x - 5,
  right: x + 5,
  top: y - 5,
  bottom: y + 5,
});

/** The room a label takes; its y is the line the letters stand on. */
export function boxOf({ x, y, text, anchor }: FanLabel): Box {
  const wide = text.length * LETTER;
  const left = anchor === 'start' ? x : anchor === 'end' ? x - wide : x - wide / 2;
  return { left, right: left + wide, top: y - HIGH, bottom: y };
}

export const meet = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
