import { useMemo } from 'react';
import type { Board } from '../../parts/use-board';
import { useStage } from '../../parts/use-stage';
import { GroupSelect } from '../group-select';
import { ReasonNotes } from '../reason-notes';
import { useGroup } from '../use-group';
import { groupLevels } from './group-levels';
import { levelWords } from './level-words';
import { LevelsChart } from './levels-chart';
import { LevelsHow } from './levels-how';
import { LevelsTable } from './levels-table';
import './levels.css';

/** The direct level of a pair at the seat in view by frequency, and what makes it differ. */
export default function Levels({ board }: { board: Board }) {
  const stage = useStage(board);
  const { groups, group, choose } = useGroup(board.option?.speakers ?? []);
  const seat = board.seat?.id;
  const levels = useMemo(
    () => (stage && seat && group ? groupLevels(stage, seat, group) : null),
    [stage, seat, group],
  );
  if (!board.option || !group)
    return <p className="quiet-text">No speaker stands in this option yet.</p>;
  const { speakers } = board.option;
  return (
    <>
      <div className="sheet-split">
        <div>
          <div className="sheet-bar">
            <GroupSelect speakers={speakers} groups={groups} value={group.id} onChange={choose} />
          </div>
          {levels && (
            <ul className="sheet-words">
              {levelWords(levels, speakers).map((text) => (
                <li key={text}>{text}</li>
              ))}
            </ul>
          )}
        </div>
        {levels && <LevelsChart levels={levels} />}
      </div>
      {levels && (
        <>
          <LevelsTable levels={levels} />
          <ReasonNotes
            speakers={speakers}
            of={levels.sides.map(({ speaker, reasons }) => ({ speaker, reasons }))}
          />
        </>
      )}
      <LevelsHow />
    </>
  );
}
