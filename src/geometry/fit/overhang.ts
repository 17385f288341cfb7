/** How far an ellipse on a panel reaches over the edge of the surface it lies on. */
import type { Panel } from '../cabin/model';
import { along, cross, dot, sub, type Vec3 } from '../vector';
import type { Point2 } from './outline';
import { type Ground, outlineOf } from './panel-ground';

/** Places round the ellipse: 2.5° apart, an edge is missed by 0.1 % of its radius. */
const ROUND = 144;

/**
 * Seen along the ground's normal, panels that go on in each other being one surface.
 * @param centre,a,b,long,short the ellipse: unit vectors along its axes, half lengths in mm
 * @returns mm; 0 where all of it lies on the surface
 */
export function flatOverhang(
  panels: readonly Panel[],
  { point, normal }: Ground,
  centre: Vec3,
  a: Vec3,
  b: Vec3,
  long: number,
  short: number,
): number {
  const right = a;
  const up = cross(normal, right);
  const flat = (p: Vec3): Point2 => {
    const from = sub(p, point);
    return [dot(from, right), dot(from, up)];
  };
  const surfaces = panels.map(({ patch }) => outlineOf(patch).map(flat));
  let most = 0;
  for (let n = 0; n < ROUND; n++) {
    const angle = (2 * Math.PI * n) / ROUND;
    const place = flat(along(along(centre, a, long * Math.cos(angle)), b, short * Math.sin(angle)));
    if (surfaces.some((outline) => holds(outline, place))) continue;
    most = Math.max(most, Math.min(...surfaces.map((outline) => toOutline(outline, place))));
  }
  return most;
}

/** Even–odd rule. */
function holds(outline: readonly Point2[], [x, y]: Point2): boolean {
  let inside = false;
  for (const [i, [ax, ay]] of outline.entries()) {
    const [bx, by] = outline[(i + 1) % outline.length] as Point2;
    if (ay > y !== by > y && x < ax + ((bx - ax) * (y - ay)) / (by - ay)) inside = !inside;
  }
  return inside;
}

function toOutline(outline: readonly Point2[], [x, y]: Point2): number {
  let least = Infinity;
  for (const [i, [ax, ay]] of outline.entries()) {
    const [bx, by] = outline[(i + 1) % outline.length] as Point2;
    const [dx, dy] = [bx - ax, by - ay];
    const size = dx * dx + dy * dy;
    const t = size > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / size)) : 0;
    const [ex, ey] = [ax + t * dx - x, ay + t * dy - y];
    least = Math.min(least, Math.sqrt(ex * ex + ey * ey));
  }
  return least;
}
