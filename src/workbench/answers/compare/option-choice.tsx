import type { Stage } from '../../../geometry';
import { optionTitle } from '../../../plan/edits';
import { FEWEST_OPTIONS, MOST_OPTIONS } from './chosen-options';

interface OptionChoiceProps {
  options: readonly Stage['option'][];
  chosen: readonly string[];
  board: string | null;
  onChange: (chosen: string[]) => void;
}

/** Which of more than two options stand in the table; the one on the board always does. */
export function OptionChoice({ options, chosen, board, onChange }: OptionChoiceProps) {
  if (options.length <= FEWEST_OPTIONS) return null;
  return (
    <fieldset className="compare-options">
      <legend>Options compared</legend>
      {options.map((option) => {
        const { id } = option;
        const isIn = chosen.includes(id);
        const stays = isIn && (id === board || chosen.length <= FEWEST_OPTIONS);
        const full = !isIn && chosen.length >= MOST_OPTIONS;
        return (
          <label key={id} className="tick">
            <input
              type="checkbox"
              checked={isIn}
              disabled={stays || full}
              onChange={() => onChange(isIn ? chosen.filter((one) => one !== id) : [...chosen, id])}
            />
            <span dir="auto">{optionTitle(option)}</span>
          </label>
        );
      })}
    </fieldset>
  );
}
