import type { Box, Point } from './project';

/** Narrower than this the eye no longer knows where in the car it is, mm. Chosen by eye. */
const NARROWEST = 1500;
/** The drawing is this many times wider than what is measured. Chosen by eye. */
const TIMES = 3.2;
/** How far the view moves from what is measured towards the cabin's middle. Chosen by eye. */
const PULL = 0.35;
/** What is measured stays this part of the drawing away from its edge. */
const EDGE = 0.14;
/** Room left round the cabin for dimension lines, mm. */
const ROOM = 220;

/**
 * The part of the car worth drawing for one dimension: as near as what is measured allows, never
 * beyond the cabin with a little room round it, in the paper's proportions.
 * @param cabin the box round the whole cabin, mm  @param aspect width over height
 */
export function detailBox(cabin: Box, from: Point, to: Point, aspect: number): Box {
  const all = roomRound(cabin, aspect);
  const across = Math.abs(to[0] - from[0]);
  const down = Math.abs(to[1] - from[1]);
  const width = Math.min(
    Math.max(across * TIMES, down * TIMES * Math.min(aspect, 1), NARROWEST),
    all.right - all.left,
  );
  const height = width / aspect;
  const x = centre(from[0], to[0], (cabin.left + cabin.right) / 2, width);
  const y = centre(from[1], to[1], (cabin.top + cabin.bottom) / 2, height);
  const left = within(x - width / 2, all.left, all.right - width);
  const top = within(y - height / 2, all.top, all.bottom - height);
  return { left, top, right: left + width, bottom: top + height };
}

/**
 * Between the middle of what is measured and the cabin's own, so that the car is recognised too;
 * but what is measured stays inside.
 */
function centre(from: number, to: number, cabin: number, size: number): number {
  const middle = (from + to) / 2;
  const spare = Math.max(0, (size - Math.abs(to - from)) / 2 - EDGE * size);
  return middle + within(PULL * (cabin - middle), -spare, spare);
}

/** The cabin with room round it, widened or heightened to the paper's proportions. */
function roomRound(cabin: Box, aspect: number): Box {
  const across = cabin.right - cabin.left + 2 * ROOM;
  const down = cabin.bottom - cabin.top + 2 * ROOM;
  const width = Math.max(across, down * aspect);
  const height = width / aspect;
  const x = (cabin.left + cabin.right) / 2;
  const y = (cabin.top + cabin.bottom) / 2;
  return { left: x - width / 2, right: x + width / 2, top: y - height / 2, bottom: y + height / 2 };
}

const within = (value: number, low: number, high: number): number =>
  Math.min(Math.max(value, low), Math.max(low, high));
