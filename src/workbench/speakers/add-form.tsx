import { useState } from 'react';
import type { Role, Side } from '../../geometry';
import { GENERIC_BODIES, ROLE_HABITS } from '../../plan/bodies';
import { addPair, addSpeaker } from '../../plan/edits';
import { ROLES, roleName, rolePlural } from '../../plan/names';
import type { PlanOption } from '../../plan/types';
import { selectSpeaker } from '../answers/speaker-button';
import { SelectField } from '../parts/select-field';
import { useLocked } from '../parts/use-board';
import { addedTo } from './added-to';

type How = 'pair' | 'one' | Side;

const HOW: readonly { value: How; label: string }[] = [
  { value: 'pair', label: 'a pair, left and right' },
  { value: 'left', label: 'the left one only' },
  { value: 'right', label: 'the right one only' },
  { value: 'one', label: 'one, of neither side' },
];

/** What to add, and the button that does. */
export default function AddForm({ option }: { option: PlanOption }) {
  const locked = useLocked();
  const [role, setRole] = useState<Role>('tweeter');
  const [size, setSize] = useState<string>(usualSize('tweeter'));
  const [how, setHow] = useState<How>('pair');

  function changeRole(next: Role): void {
    setRole(next);
    setSize(usualSize(next));
    setHow(ROLE_HABITS[next].paired ? 'pair' : 'one');
  }

  function add(): void {
    const recipe =
      how === 'pair'
        ? addPair(option.id, role, size)
        : addSpeaker(option.id, role, size, how === 'one' ? undefined : how);
    const what = how === 'pair' ? rolePlural(role) : roleName(role);
    const made = addedTo(option.id, `add ${what}`, recipe);
    if (made) selectSpeaker(made);
  }

  const usual = ROLE_HABITS[role].sizes;
  const choice = (id: string) => ({
    value: id,
    label: GENERIC_BODIES.find((body) => body.id === id)?.name ?? id,
  });
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        add();
      }}
    >
      <div className="fields fields-2">
        <SelectField
          label="Role"
          value={role}
          choices={ROLES.map((value) => ({ value, label: roleName(value) }))}
          onChange={(value) => changeRole(value as Role)}
        />
        <SelectField
          label="Size"
          value={size}
          choices={[
            { group: `usual for a ${roleName(role)}`, choices: usual.map(choice) },
            {
              group: 'other',
              choices: GENERIC_BODIES.filter(({ id }) => !usual.includes(id)).map(({ id }) =>
                choice(id),
              ),
            },
          ]}
          onChange={setSize}
        />
        <SelectField
          className="wide"
          label="How many"
          value={how}
          choices={HOW}
          onChange={(value) => setHow(value as How)}
        />
      </div>
      <button type="submit" className="primary" disabled={locked}>
        {how === 'pair' ? `Add ${rolePlural(role)}` : `Add ${roleName(role)}`}
      </button>
    </form>
  );
}

function usualSize(role: Role): string {
  return ROLE_HABITS[role].sizes[0] ?? '100';
}
