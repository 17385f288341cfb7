/** No pocket has more corners than a hand would draw. Choice of ours, no source. */
export const MOST_CORNERS = 64;

/** Thicker walls are no walls, mm. Choice of ours, no source. */
export const THICKEST_WALL = 200;
