import { optionTitle } from '../../plan/edits';
import { sessionStore, usePlan, useSession } from '../../store';

/** Which other option is drawn beside the one on the board; nothing while there is no other. */
export function BesideChoice() {
  const options = usePlan(({ plan }) => plan.options);
  const chosen = useSession((session) => session.option);
  const beside = useSession((session) => session.beside);
  const onBoard = options.find(({ id }) => id === chosen) ?? options[0];
  if (options.length < 2) return null;
  return (
    <select
      className="beside-choice"
      aria-label="Beside it"
      value={beside ?? ''}
      onChange={(event) => sessionStore.setState({ beside: event.target.value || null })}
    >
      <option value="">Beside it: none</option>
      {options
        .filter(({ id }) => id !== onBoard?.id)
        .map((option) => (
          <option key={option.id} value={option.id}>
            Beside it: {optionTitle(option)}
          </option>
        ))}
    </select>
  );
}
