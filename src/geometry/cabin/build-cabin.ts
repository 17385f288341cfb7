import type { KeepClearInput, ObstacleInput, PanelInput, PlanInput } from '../input';
import { dot, scale, sub, type Vec3 } from '../vector';
import { type Dimensions, resolveDimensions } from './dimensions';
import type { CabinAnswer, KeepClearZone, Obstacle, Panel } from './model';
import { bilinearPatch, patchNormal, pointOnPatch } from './patch';
import { placeSeats } from './seats';
import { getTemplate, TEMPLATES } from './templates';

/** A given panel's reflectivity where the plan names none. Typical of hard trim, from memory. */
const GIVEN_REFLECTIVITY = 0.85;

/**
 * A panel from its four corners, facing the listeners: its normal points to the side on which the
 * mean of all heads lies (with no head: as the right-hand rule takes the corners).
 */
export function givenPanel(input: PanelInput, heads: readonly Vec3[], derived?: Panel): Panel {
  const front = bilinearPatch(input.corners, 1);
  let facing: 1 | -1 = 1;
  if (heads.length > 0) {
    const sum = heads.reduce<Vec3>((s, h) => [s[0] + h[0], s[1] + h[1], s[2] + h[2]], [0, 0, 0]);
    const middle = scale(sum, 1 / heads.length);
    const toHeads = sub(middle, pointOnPatch(front, 0.5, 0.5));
    if (dot(toHeads, patchNormal(front, 0.5, 0.5)) < 0) facing = -1;
  }
  return {
    id: input.id,
    name: derived?.name ?? input.id,
    patch: { ...front, facing },
    mountable: input.mountable ?? derived?.mountable ?? true,
    material: derived?.material ?? 'hard-trim',
    reflectivity: input.reflectivity ?? derived?.reflectivity ?? GIVEN_REFLECTIVITY,
    depthBehind: derived?.depthBehind ?? null,
    airspaceBehind: derived?.airspaceBehind ?? null,
    roles: derived?.roles ?? [],
    given: true,
  };
}

type BuildInput = Pick<PlanInput, 'cabin' | 'seats' | 'obstacles' | 'keepClear'>;

/**
 * The whole interior of a plan: panels, seats, obstacles, keep-clear zones, all in car axes, mm.
 * @returns the cabin, or one sentence with the plan path it is about
 */
export function buildCabin(plan: BuildInput): CabinAnswer {
  const { cabin: input } = plan;
  const template = input.template === 'none' ? null : getTemplate(input.template);
  if (!template && input.template !== 'none') {
    const known = TEMPLATES.map(({ id }) => id).join(', ');
    const message = `there is no template "${input.template}" (known: ${known}, none)`;
    return { ok: false, error: { path: 'cabin.template', message } };
  }
  let dimensions: Dimensions | null = null;
  if (template) {
    const resolved = resolveDimensions(template, input.dimensions);
    if (!resolved.ok) return resolved;
    dimensions = resolved.dimensions;
  }
  const seated = placeSeats(dimensions, template, input.wheelSide, plan.seats);
  if (!seated.ok) return seated;
  const heads = seated.seats.map((seat) => seat.head);
  return {
    ok: true,
    cabin: {
      template: input.template,
      wheelSide: input.wheelSide,
      dimensions: dimensions ?? {},
      panels: (input.panels ?? []).map((panel) => givenPanel(panel, heads)),
      obstacles: (plan.obstacles ?? []).map(givenObstacle),
      keepClear: (plan.keepClear ?? []).map(givenZone),
      seats: seated.seats,
      references: [],
      trim: [],
      bodyLines: [],
      dimensionLines: [],
    },
  };
}

const givenObstacle = ({ id, ...shape }: ObstacleInput): Obstacle => ({
  id,
  name: id,
  shape,
  given: true,
});

const givenZone = ({ id, reason, ...shape }: KeepClearInput): KeepClearZone => ({
  id,
  name: id,
  reason,
  shape,
  given: true,
});
