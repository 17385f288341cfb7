/** Every tolerance of the engine, in one place. */

/** Shorter than this two points count as one, mm. */
export const SAME_POINT = 1e-6;

/**
 * A mounted speaker's line may touch its own panel this near its spot, mm: the drawn triangles of a
 * curved panel lie up to about a millimetre inside the surface the spot was computed on.
 */
export const OWN_PANEL_CLEARANCE = 5;

/** A hit nearer than this to either end of a line is the end itself, mm. */
export const END_CLEARANCE = 1e-3;

/** Panels are cut into triangles no farther than about this from the true surface, mm. */
export const PANEL_SAGITTA = 1;

/** No level is told below this, dB: an ideal null has none, and a real one never gets there. */
export const LEVEL_FLOOR_DB = -100;

/** A reflection's place is found when a step in u and v (0 to 1) becomes smaller than this. */
export const STATIONARY = 1e-9;

/**
 * A reflection's legs are tested from this far above a flat panel, mm, whose triangles lie on it
 * but for rounding. Above a curved one from twice what its triangles may stray.
 */
export const FLAT_LIFT = 0.01;
