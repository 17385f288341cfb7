import type { Vec3 } from '../../geometry';
import type { Recipe } from '../../store';
import type { FieldKind } from './field-kind';
import { NumberField } from './number-field';
import { planSink } from './plan-sink';
import { useLocked } from './use-board';

export interface VectorFieldsProps {
  /** Says what the three numbers are, to everyone. */
  legend: string;
  value: Vec3;
  kind: FieldKind;
  /** What is done, for undo. */
  undoLabel: string;
  recipe: (value: Vec3) => Recipe;
  /** Names of the three; the car's axes unless told. */
  names?: readonly [string, string, string];
  min?: number;
}

export const AXES = ['X, rearward', 'Y, to the right', 'Z, up'] as const;

/** Three numbers that belong together, each committed on its own. */
export function VectorFields(props: VectorFieldsProps) {
  const { legend, value, kind, undoLabel, recipe, names = AXES, min } = props;
  const locked = useLocked();
  return (
    <fieldset className="field-group">
      <legend>{legend}</legend>
      <div className="fields fields-3">
        {([0, 1, 2] as const).map((axis) => (
          <NumberField
            key={axis}
            label={names[axis]}
            value={value[axis]}
            kind={kind}
            min={min}
            readOnly={locked}
            sink={planSink(undoLabel, (number) => recipe(replaced(value, axis, number)))}
          />
        ))}
      </div>
    </fieldset>
  );
}

function replaced(value: Vec3, axis: 0 | 1 | 2, number: number): Vec3 {
  const next: [number, number, number] = [...value];
  next[axis] = number;
  return next;
}
