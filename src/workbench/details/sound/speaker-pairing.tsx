import type { Side } from '../../../geometry';
import { setPairing } from '../../../plan/edits';
import { planStore } from '../../../store';
import { SelectField } from '../../parts/select-field';
import { useLocked } from '../../parts/use-board';
import type { SpeakerPartProps } from '../speaker-details';
import { NO_PAIR, pairChoices, pairWarning, twinName } from './pair-choices';

const NO_SIDE = 'none';

/** Which pair the speaker belongs to, and which side of it it is. Nothing moves by it. */
export function SpeakerPairing({ board, optionId, speaker, name }: SpeakerPartProps) {
  const locked = useLocked();
  const among = board.option?.speakers ?? [];
  const twin = twinName(speaker, among);
  const label = `pair ${name} anew`;
  return (
    <div className="fields fields-2">
      <SelectField
        label="Side"
        value={speaker.side ?? NO_SIDE}
        disabled={locked}
        choices={[
          { value: 'left', label: 'left' },
          { value: 'right', label: 'right' },
          { value: NO_SIDE, label: 'neither' },
        ]}
        hint={twin && `Changes sides with the ${twin}; on neither side it leaves the pair.`}
        onChange={(side) =>
          planStore.edit(
            label,
            setPairing(optionId, speaker.id, { side: side === NO_SIDE ? null : (side as Side) }),
          )
        }
      />
      <SelectField
        label="Pair"
        value={speaker.pair ?? NO_PAIR}
        disabled={locked}
        choices={pairChoices(speaker, among)}
        hint={pairWarning(speaker, among)}
        onChange={(pair) =>
          planStore.edit(
            label,
            setPairing(optionId, speaker.id, { pair: pair === NO_PAIR ? null : pair }),
          )
        }
      />
    </div>
  );
}
