import { useId, useState } from 'react';
import type { DimensionInfo } from '../../geometry';
import type { LengthUnit } from '../../plan/units';
import { sentence } from '../parts/check-number';
import { NumberField } from '../parts/number-field';
import { inWords, kindOf, showDimension } from './show-dimension';
import './dimensions.css';

export interface DimensionFieldProps {
  info: DimensionInfo;
  /** As it stands, mm or degrees. */
  value: number;
  /** The template's value. */
  typical: number;
  /** True once the user has set it. */
  measured: boolean;
  unit: LengthUnit;
  readOnly?: boolean;
  /** Takes the value, or answers with the engine's sentence on why it cannot be. */
  onSet: (value: number) => string | null;
  onReset: () => string | null;
  onFocus?: () => void;
}

/** One dimension: its field, whether it is measured or typical, and why a value was refused. */
export function DimensionField(props: DimensionFieldProps) {
  const { info, value, typical, measured, unit, readOnly, onSet, onReset, onFocus } = props;
  const id = useId();
  const [refused, setRefused] = useState<{ tried: number; why: string; kept: number } | null>(null);
  // Once the value changes, by undo for one, the refusal is about something that is over.
  const refusal = refused?.kept === value ? refused : null;
  const put = (next: number, why: string | null) =>
    setRefused(why === null ? null : { tried: next, why, kept: value });

  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: listens for the focus of what is inside
    <div className="dimension" onFocus={onFocus}>
      <NumberField
        label={info.code ? `${info.label} (${info.code})` : info.label}
        value={value}
        kind={kindOf(info, unit)}
        min={info.min}
        max={info.max}
        readOnly={readOnly}
        sink={{ commit: (next) => put(next, onSet(next)) }}
        onClear={measured ? () => put(typical, onReset()) : undefined}
        hint={
          refusal && (
            <span className="dimension-refused" role="alert">
              {`${showDimension(info, refusal.tried, unit)} does not go: ${sentence(inWords(refusal.why))} `}
              {`Kept at ${showDimension(info, value, unit)}.`}
            </span>
          )
        }
      />
      {measured ? (
        <button
          type="button"
          className="dimension-mark"
          disabled={readOnly}
          aria-describedby={`${id}-typical`}
          onClick={() => put(typical, onReset())}
        >
          {`Reset to ${showDimension(info, typical, unit)}`}
          <span className="unseen" id={`${id}-typical`}>
            {`${info.label}: back to the typical value`}
          </span>
        </button>
      ) : (
        <span className="dimension-mark dimension-typical">typical</span>
      )}
    </div>
  );
}
