import { useMemo, useState } from 'react';
import { reflectogramAt, type SpeakerInput } from '../../../geometry';
import { speakerName } from '../../../plan/names';
import { useSession } from '../../../store';
import { thingName } from '../../parts/names';
import type { Board } from '../../parts/use-board';
import { useSettled } from '../../parts/use-settled';
import { useStage } from '../../parts/use-stage';
import { GroupSelect } from '../group-select';
import { ReasonNotes } from '../reason-notes';
import { useGroup } from '../use-group';
import { firstReflectionWords } from './first-reflection';
import { ReflectionsHow } from './reflections-how';
import { ReflectionsTable } from './reflections-table';
import { Reflectogram } from './reflectogram';

/** What the panels send to the seat in view after the direct sound of a pair. */
export default function Reflections({ board }: { board: Board }) {
  const unit = useSession((session) => session.lengthUnit);
  const live = useStage(board);
  // Second order takes some 20 ms or more: too slow to follow a drag.
  const { settled, waiting } = useSettled(live);
  const [twice, setTwice] = useState(false);
  const stage = twice ? settled : live;
  const { groups, group, choose } = useGroup(board.option?.speakers ?? []);
  const seat = board.seat;
  const seatId = seat?.id;
  const sounds = useMemo(() => {
    if (!stage || !seatId || !group) return [];
    const ids = group.members.map(({ id }) => id);
    return reflectogramAt(stage, seatId, ids, twice ? 2 : 1);
  }, [stage, seatId, group, twice]);
  if (!board.option || !group || !seat)
    return <p className="quiet-text">No speaker stands in this option yet.</p>;
  const { speakers } = board.option;
  const wording = {
    speaker: (speaker: SpeakerInput) => speakerName(speaker, speakers),
    panel: (id: string) => thingName(board.cabin, id),
  };
  return (
    <>
      <div className="sheet-split">
        <div>
          <div className="sheet-bar">
            <GroupSelect speakers={speakers} groups={groups} value={group.id} onChange={choose} />
            <label className="tick">
              <input
                type="checkbox"
                checked={twice}
                onChange={(event) => setTwice(event.target.checked)}
              />
              Second order by glass
              {twice && waiting && <span className="quiet-text">after the drag</span>}
            </label>
          </div>
          <ul className="sheet-words">
            {group.members.map((speaker) => (
              <li key={speaker.id}>
                {firstReflectionWords(
                  speaker,
                  seat.arrivals.find((arrival) => arrival.speaker === speaker.id),
                  wording,
                )}
              </li>
            ))}
          </ul>
        </div>
        <Reflectogram sounds={sounds} members={group.members} />
      </div>
      <ReflectionsTable
        sounds={sounds}
        members={group.members}
        cabin={board.cabin}
        unit={unit}
        speedOfSound={board.result?.speedOfSound ?? null}
      />
      <ReasonNotes
        speakers={speakers}
        of={group.members.map((speaker) => ({
          speaker,
          reasons: sounds.flatMap((sound) =>
            sound.speaker === speaker.id ? (sound.reasons ?? []) : [],
          ),
        }))}
      />
      <ReflectionsHow />
    </>
  );
}
