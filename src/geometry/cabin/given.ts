/** What the plan itself gives by numbers: panels by corners, obstacles, keep-clear zones. */
import type { CabinInput, KeepClearInput, ObstacleInput, PanelInput } from '../input';
import { dot, scale, sub, type Vec3 } from '../vector';
import type { KeepClearZone, Obstacle, Panel } from './model';
import { bilinearPatch, patchNormal, pointOnPatch } from './patch';

/** A given panel's reflectivity where the plan names none. Typical of hard trim, from memory. */
const GIVEN_REFLECTIVITY = 0.85;

/** The side the listeners are on: +1 where ∂P/∂u × ∂P/∂v points to the mean of their heads. */
export function facingListeners(corners: PanelInput['corners'], heads: readonly Vec3[]): 1 | -1 {
  if (heads.length === 0) return 1;
  const front = bilinearPatch(corners, 1);
  const sum = heads.reduce<Vec3>((s, h) => [s[0] + h[0], s[1] + h[1], s[2] + h[2]], [0, 0, 0]);
  const toHeads = sub(scale(sum, 1 / heads.length), pointOnPatch(front, 0.5, 0.5));
  return dot(toHeads, patchNormal(front, 0.5, 0.5)) < 0 ? -1 : 1;
}

/**
 * A bilinear panel from its four corners, in order round the edge: (u, v) = (0,0) (1,0) (1,1) (0,1).
 * What the plan leaves out it takes from the derived panel it replaces, if there is one.
 */
export function givenPanel(input: PanelInput, facing: 1 | -1, replaced?: Panel): Panel {
  return {
    id: input.id,
    name: replaced?.name ?? input.id,
    patch: bilinearPatch(input.corners, facing),
    mountable: input.mountable ?? replaced?.mountable ?? true,
    material: replaced?.material ?? 'hard-trim',
    reflectivity: input.reflectivity ?? replaced?.reflectivity ?? GIVEN_REFLECTIVITY,
    depthBehind: replaced?.depthBehind ?? null,
    airspaceBehind: replaced?.airspaceBehind ?? null,
    roles: replaced?.roles ?? [],
    ofSkin: replaced?.ofSkin ?? false,
    given: true,
  };
}

/** `derived` with the plan's panels put in, by id or at the end; `facings` go with `inputs`. */
export function withGivenPanels(
  derived: readonly Panel[],
  inputs: readonly PanelInput[],
  facings: readonly (1 | -1)[],
): Panel[] {
  const panels = new Map(derived.map((panel) => [panel.id, panel]));
  for (const [i, input] of inputs.entries())
    panels.set(input.id, givenPanel(input, facings[i] ?? 1, panels.get(input.id)));
  return [...panels.values()];
}

/** `panels` with what was measured behind them; those nobody measured stay the same objects. */
export function withMeasures(
  panels: readonly Panel[],
  measured: NonNullable<CabinInput['measured']>,
): Panel[] {
  return panels.map((panel) => {
    const own = Object.hasOwn(measured, panel.id) ? measured[panel.id] : undefined;
    if (own?.depthBehind === undefined && own?.airspaceBehind === undefined) return panel;
    return {
      ...panel,
      depthBehind: own.depthBehind ?? panel.depthBehind,
      airspaceBehind: own.airspaceBehind ?? panel.airspaceBehind,
      usual: {
        ...(own.depthBehind !== undefined && { depthBehind: panel.depthBehind }),
        ...(own.airspaceBehind !== undefined && { airspaceBehind: panel.airspaceBehind }),
      },
    };
  });
}

const meshes = new WeakMap<ObstacleInput, Obstacle>();

/** The same mesh gives the same object, so that a scan's tree is built once, not at every move. */
export function givenObstacle(input: ObstacleInput): Obstacle {
  const known = meshes.get(input);
  if (known) return known;
  const { id, ...shape } = input;
  const obstacle: Obstacle = { id, name: id, shape, given: true };
  if (input.shape === 'mesh') meshes.set(input, obstacle);
  return obstacle;
}

export const givenZone = ({ id, reason, ...shape }: KeepClearInput): KeepClearZone => ({
  id,
  name: id,
  reason,
  shape,
  given: true,
});
