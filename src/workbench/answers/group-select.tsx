import type { SpeakerInput } from '../../geometry';
import { pairName, speakerName } from '../../plan/names';
import { capital } from './capital';
import type { Group } from './groups';

export interface GroupSelectProps {
  speakers: readonly SpeakerInput[];
  groups: readonly Group[];
  value: string;
  onChange: (id: string) => void;
}

/** Which pair, or which speaker without a twin, a sheet is about. */
export function GroupSelect({ speakers, groups, value, onChange }: GroupSelectProps) {
  return (
    <label className="group-select">
      <span>Speakers</span>
      <select value={value} onChange={(event) => onChange(event.target.value)}>
        {groups.map(({ id, members }) => (
          <option key={id} value={id}>
            {capital(
              members.length === 2 ? pairName(id, speakers) : speakerName(members[0], speakers),
            )}
          </option>
        ))}
      </select>
    </label>
  );
}
