import { useState } from 'react';
import type { PlanOption } from '../../../plan/types';
import { useSession } from '../../../store';
import type { Board } from '../../parts/use-board';
import { useSettled } from '../../parts/use-settled';
import { useStage } from '../../parts/use-stage';
import { GroupSelect } from '../group-select';
import { useGroup } from '../use-group';
import { BestLines } from './best-lines';
import { MapChoices } from './map-choices';
import { MapHow } from './map-how';
import { MapLegend } from './map-legend';
import { FIRST_CHOICE, type MapChoice, mapKey, mapRequest, triedSpeaker } from './map-request';
import { MapState } from './map-state';
import { PointControl, PointReading } from './point-at-map';
import { usePainting } from './use-painting';
import { useReader } from './use-reader';
import { widestPair } from './widest-pair';
import './map.css';

/** Kept while the page is open: the sheet is left and come back to. */
let lastChoice = FIRST_CHOICE;

/** Every panel painted with what a speaker there would give. */
export default function MapSheet({ board }: { board: Board }) {
  const { settled: stage, waiting } = useSettled(useStage(board));
  const [choice, setChoice] = useState<MapChoice>(lastChoice);
  const change = (part: Partial<MapChoice>) => {
    lastChoice = { ...choice, ...part };
    setChoice(lastChoice);
  };
  const seatInView = board.seat?.id;
  const speakers = stage?.option.speakers ?? [];
  const { groups, group, choose } = useGroup(speakers, widestPair(board.seat));
  const selected = useSession(({ selection }) =>
    selection?.kind === 'speaker' ? selection.id : null,
  );
  const speaker = stage && group ? triedSpeaker(stage.option as PlanOption, group, selected) : null;
  const request =
    stage && speaker && seatInView ? mapRequest(stage, speaker, choice, seatInView) : null;
  const key = stage && request ? mapKey(stage, request) : '';
  const { painting, stop, again } = usePainting(stage?.plan ?? null, request, key);
  const { reading, fits, isKeptClear } = useReader(stage, request, key);
  if (!stage || !group || !speaker || !request)
    return <p className="quiet-text">There is no speaker to try, or no seat to listen from.</p>;
  const option = stage.option as PlanOption;
  const about = { cabin: stage.cabin, option, speaker, reading };
  return (
    <div className="map-sheet">
      <div className="map-ask">
        <GroupSelect speakers={speakers} groups={groups} value={group.id} onChange={choose} />
        <MapChoices
          choice={choice}
          onChange={change}
          cabin={stage.cabin}
          seats={request.seats ?? []}
          speaker={speaker}
          speakers={speakers}
        />
        <MapState painting={painting} waiting={waiting} stop={stop} again={again} />
        <PointControl {...about} />
      </div>
      <div className="map-tell">
        <MapLegend />
        <PointReading {...about} blend={choice.quantity === 'blend'} />
        {painting.state === 'done' && (
          <BestLines {...about} fits={fits} isKeptClear={isKeptClear} />
        )}
        <MapHow />
      </div>
    </div>
  );
}
