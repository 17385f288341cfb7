import { useState } from 'react';
import type { SpeakerInput } from '../../../geometry';
import { addPocketPair } from '../../../plan/edits';
import { pairName, speakerName } from '../../../plan/names';
import type { PlanOption } from '../../../plan/types';
import { planStore } from '../../../store';
import { SelectField } from '../../parts/select-field';
import { useLocked } from '../../parts/use-board';
import { capital } from '../capital';

/** Roles that want a box, most first: common practice, no source. */
const WANTS: readonly SpeakerInput['role'][] = ['midbass', 'subwoofer', 'midrange', 'wideband'];
const rank = ({ role }: SpeakerInput): number => {
  const at = WANTS.indexOf(role);
  return at < 0 ? WANTS.length : at;
};

/** Speakers on a panel without a pocket, one of each pair: those that usually want one first. */
export function withoutPocket({ speakers, pockets = [] }: PlanOption): SpeakerInput[] {
  const free = speakers.filter(
    ({ id, mount }) => mount && !pockets.some((pocket) => pocket.speakers.includes(id)),
  );
  const one = free.filter(
    ({ pair }, i) => pair === undefined || free.findIndex((other) => other.pair === pair) === i,
  );
  return one.sort((a, b) => rank(a) - rank(b));
}

/** Draws pockets round a pair, or round one speaker, that has none yet. */
export function DrawPockets({ option }: { option: PlanOption }) {
  const locked = useLocked();
  const [chosen, setChosen] = useState('');
  const free = withoutPocket(option);
  const speaker = free.find(({ id }) => id === chosen) ?? free[0];
  if (!speaker)
    return <p className="footnote">Every speaker that stands on a panel has its pocket already.</p>;
  const nameOf = (one: SpeakerInput) => {
    const { pair } = one;
    const twin = free.length > 0 && option.speakers.some((s) => s.pair === pair && s.id !== one.id);
    return pair && twin ? pairName(pair, option.speakers) : speakerName(one, option.speakers);
  };
  return (
    <div className="row draw-pockets">
      <SelectField
        label="Round"
        value={speaker.id}
        disabled={locked}
        choices={free.map((one) => ({ value: one.id, label: capital(nameOf(one)) }))}
        onChange={setChosen}
      />
      <button
        type="button"
        disabled={locked}
        onClick={() =>
          planStore.edit(
            `draw pockets round the ${nameOf(speaker)}`,
            addPocketPair(option.id, speaker.id),
          )
        }
      >
        Draw sealed pockets
      </button>
    </div>
  );
}
