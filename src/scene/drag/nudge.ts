/** A selected speaker moved by keys along u and v, in mm on the panel. */
import { clamp, distance, type Mount, type Panel, pointOnPatch, type Vec3 } from '../../geometry';

export type Arrow = 'left' | 'right' | 'up' | 'down';
/** Which way along the panel each arrow key goes: an axis and a sign. */
export type ArrowWays = Record<Arrow, { axis: 'u' | 'v'; sign: 1 | -1 }>;

/** Step of one key press, mm; Shift and Alt take the larger and the finer one. */
export const STEP = { plain: 5, shift: 25, alt: 1 } as const;

const REACH = 0.01;

/** mm moved on the panel per unit of u or v at a spot. */
function stretch(panel: Panel, { u, v }: Mount, axis: 'u' | 'v'): number {
  const at = (k: number) =>
    axis === 'u'
      ? pointOnPatch(panel.patch, clamp(u + k, 0, 1), v)
      : pointOnPatch(panel.patch, u, clamp(v + k, 0, 1));
  const here = axis === 'u' ? u : v;
  const span = Math.min(1, here + REACH) - Math.max(0, here - REACH);
  return distance(at(REACH), at(-REACH)) / span;
}

/** The mount moved by `mm` along one axis, kept on its panel. */
export function nudged(panel: Panel, mount: Mount, axis: 'u' | 'v', mm: number): Mount {
  const per = stretch(panel, mount, axis);
  if (!(per > 1e-6)) return mount;
  return { ...mount, [axis]: clamp(mount[axis] + mm / per, 0, 1) };
}

/**
 * Which of u and v an arrow key means: the one that runs more that way on the sheet, so the
 * speaker goes where the arrow points in whatever view. `onSheet` gives CSS pixels, y downward.
 */
export function arrowWays(
  panel: Panel,
  mount: Mount,
  onSheet: (point: Vec3) => { x: number; y: number },
): ArrowWays {
  const run = (axis: 'u' | 'v') => {
    const at = (k: number) =>
      onSheet(
        axis === 'u'
          ? pointOnPatch(panel.patch, clamp(mount.u + k, 0, 1), mount.v)
          : pointOnPatch(panel.patch, mount.u, clamp(mount.v + k, 0, 1)),
      );
    const [a, b] = [at(-0.02), at(0.02)];
    const [x, y] = [b.x - a.x, b.y - a.y];
    const size = Math.sqrt(x * x + y * y) || 1;
    return { x: x / size, y: y / size };
  };
  const [u, v] = [run('u'), run('v')];
  const uAcross = Math.abs(u.x) + Math.abs(v.y) >= Math.abs(v.x) + Math.abs(u.y);
  const across = uAcross ? { axis: 'u' as const, x: u.x } : { axis: 'v' as const, x: v.x };
  const upright = uAcross ? { axis: 'v' as const, y: v.y } : { axis: 'u' as const, y: u.y };
  const right = across.x >= 0 ? 1 : -1;
  const up = upright.y <= 0 ? 1 : -1;
  return {
    right: { axis: across.axis, sign: right },
    left: { axis: across.axis, sign: right === 1 ? -1 : 1 },
    up: { axis: upright.axis, sign: up },
    down: { axis: upright.axis, sign: up === 1 ? -1 : 1 },
  };
}
