import { setPolarity } from '../../../plan/edits';
import { planStore } from '../../../store';
import { SelectField } from '../../parts/select-field';
import { useLocked } from '../../parts/use-board';
import type { SpeakerPartProps } from '../speaker-details';
import { usualPolarity } from './usual-polarity';

/** Whether the poles of the channel are kept or swapped. */
export function SpeakerPolarity({ board, optionId, speaker, name }: SpeakerPartProps) {
  const locked = useLocked();
  if (!board.option) return null;
  const { inverted, because } = usualPolarity(board.option, speaker.id);
  const value = speaker.inverted === undefined ? 'usual' : speaker.inverted ? 'swapped' : 'kept';
  return (
    <SelectField
      label="Polarity"
      value={value}
      disabled={locked}
      choices={[
        { value: 'usual', label: `as usual for its crossover: ${inverted ? 'swapped' : 'kept'}` },
        { value: 'kept', label: 'kept: + to +' },
        { value: 'swapped', label: 'swapped: + to −' },
      ]}
      hint={because && `Its crossover: ${because}.`}
      onChange={(chosen) =>
        planStore.edit(
          `change the polarity of ${name}`,
          setPolarity(optionId, speaker.id, chosen === 'usual' ? null : chosen === 'swapped'),
        )
      }
    />
  );
}
