import type { Panel } from '../../geometry';
import { mountSpeaker, placeSpeakerAt } from '../../plan/edits';
import { formatLength } from '../../plan/units';
import { planStore, useSession } from '../../store';
import { fromLength, panelLength, toLength } from '../parts/along-panel';
import { lengthKind, numberKind } from '../parts/field-kind';
import { NumberField } from '../parts/number-field';
import { planSink } from '../parts/plan-sink';
import { SelectField } from '../parts/select-field';
import { useLocked } from '../parts/use-board';
import { VectorFields } from '../parts/vector-fields';
import { mountChoices, spotOnPanel } from './mount-choices';
import type { SpeakerPartProps } from './speaker-details';

const FREE = 'free point';
/** A panel's own u or v. */
const SHARE = numberKind('', 4, 0.01);

/** Where the speaker stands: on a panel, or at a point of its own. */
export function SpeakerPlace(props: SpeakerPartProps) {
  const { board, optionId, speaker, name } = props;
  const unit = useSession((session) => session.lengthUnit);
  const locked = useLocked();
  const placed = board.result?.placed.find((p) => p.speaker === speaker.id);
  const panel = board.cabin.panels.find(({ id }) => id === speaker.mount?.panel);

  function choose(id: string): void {
    if (!placed) return;
    const next = board.cabin.panels.find((p) => p.id === id);
    if (id === FREE) {
      planStore.edit(`free ${name}`, placeSpeakerAt(optionId, speaker.id, placed.position));
    } else if (next) {
      const mount = { panel: id, ...spotOnPanel(next, placed.position) };
      planStore.edit(`move ${name} to the ${next.name}`, mountSpeaker(optionId, speaker.id, mount));
    }
  }

  return (
    <section aria-labelledby="place-head">
      <h3 id="place-head">Where it stands</h3>
      <SelectField
        label="Panel"
        value={speaker.mount?.panel ?? FREE}
        disabled={locked}
        choices={[
          ...mountChoices(board.cabin.panels, speaker.role, panel),
          { group: 'no panel', choices: [{ value: FREE, label: 'a free point' }] },
        ]}
        onChange={choose}
        hint={panel && <BehindPanel panel={panel} />}
      />
      {panel && speaker.mount && <OnPanel {...props} panel={panel} />}
      {!speaker.mount && speaker.position && (
        <VectorFields
          legend="Position"
          value={speaker.position}
          kind={lengthKind(unit)}
          undoLabel={`move ${name}`}
          recipe={(position) => placeSpeakerAt(optionId, speaker.id, position)}
        />
      )}
      {placed && speaker.mount && (
        <p className="footnote">
          That is {placed.position.map((n) => formatLength(n, unit)).join(', ')} from the heel
          point: rearward, to the right, up.
        </p>
      )}
    </section>
  );
}

function OnPanel(props: SpeakerPartProps & { panel: Panel }) {
  const { optionId, speaker, name, panel } = props;
  const unit = useSession((session) => session.lengthUnit);
  const locked = useLocked();
  const { mount } = speaker;
  if (!mount) return null;
  const { u, v, standoff = 0 } = mount;
  const { patch } = panel;
  const length = lengthKind(unit);
  const sink = (change: (value: number) => Partial<typeof mount>) =>
    planSink(`move ${name}`, (value) =>
      mountSpeaker(optionId, speaker.id, { ...mount, ...change(value) }),
    );
  const along = (label: string, direction: 'u' | 'v', across: number, t: number) => (
    <NumberField
      label={label}
      value={toLength(patch, direction, across, t)}
      kind={length}
      min={0}
      max={panelLength(patch, direction, across)}
      readOnly={locked}
      sink={sink((mm) => ({ [direction]: fromLength(patch, direction, across, mm) }))}
    />
  );
  const share = (direction: 'u' | 'v', t: number) => (
    <NumberField
      label={`${direction}, 0 to 1`}
      value={t}
      kind={SHARE}
      min={0}
      max={1}
      readOnly={locked}
      sink={sink((value) => ({ [direction]: value }))}
    />
  );
  return (
    <div className="fields fields-3">
      {along('Along panel', 'u', v, u)}
      {along('Across panel', 'v', u, v)}
      <NumberField
        label="Stand-off"
        value={standoff}
        kind={length}
        min={0}
        max={500}
        readOnly={locked}
        sink={sink((value) => ({ standoff: value }))}
      />
      {share('u', u)}
      {share('v', v)}
    </div>
  );
}

function BehindPanel({ panel }: { panel: Panel }) {
  const unit = useSession((session) => session.lengthUnit);
  if (panel.depthBehind === null) return null;
  return (
    <>
      {panel.usual?.depthBehind === undefined ? 'Usually' : 'Measured:'}{' '}
      {formatLength(panel.depthBehind, unit)} free behind it
      {panel.airspaceBehind !== null && ` and ${panel.airspaceBehind} litres`}
      {panel.usual ? '.' : ': measure the car.'}
    </>
  );
}
