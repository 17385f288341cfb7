import type { FlatPanel, Point2 } from '../../../geometry';
import {
  addPocketCorner,
  cornerMayGo,
  movePocketCorner,
  removePocketCorner,
} from '../../../plan/edits';
import { MOST_CORNERS } from '../../../plan/pocket-limits';
import type { LengthUnit } from '../../../plan/units';
import { planStore, type Recipe } from '../../../store';
import { lengthKind } from '../../parts/field-kind';
import { NumberField, type NumberSink } from '../../parts/number-field';
import type { DrawnPocket } from './pocket-groups';

export interface CornerListProps {
  optionId: string;
  drawn: DrawnPocket;
  flat: FlatPanel;
  unit: LengthUnit;
  locked: boolean;
}

/** Every corner by its two lengths, to be typed; corners added and taken out. */
export function CornerList({ optionId, drawn, flat, unit, locked }: CornerListProps) {
  const { pocket, name } = drawn;
  const { outline } = pocket;
  const edit = (label: string, recipe: Recipe) => planStore.edit(`${label} of the ${name}`, recipe);
  return (
    <details className="sheet-more pocket-corners">
      <summary>{`Its ${outline.length} corners, typed`}</summary>
      <p className="footnote">
        From the lower left end of the panel as drawn. A corner keeps to the panel, and stays where
        edges would cross.
      </p>
      <ol>
        {outline.map((spot, i) => {
          const at = flat.toFlat(spot);
          const corner = `corner ${i + 1}`;
          const field = (label: string, axis: 0 | 1) => (
            <NumberField
              label={label}
              value={at[axis]}
              kind={lengthKind(unit)}
              min={0}
              max={flat.size[axis]}
              readOnly={locked}
              sink={sinkFor(`move ${corner} of the ${name}`, (value) => {
                const to = flat.fromFlat(axis === 0 ? [value, at[1]] : [at[0], value]);
                return cornerMayGo(pocket, i, to)
                  ? movePocketCorner(optionId, pocket.id, i, to)
                  : null;
              })}
            />
          );
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: a corner is its place in the outline
            <li key={i}>
              <fieldset>
                <legend className="unseen">{`Corner ${i + 1} of the ${name}`}</legend>
                <span className="corner-number" aria-hidden="true">
                  {i + 1}
                </span>
                {field('Across', 0)}
                {field('Up', 1)}
                <div className="row">
                  <button
                    type="button"
                    disabled={locked || outline.length >= MOST_CORNERS}
                    onClick={() =>
                      edit(`add a corner after ${corner}`, addPocketCorner(optionId, pocket.id, i))
                    }
                  >
                    Add one after it
                  </button>
                  <button
                    type="button"
                    disabled={locked || !mayGoWithout(outline)}
                    onClick={() =>
                      edit(`remove ${corner}`, removePocketCorner(optionId, pocket.id, i))
                    }
                  >
                    Remove
                  </button>
                </div>
              </fieldset>
            </li>
          );
        })}
      </ol>
    </details>
  );
}

const mayGoWithout = (outline: readonly Point2[]): boolean => outline.length > 3;

/** Typing is one undo step; a place that cannot be had changes nothing. */
function sinkFor(label: string, recipe: (value: number) => Recipe | null): NumberSink {
  return {
    commit(value) {
      const change = recipe(value);
      if (change) planStore.edit(label, change);
    },
  };
}
