import { useState } from 'react';
import type { SpeakerInput, Stage } from '../../../geometry';
import { isTied, setRing } from '../../../plan/edits';
import { pairName, speakerName } from '../../../plan/names';
import type { PlanOption } from '../../../plan/types';
import { formatNumber } from '../../../plan/units';
import { planStore, useSession } from '../../../store';
import { PanelCautions } from '../../cautions/panel-cautions';
import { sentence } from '../../parts/check-number';
import { type Board, useLocked } from '../../parts/use-board';
import { useStage } from '../../parts/use-stage';
import { useWidth } from '../../parts/use-width';
import { capital } from '../capital';
import { GroupSelect } from '../group-select';
import type { Group } from '../groups';
import { useGroup } from '../use-group';
import { ringAt, wedgeOf } from './ring-board';
import { RingFields } from './ring-fields';
import { RingHow } from './ring-how';
import { RingSide } from './ring-side';
import { saveThreeMf } from './save-rings';
import './ring.css';

/** The wedge rings that turn the panels' normals into the aims: measured, checked, drawn, saved. */
export default function RingSheet({ board }: { board: Board }) {
  const stage = useStage(board);
  const { option } = board;
  if (!stage || !option) return <p className="quiet-text">There is no option on the board.</p>;
  if (option.speakers.length === 0)
    return <p className="quiet-text">No speaker stands in this option yet. Add a pair first.</p>;
  return <Rings stage={stage} option={option} />;
}

function Rings({ stage, option }: { stage: Stage; option: PlanOption }) {
  const { speakers } = stage.option;
  const ringed = speakers.find(({ ring }) => ring);
  const { groups, group, choose } = useGroup(speakers, ringed?.pair ?? ringed?.id ?? null);
  if (!group) return null;
  return (
    <div className="ring-sheet">
      <GroupSelect speakers={speakers} groups={groups} value={group.id} onChange={choose} />
      <OfGroup key={group.id} stage={stage} option={option} group={group} />
      <PanelCautions of="rings" panels={group.members.flatMap(({ mount }) => mount?.panel ?? [])} />
      <RingHow />
    </div>
  );
}

/** Side by side from here on, pixels. */
const TWO_COLUMNS = 620;
const COLUMN_GAP = 20;
const WIDEST = 560;

interface OfGroupProps {
  stage: Stage;
  option: PlanOption;
  group: Group;
}

function OfGroup({ stage, option, group }: OfGroupProps) {
  const { speakers } = stage.option;
  const locked = useLocked();
  const unit = useSession((session) => session.lengthUnit);
  const [box, width] = useWidth<HTMLDivElement>(700);
  const [said, setSaid] = useState('');
  const members: readonly SpeakerInput[] = group.members;
  const tied = members.length > 1 && isTied(option, members[0]?.pair);
  const name = members.length > 1 ? pairName(group.id, speakers) : nameOf(members[0], speakers);
  const rings = members.flatMap((speaker) => ringAt(stage, speaker) ?? []);
  // With one in the plan too: at a free point, or without a body, there is none to show.
  const bare = members.filter(({ id }) => rings.every(({ speaker }) => speaker.id !== id));
  const ringed = members.filter(({ ring }) => ring);
  const columns = rings.length > 1 && width >= TWO_COLUMNS ? 2 : 1;
  const column = Math.min((width - (columns - 1) * COLUMN_GAP) / columns, WIDEST);
  const made = rings.flatMap(({ answer, speaker }) =>
    answer.ok ? [{ title: speakerName(speaker, speakers), mesh: answer.ring.mesh }] : [],
  );
  const save = async () => {
    const outcome = await saveThreeMf(planStore.getState().plan.title, name, made);
    if (outcome.kind === 'saved') setSaid('Saved.');
    else if (outcome.kind === 'failed')
      setSaid(sentence(`the file could not be written: ${outcome.why}`));
  };
  return (
    <>
      {bare.length > 0 && <PutOn stage={stage} option={option} bare={tied ? members : bare} />}
      {rings.length > 0 &&
        (tied ? members.slice(0, 1) : rings.map(({ speaker }) => speaker)).map((speaker) => (
          <RingFields
            key={speaker.id}
            optionId={option.id}
            speaker={speaker}
            name={tied ? name : nameOf(speaker, speakers)}
            locked={locked}
          />
        ))}
      <div className="ring-sides" data-columns={columns} ref={box}>
        {rings.map((ring) => (
          <RingSide
            key={ring.speaker.id}
            stage={stage}
            ring={ring}
            together={tied ? rings.map(({ speaker }) => speaker) : [ring.speaker]}
            name={nameOf(ring.speaker, speakers)}
            unit={unit}
            width={column}
            locked={locked}
          />
        ))}
      </div>
      {ringed.length > 0 && (
        <div className="row">
          {made.length > 0 && (
            <button type="button" className="primary" onClick={save}>
              {`Save ${made.length > 1 ? 'both rings' : 'the ring'} as 3MF`}
            </button>
          )}
          <button type="button" disabled={locked} onClick={() => takeOff(option, ringed, name)}>
            {`Take the ${name} off ${ringed.length > 1 ? 'their rings' : 'the ring'}`}
          </button>
          <span className="footnote" role="status">
            {said}
          </span>
        </div>
      )}
    </>
  );
}

const nameOf = (speaker: SpeakerInput | undefined, among: readonly SpeakerInput[]): string =>
  speaker ? speakerName(speaker, among) : '';

function takeOff(option: PlanOption, ringed: readonly SpeakerInput[], name: string): void {
  planStore.edit(`take the ${name} off the ring`, (draft) => {
    for (const { id } of ringed) setRing(option.id, id, null)(draft);
  });
}

/** Those that stand on no ring: what one would have to do, and a button to put them on one. */
function PutOn(props: { stage: Stage; option: PlanOption; bare: readonly SpeakerInput[] }) {
  const { stage, option, bare } = props;
  const locked = useLocked();
  const { speakers } = stage.option;
  const sentences = bare.map((speaker) => {
    const who = capital(nameOf(speaker, speakers));
    if (!speaker.mount) return `${who} stands at a free point: a ring needs a panel under it.`;
    if (!speaker.body) return `${who} has no body entered yet: a ring is made round one.`;
    const wedge = wedgeOf(stage, speaker);
    if (wedge === null) return `${who} has no aim with a direction.`;
    return `${who} stands without a ring; one would turn its panel’s normal by ${formatNumber(wedge, 1)}°.`;
  });
  const able = bare.filter(({ ring, mount, body }) => !ring && mount && body);
  return (
    <div className="ring-put-on">
      <ul className="sheet-words">
        {sentences.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      {able.length > 0 && (
        <button
          type="button"
          disabled={locked}
          onClick={() =>
            planStore.edit('put speakers on rings', (draft) => {
              for (const { id } of able) setRing(option.id, id, {})(draft);
            })
          }
        >
          {able.length > 1 ? 'Put both on rings' : 'Put it on a ring'}
        </button>
      )}
    </div>
  );
}
