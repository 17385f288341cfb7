/** Bodies in the way of sound that the user added. */
import { castDraft, type Draft } from 'immer';
import { add, type ObstacleInput, type Shape, type Vec3 } from '../../geometry';
import { assign, freeId, type PlanRecipe, plain } from './recipe';

/** The id an added obstacle of this name will have. */
export const nextObstacleId = (
  plan: { readonly obstacles?: readonly { readonly id: string }[] },
  name = 'obstacle',
): string =>
  freeId(
    name,
    (plan.obstacles ?? []).map(({ id }) => id),
  );

/** Adds an obstacle; its id is {@link nextObstacleId} of the plan before. */
export function addObstacle(shape: Shape, name = 'obstacle'): PlanRecipe {
  return (draft) => {
    const id = nextObstacleId(draft, name);
    draft.obstacles ??= [];
    draft.obstacles.push(castDraft<ObstacleInput>({ ...shape, id }));
  };
}

type Fields<S> = S extends Shape ? Partial<Omit<S, 'shape'>> : never;

/** Changes an obstacle's own fields (centre, size, radius, …); its kind of shape stays. */
export function changeObstacle(id: string, fields: Fields<Shape>): PlanRecipe {
  return (draft) => {
    const obstacle = draft.obstacles?.find((o) => o.id === id);
    if (obstacle) assign(obstacle as object, fields as object);
  };
}

/** Moves an obstacle by `delta`, mm. */
export function moveObstacle(id: string, delta: Vec3): PlanRecipe {
  return (draft) => {
    if (delta.every((d) => d === 0)) return;
    const obstacle = draft.obstacles?.find((o) => o.id === id);
    if (!obstacle) return;
    assign(obstacle as object, moved(plain(obstacle) as Shape, delta) as object);
  };
}

function moved(shape: Shape, delta: Vec3): Fields<Shape> {
  switch (shape.shape) {
    case 'box':
    case 'ring':
      return { center: add(shape.center, delta) };
    case 'capsule':
      return { from: add(shape.from, delta), to: add(shape.to, delta) };
    case 'mesh':
      return { vertices: shape.vertices.map((vertex) => add(vertex, delta)) };
  }
}

export function removeObstacle(id: string): PlanRecipe {
  return (draft) => {
    if (!draft.obstacles?.some((o) => o.id === id)) return;
    draft.obstacles = draft.obstacles.filter((o: Draft<ObstacleInput>) => o.id !== id);
  };
}
