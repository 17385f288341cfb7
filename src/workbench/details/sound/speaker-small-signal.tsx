import { openSheet } from '../../answers/open-sheet';
import { DriveUnitFields } from '../../parts/drive-unit-fields';
import type { SpeakerPartProps } from '../speaker-details';

/** What its own sheet says of it at small signals: needed for a sealed pocket, and only there. */
export function SpeakerSmallSignal({ optionId, speaker, name }: SpeakerPartProps) {
  return (
    <>
      <DriveUnitFields key={speaker.id} optionId={optionId} speaker={speaker} name={name} />
      <p className="footnote">
        From its own sheet, or measured. They say what a pocket does to it.
      </p>
      <div className="row small-buttons">
        <button type="button" onClick={() => openSheet('pockets')}>
          Its sealed pocket
        </button>
      </div>
    </>
  );
}
