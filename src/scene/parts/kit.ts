/** The materials of one scene, made once, and the order things are laid on the sheet. */
import { Color, DoubleSide } from 'three';
import { inkMaterial } from '../shading/ink-material';
import type { Look } from '../shading/look';
import { mapMaterial, rampTexture } from '../shading/map-material';
import {
  contourMaterial,
  depthOnlyMaterial,
  ghostMaterial,
  glassMaterial,
  groundMaterial,
  hatchMaterial,
  shadeMaterial,
  traceMaterial,
} from '../shading/materials';
import type { Palette } from '../theme';

/** Later numbers are laid over earlier ones; opaque things come before all of them. */
export const LAYER = {
  ground: -1,
  contour: 0,
  ink: 1,
  glass: 2,
  hidden: 3,
  path: 4,
  ghostDepth: 6,
  ghost: 7,
  wave: 8,
  zone: 9,
  marks: 10,
} as const;

export function createKit(look: Look) {
  const colours = {
    ink: new Color(),
    quiet: new Color(),
    accent: new Color(),
    blocked: new Color(),
    near: new Color(),
    zone: new Color(),
    pen: new Color(),
  };
  /** By side of the car, for what brings its own materials. */
  const sides = { left: new Color(), right: new Color(), neither: new Color() };
  const ramp = rampTexture();
  const kit = {
    surface: shadeMaterial(look),
    /** Trim may be a sheet without a back. */
    sheet: shadeMaterial(look, DoubleSide),
    glass: glassMaterial(look),
    ghost: ghostMaterial(look, 1),
    ghostFaint: ghostMaterial(look, 0.55),
    ghostDepth: depthOnlyMaterial(),
    contour: contourMaterial(look, colours.ink, 0.9),
    quietContour: contourMaterial(look, colours.quiet, 0.7, true),
    accentContour: contourMaterial(look, colours.accent, 2.2),
    blockedContour: contourMaterial(look, colours.blocked, 2.2),
    blockedFigure: contourMaterial(look, colours.blocked, 2.2, true),
    /** What a line passes too near: outlined, not hatched. */
    nearContour: contourMaterial(look, colours.near, 1.6),
    nearFigure: contourMaterial(look, colours.near, 1.6, true),
    zone: hatchMaterial(look, colours.zone),
    blockedHatch: hatchMaterial(look, colours.blocked, 7),
    /** What is in the way shows through what stands before it. */
    blockedBody: hatchMaterial(look, colours.blocked, 5, true),
    /** Behind a panel it is seen through it. */
    pocket: hatchMaterial(look, colours.pen, 5, true),
    accentHatch: hatchMaterial(look, colours.accent, 11),
    trace: traceMaterial(look, colours.quiet),
    ink: inkMaterial(look),
    bodyInk: inkMaterial(look, { seeThrough: 0.22, lift: 2 }),
    map: mapMaterial(look, ramp),
    ground: groundMaterial(look),
    path: inkMaterial(look, { lift: 4 }),
    pathBehind: inkMaterial(look, { lift: 4, behind: true, opacity: 0.62 }),
    marks: inkMaterial(look, { overAll: true }),
  };
  return {
    ...kit,
    look,
    sides,
    paint(palette: Palette) {
      colours.ink.copy(palette.ink);
      // A contour on the slate board would glow; it is drawn in the board's own dark instead.
      if (palette.dark) colours.ink.copy(palette.paper).multiplyScalar(0.35);
      colours.quiet.copy(palette.quietInk).lerp(palette.paper, 0.35);
      colours.accent.copy(palette.accent);
      colours.blocked.copy(palette.blocked);
      colours.near.copy(palette.blocked).lerp(palette.paper, 0.3);
      colours.zone.copy(palette.zone);
      colours.pen.copy(palette.ink);
      sides.left.copy(palette.left);
      sides.right.copy(palette.right);
      sides.neither.copy(palette.ink);
    },
    dispose() {
      ramp.dispose();
      for (const material of Object.values(kit)) material.dispose();
    },
  };
}

export type Kit = ReturnType<typeof createKit>;
