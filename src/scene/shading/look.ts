/** Uniforms every shader of the scene shares by reference: set once a frame, seen by all. */
import { Color, Vector2, Vector3 } from 'three';
import type { Palette } from '../theme';
import { TONES, toneColours } from './tones';

export interface Look {
  uTones: { value: Color[] };
  /** Drawing size in device pixels, and device pixels to a CSS pixel. */
  uViewport: { value: Vector2 };
  uPixelRatio: { value: number };
  /** A small sheet is drawn with a finer pen: 1 on a large one. */
  uPen: { value: number };
  /** Towards the key light, in three's axes: over the draughtsman's left shoulder. */
  uKey: { value: Vector3 };
  /** What light and shade do to a paint. */
  uLit: { value: Color };
  uShade: { value: Color };
  uPaper: { value: Color };
  uInk: { value: Color };
  /** Car X where the wash begins to run out, and where it has. */
  uVignette: { value: Vector2 };
  /** 1 on the slate board. */
  uDark: { value: number };
}

export function createLook(): Look {
  return {
    uTones: { value: TONES.map(() => new Color()) },
    uViewport: { value: new Vector2(1, 1) },
    uPixelRatio: { value: 1 },
    uPen: { value: 1 },
    uKey: { value: new Vector3(0, 1, 0) },
    uLit: { value: new Color() },
    uShade: { value: new Color() },
    uPaper: { value: new Color() },
    uInk: { value: new Color() },
    uVignette: { value: new Vector2(1e6, 2e6) },
    uDark: { value: 0 },
  };
}

/** Takes a theme's colours over into the shared uniforms. */
export function paintLook(look: Look, palette: Palette): void {
  look.uTones.value = toneColours(palette);
  look.uDark.value = palette.dark ? 1 : 0;
  look.uPaper.value = palette.paper.clone();
  look.uInk.value = palette.ink.clone();
  // Warm light, cool shade: the oldest trick of tinted drawing. By eye.
  look.uLit.value.setRGB(1.12, 1.09, 1.03);
  if (palette.dark) look.uShade.value.setRGB(0.3, 0.32, 0.36);
  else look.uShade.value.setRGB(0.36, 0.34, 0.38);
}
