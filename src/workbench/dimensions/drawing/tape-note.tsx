import type { CabinModel, DimensionInfo } from '../../../geometry';
import type { LengthUnit } from '../../../plan/units';
import { showDimension, showRange } from '../show-dimension';
import { TapeDrawing } from './tape-drawing';

export interface TapeNoteProps {
  cabin: CabinModel;
  info: DimensionInfo;
  unit: LengthUnit;
}

/** How one dimension is measured: the sentence, the drawing, what moves with it, its range. */
export function TapeNote({ cabin, info, unit }: TapeNoteProps) {
  return (
    <div className="tape-note">
      <TapeDrawing
        cabin={cabin}
        dimension={info.id}
        name={info.label}
        unit={info.unit}
        value={showDimension(info, cabin.dimensions[info.id] ?? 0, unit)}
      />
      <div className="tape-words">
        <p>
          <strong>{info.label}.</strong> {info.measure}
        </p>
        <p className="quiet-text">
          {info.moves && `Moves: ${info.moves}. `}
          {`From ${showRange(info, unit)}.`}
        </p>
      </div>
    </div>
  );
}
