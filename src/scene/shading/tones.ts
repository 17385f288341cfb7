/**
 * The paints of the illustration. A vertex carries the number of its paint, never a colour, so a
 * change of theme is a change of one uniform array and no geometry is touched.
 */
import { Color } from 'three';
import type { Palette } from '../theme';

export const TONES = [
  'glass',
  'hard-trim',
  'soft-trim',
  'carpet',
  'headliner',
  'metal',
  'leather',
  'fabric',
  'rubber',
  'skin',
  'cloth',
  'dark-trim',
  'paint',
  'ink',
  'quiet-ink',
  'accent',
  'free',
  'blocked',
  'zone',
  'paper',
  'speaker-rim',
  'speaker-cone',
  'speaker-dome',
  'speaker-basket',
] as const;

export type Tone = (typeof TONES)[number];

const NUMBER = new Map<Tone, number>(TONES.map((tone, i) => [tone, i]));
export const toneNumber = (tone: Tone): number => NUMBER.get(tone) as number;

/** Lightness 0 (ink) to 1 (paper's own white), and a tint with its share. By eye. */
const PAINTS: Partial<Record<Tone, { light: number; tint?: string; share?: number }>> = {
  glass: { light: 0.82, tint: '#7fa6ad', share: 0.55 },
  'hard-trim': { light: 0.62, tint: '#8f8678', share: 0.35 },
  'soft-trim': { light: 0.76, tint: '#b9a58a', share: 0.45 },
  carpet: { light: 0.42, tint: '#6f675f', share: 0.4 },
  headliner: { light: 0.95, tint: '#e6dcc8', share: 0.4 },
  metal: { light: 0.68, tint: '#8d969b', share: 0.5 },
  leather: { light: 0.58, tint: '#a06f4a', share: 0.55 },
  fabric: { light: 0.6, tint: '#7c8a90', share: 0.6 },
  rubber: { light: 0.2, tint: '#4a4744', share: 0.4 },
  skin: { light: 0.86, tint: '#d8ab8c', share: 0.5 },
  cloth: { light: 0.7, tint: '#8898a4', share: 0.5 },
  'dark-trim': { light: 0.3, tint: '#57524d', share: 0.4 },
  paint: { light: 0.85, tint: '#b5402a', share: 0.12 },
  'speaker-rim': { light: 0.18, tint: '#3a3734', share: 0.3 },
  'speaker-cone': { light: 0.34, tint: '#5d5850', share: 0.3 },
  'speaker-dome': { light: 0.8, tint: '#cdb98c', share: 0.5 },
  'speaker-basket': { light: 0.5, tint: '#7c8083', share: 0.4 },
};

/** One linear colour for each of {@link TONES}, in their order. */
export function toneColours(palette: Palette): Color[] {
  const plain: Partial<Record<Tone, Color>> = {
    ink: palette.ink,
    'quiet-ink': palette.quietInk,
    accent: palette.accent,
    free: palette.free,
    blocked: palette.blocked,
    zone: palette.zone,
    paper: palette.paper,
  };
  return TONES.map((tone) => {
    const fixed = plain[tone];
    if (fixed) return fixed.clone();
    const { light, tint, share = 0 } = PAINTS[tone] ?? { light: 0.6 };
    // Mixed as the eye sees them (sRGB), or every middle tone comes out pale. On the slate board
    // surfaces stay below half brightness, so ink lines still read as the lightest thing.
    const [low, high] = palette.dark ? [palette.paper, palette.ink] : [palette.ink, palette.paper];
    const k = palette.dark ? 0.1 + 0.42 * light : 0.2 + 0.78 * light;
    const paint = mixSeen(low, high, k);
    if (!tint) return paint;
    const hue = new Color(tint);
    if (palette.dark) hue.multiplyScalar(0.35);
    return mixSeen(paint, hue, share * (palette.dark ? 0.7 : 1));
  });
}

function mixSeen(a: Color, b: Color, k: number): Color {
  const x = a.clone().convertLinearToSRGB();
  const y = b.clone().convertLinearToSRGB();
  return x.lerp(y, k).convertSRGBToLinear();
}
