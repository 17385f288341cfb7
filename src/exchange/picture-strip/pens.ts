import type { Role, Side } from '../../geometry';

/** Always the light look: files and paper are read in daylight, and in grey too. */
export const INK = '#23211c';
const QUIET = '#5b5447';
const LINE = '#a89d86';

const SIDES: Readonly<Record<Side | 'neither', string>> = {
  left: '#1b4f86',
  right: '#6c3a74',
  neither: INK,
};

export const colourOf = (side: Side | null): string => SIDES[side ?? 'neither'];

/** mm on paper. */
export interface Pen {
  fill: string;
  stroke: string;
  width: number;
}

export const CAR_PENS: Readonly<
  Record<'ground' | 'seat' | 'wheel' | 'edge' | 'wall' | 'glass', Pen>
> = {
  ground: { fill: '#ffffff', stroke: LINE, width: 0.15 },
  edge: { fill: 'none', stroke: '#d5ccb8', width: 0.12 },
  seat: { fill: '#f0e9da', stroke: LINE, width: 0.15 },
  wheel: { fill: 'none', stroke: LINE, width: 0.2 },
  wall: { fill: 'none', stroke: INK, width: 0.45 },
  glass: { fill: 'none', stroke: INK, width: 0.18 },
};
export const HEAD_PEN: Pen = { fill: '#ffffff', stroke: INK, width: 0.3 };
export const SPEAKER_PEN: Pen = { fill: '#ffffff', stroke: INK, width: 0.25 };
export const QUIET_INK = QUIET;

/** The lower a speaker plays, the heavier its line; told by weight, not by colour. */
export function weightOf(role: Role): 1 | 2 | 3 {
  if (role === 'tweeter') return 1;
  return role === 'midbass' || role === 'subwoofer' ? 3 : 2;
}
