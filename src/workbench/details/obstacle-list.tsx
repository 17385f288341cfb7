import type { Shape } from '../../geometry';
import { addObstacle, nextObstacleId } from '../../plan/edits';
import { planStore, sessionStore, useShownPlan } from '../../store';
import { thingName } from '../parts/names';
import { type Board, useLocked } from '../parts/use-board';

/** Where a new obstacle appears, mm: between the front seats, above the tunnel. */
const NEW_SHAPES: readonly { name: string; label: string; shape: Shape }[] = [
  {
    name: 'box',
    label: 'Add a box',
    shape: { shape: 'box', center: [650, 0, 450], size: [250, 200, 150] },
  },
  {
    name: 'ring',
    label: 'Add a ring',
    shape: {
      shape: 'ring',
      center: [450, 0, 650],
      axis: [1, 0, 0.4],
      diameter: 300,
      thickness: 30,
    },
  },
  {
    name: 'rod',
    label: 'Add a rod',
    shape: { shape: 'capsule', from: [500, 0, 350], to: [500, 0, 700], radius: 40 },
  },
];

const select = (id: string): void => sessionStore.setState({ selection: { kind: 'obstacle', id } });

/** What the user put in the way of sound, and adding more. */
export function ObstacleList({ board }: { board: Board }) {
  const own = useShownPlan().obstacles ?? [];
  const locked = useLocked();
  return (
    <section aria-labelledby="obstacles-head">
      <h3 id="obstacles-head">Obstacles</h3>
      <p className="quiet-text">
        Wheel, console, seats and occupants come with the car. Add what else stands in the way.
      </p>
      {own.length > 0 && (
        <ul className="row">
          {own.map(({ id }) => (
            <li key={id}>
              <button type="button" onClick={() => select(id)}>
                {thingName(board.cabin, id)}
              </button>
            </li>
          ))}
        </ul>
      )}
      <div className="row small-buttons">
        {NEW_SHAPES.map(({ name, label, shape }) => (
          <button
            key={name}
            type="button"
            disabled={locked}
            onClick={() => {
              const id = nextObstacleId(planStore.getState().plan, name);
              planStore.edit(`add a ${name}`, addObstacle(shape, name));
              select(id);
            }}
          >
            {label}
          </button>
        ))}
      </div>
    </section>
  );
}
