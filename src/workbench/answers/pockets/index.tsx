import { useMemo, useState } from 'react';
import { pocketsOf, type Stage } from '../../../geometry';
import { speakerName } from '../../../plan/names';
import type { PlanOption } from '../../../plan/types';
import { useSession } from '../../../store';
import { PanelCautions } from '../../cautions/panel-cautions';
import { DriveUnitFields } from '../../parts/drive-unit-fields';
import { plainReasons } from '../../parts/plain-reason';
import { SelectField } from '../../parts/select-field';
import { type Board, useLocked } from '../../parts/use-board';
import { useStage } from '../../parts/use-stage';
import { useWidth } from '../../parts/use-width';
import { capital } from '../capital';
import { DrawPockets } from './draw-pockets';
import { commonScale, flatOf } from './drawing-scale';
import { EqualVolume } from './equal-volume';
import { type PocketGroup, pocketGroups } from './pocket-groups';
import { PocketSide } from './pocket-side';
import { flatWords, pairWords } from './pocket-words';
import { PocketsHow } from './pockets-how';
import { ResponseChart } from './response-chart';
import './pockets.css';

/** The sealed pockets of the option: left and right side by side, and what that does to the sound. */
export default function PocketsSheet({ board }: { board: Board }) {
  const stage = useStage(board);
  const { option } = board;
  if (!stage || !option) return <p className="quiet-text">There is no option on the board.</p>;
  if (!option.pockets?.length)
    return (
      <div className="pockets-sheet">
        <p className="quiet-text">
          {option.speakers.some(({ mount }) => mount)
            ? 'No sealed pocket is drawn in this option yet. One starts as a rectangle round its ' +
              'speaker, mirrored for the twin; then draw it as the car lets you.'
            : 'A sealed pocket is drawn round a speaker on a panel, and none stands on one here.'}
        </p>
        <DrawPockets option={option} />
        <PocketsHow />
      </div>
    );
  return <Pockets stage={stage} option={option} />;
}

function Pockets({ stage, option }: { stage: Stage; option: PlanOption }) {
  const [chosen, setChosen] = useState('');
  const { cabin } = stage;
  const study = useMemo(() => pocketsOf({ cabin, option }), [cabin, option]);
  const groups = useMemo(() => pocketGroups(option, study), [option, study]);
  const group = groups.find(({ id }) => id === chosen) ?? groups[0];
  if (!group) return null;
  return (
    <div className="pockets-sheet">
      {groups.length > 1 && (
        <SelectField
          className="pocket-choice"
          label="Pockets of"
          value={group.id}
          choices={groups.map(({ id, title }) => ({ value: id, label: title }))}
          onChange={setChosen}
        />
      )}
      <GroupOf key={group.id} stage={stage} option={option} group={group} />
      <details className="sheet-more">
        <summary>Pockets for other speakers</summary>
        <DrawPockets option={option} />
      </details>
      <PanelCautions of="pockets" panels={group.pockets.map(({ pocket }) => pocket.panel)} />
      <PocketsHow />
    </div>
  );
}

interface GroupOfProps {
  stage: Stage;
  option: PlanOption;
  group: PocketGroup;
}

function GroupOf({ stage, option, group }: GroupOfProps) {
  const { cabin } = stage;
  const { pockets, pair } = group;
  const locked = useLocked();
  const unit = useSession((session) => session.lengthUnit);
  const [box, width] = useWidth<HTMLDivElement>(600);
  const studies = useMemo(() => pockets.map(({ study }) => study), [pockets]);
  const flats = pockets.map(({ pocket }) => {
    const panel = cabin.panels.find(({ id }) => id === pocket.panel);
    return panel ? flatOf(panel) : null;
  });
  const columns = pockets.length > 1 && width >= TWO_COLUMNS ? 2 : 1;
  const column = (width - (columns - 1) * COLUMN_GAP) / columns;
  const scale = commonScale(
    flats.filter((flat) => flat !== null),
    Math.min(column, WIDEST),
  );
  const words = [...(pair ? pairWords(pair) : []), flatWords(studies)].filter(
    (text) => text !== null,
  );
  const reasons = pair && !pair.compared ? plainReasons(pair.reasons, option.speakers) : [];
  return (
    <>
      <div className="sheet-split">
        <div>
          <ul className="sheet-words">
            {words.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
          {reasons.length > 0 && <p className="footnote">{reasons.join(' ')}</p>}
          <EqualVolume
            option={option}
            cabin={cabin}
            pockets={pockets}
            unit={unit}
            locked={locked}
          />
        </div>
        <ResponseChart studies={studies} pair={pair} />
      </div>
      <UnitsOf option={option} group={group} />
      <div className="pocket-sides" data-columns={columns} ref={box}>
        {pockets.map((drawn, i) => (
          <PocketSide
            key={drawn.pocket.id}
            option={option}
            drawn={drawn}
            other={pockets.find((one) => one !== drawn) ?? null}
            cabin={cabin}
            flat={flats[i] ?? null}
            scale={scale}
            unit={unit}
            locked={locked}
          />
        ))}
      </div>
    </>
  );
}

/** Side by side from here on, and no drawing wider than this, pixels. */
const TWO_COLUMNS = 540;
const COLUMN_GAP = 20;
const WIDEST = 620;

/** fs, Qts and Vas: once for a tied pair or speakers alike, else of each. */
function UnitsOf({ option, group }: { option: PlanOption; group: PocketGroup }) {
  const ids = group.pockets.flatMap(({ pocket }) => pocket.speakers);
  const speakers = option.speakers.filter(({ id }) => ids.includes(id));
  const shown = speakers.filter(
    (one, i) =>
      one.pair === undefined ||
      (option.untied ?? []).includes(one.pair) ||
      speakers.findIndex(({ pair }) => pair === one.pair) === i,
  );
  return shown.map((speaker) => {
    const both = shown.length < speakers.length;
    const name = speakerName(speaker, option.speakers);
    return (
      <fieldset key={speaker.id} className="pocket-unit">
        <legend>
          {both
            ? 'The speaker on both sides, from its own sheet'
            : `${capital(name)}, from its own sheet`}
        </legend>
        <DriveUnitFields optionId={option.id} speaker={speaker} name={name} />
      </fieldset>
    );
  });
}
