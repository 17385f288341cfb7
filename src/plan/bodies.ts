/** Generic speakers: bodies by nominal size, and where each role usually starts. */
import type { Role, SpeakerBody } from '../geometry';

export interface GenericBody {
  id: string;
  /** Nominal size, mm. */
  nominal: number;
  name: string;
  /** Usual cut-out diameter, mm, from … to. */
  cutout: readonly [number, number];
  /** Usual mounting depth, mm, from … to. */
  depth: readonly [number, number];
  /** Usual sealed volume, litres; null where the speaker brings its own. */
  sealedLitres: readonly [number, number] | null;
  /** Effective radiating diameter, mm: typical value, from memory. */
  diaphragm: number;
  /** Where the cut-out and depth come from. */
  source: 'typical value, from memory' | "a fitting guide's published range";
}

const MEMORY = 'typical value, from memory';
const GUIDE = "a fitting guide's published range";

/** The installer enters the real drawing; these stand in until then. */
export const GENERIC_BODIES: readonly GenericBody[] = [
  body('25-compact', 25, '25 mm dome, compact', [40, 50], [12, 25], null, 25, MEMORY),
  body('25', 25, '25 mm dome, full flange', [73, 76], [25, 45], null, 25, MEMORY),
  body('50', 50, '50 mm', [48, 62], [25, 40], [0.2, 0.8], 38, MEMORY),
  body('75', 75, '75 mm', [70, 80], [30, 55], [0.4, 1.5], 58, MEMORY),
  body('100', 100, '100 mm', [90, 100], [40, 60], [1, 4], 80, MEMORY),
  body('130', 130, '130 mm', [113, 121], [44, 58], [3, 8], 104, GUIDE),
  body('165', 165, '165 mm', [124, 147], [46, 64], [5, 15], 130, GUIDE),
  body('200', 200, '200 mm', [178, 186], [65, 90], [10, 20], 164, MEMORY),
  body('250', 250, '250 mm', [225, 235], [110, 150], [15, 30], 208, MEMORY),
  body('300', 300, '300 mm', [275, 285], [130, 180], [25, 45], 260, MEMORY),
  body('380', 380, '380 mm', [350, 358], [150, 210], [45, 90], 330, MEMORY),
];

function body(
  id: string,
  nominal: number,
  name: string,
  cutout: readonly [number, number],
  depth: readonly [number, number],
  sealedLitres: readonly [number, number] | null,
  diaphragm: number,
  source: GenericBody['source'],
): GenericBody {
  return { id, nominal, name, cutout, depth, sealedLitres, diaphragm, source };
}

/** A body by its id, or the first of a nominal size; null when there is none. */
export function genericBody(size: string | number): GenericBody | null {
  return (
    GENERIC_BODIES.find((b) => b.id === size) ??
    GENERIC_BODIES.find((b) => b.nominal === Number(size)) ??
    null
  );
}

/** Flange over cut-out: common practice, no source. */
const FLANGE_OVER_CUTOUT = 1.12;

/** The body to plan with: the larger end of each range, so that what fits here fits most. */
export function bodyFor(generic: GenericBody): SpeakerBody {
  const [, cutout] = generic.cutout;
  const [, depth] = generic.depth;
  return { flange: Math.round(cutout * FLANGE_OVER_CUTOUT), cutout, depth };
}

/** Where a role usually starts and what it usually is. Common practice, no source. */
export interface RoleHabit {
  /** Usual nominal sizes, most usual first; ids of GENERIC_BODIES. */
  sizes: readonly string[];
  bandHz: readonly [number, number];
  /**
   * Usual spots in the order they are tried: panel without its side, u, v, stand-off mm. A panel
   * the cabin does not have, or that is already taken there, is passed over.
   */
  spots: readonly Spot[];
  /** False where one speaker is the rule, not two. */
  paired: boolean;
}

export interface Spot {
  panel: string;
  u: number;
  v: number;
  standoff: number;
}

const spot = (panel: string, u: number, v: number, standoff = 0): Spot => ({
  panel,
  u,
  v,
  standoff,
});

export const ROLE_HABITS: Readonly<Record<Role, RoleHabit>> = {
  tweeter: {
    sizes: ['25-compact', '25'],
    bandHz: [2500, 20000],
    spots: [
      spot('mirror-corner', 0.5, 0.5, 10),
      spot('pillar', 0.5, 0.35, 12),
      spot('dash-top', 0.85, 0.3, 10),
      spot('door-upper', 0.15, 0.8),
    ],
    paired: true,
  },
  midrange: {
    sizes: ['75', '50', '100'],
    bandHz: [300, 2500],
    spots: [
      spot('dash-top', 0.8, 0.4, 20),
      spot('pillar', 0.5, 0.2, 25),
      spot('kick', 0.5, 0.6, 20),
      spot('door-upper', 0.2, 0.5),
    ],
    paired: true,
  },
  midbass: {
    sizes: ['165', '130', '200'],
    bandHz: [60, 300],
    spots: [spot('door-lower', 0.2, 0.35), spot('kick', 0.5, 0.4), spot('floor', 0.5, 0.3)],
    paired: true,
  },
  wideband: {
    sizes: ['75', '50', '100'],
    bandHz: [250, 20000],
    spots: [
      spot('dash-top', 0.85, 0.4, 20),
      spot('pillar', 0.5, 0.25, 25),
      spot('kick', 0.5, 0.6, 20),
    ],
    paired: true,
  },
  'rear-fill': {
    sizes: ['100', '130', '165'],
    bandHz: [200, 6000],
    spots: [spot('rear-door', 0.4, 0.4), spot('c-pillar', 0.5, 0.3), spot('b-pillar', 0.5, 0.3)],
    paired: true,
  },
  subwoofer: {
    sizes: ['250', '200', '300', '380'],
    bandHz: [20, 80],
    spots: [spot('parcel-shelf', 0.5, 0.5), spot('toe-board', 0.5, 0.4), spot('floor', 0.5, 0.5)],
    paired: false,
  },
  centre: {
    sizes: ['75', '100', '50'],
    bandHz: [200, 20000],
    spots: [
      spot('dash-top-center', 0.5, 0.4, 10),
      spot('dash-face-center', 0.5, 0.8),
      spot('console-top', 0.5, 0.3),
    ],
    paired: false,
  },
};
