import type { CabinModel, FlatPanel, Panel } from '../../../geometry';
import { DEEPEST_POCKET } from '../../../geometry';
import { changePocket, mirrorPocket, removePocket } from '../../../plan/edits';
import { speakerName } from '../../../plan/names';
import { THICKEST_WALL } from '../../../plan/pocket-limits';
import type { PlanOption } from '../../../plan/types';
import { formatFrequency, formatNumber, type LengthUnit, NO_VALUE } from '../../../plan/units';
import { planStore, usePlan } from '../../../store';
import { lengthKind } from '../../parts/field-kind';
import { SideMark } from '../../parts/marks';
import { thingName } from '../../parts/names';
import { NumberField } from '../../parts/number-field';
import { plainReasons } from '../../parts/plain-reason';
import { planSink } from '../../parts/plan-sink';
import { SelectField } from '../../parts/select-field';
import { capital } from '../capital';
import { CornerList } from './corner-list';
import { PocketDrawing } from './pocket-drawing';
import type { DrawnPocket } from './pocket-groups';
import { litresWords } from './pocket-words';

export interface PocketSideProps {
  option: PlanOption;
  drawn: DrawnPocket;
  /** The other one of the pair, to be given this one's mirror image. */
  other: DrawnPocket | null;
  cabin: CabinModel;
  flat: FlatPanel | null;
  scale: number;
  unit: LengthUnit;
  locked: boolean;
}

/** One pocket: what it holds and does, its drawing, and everything that can be changed of it. */
export function PocketSide(props: PocketSideProps) {
  const { option, drawn, other, cabin, flat, scale, unit, locked } = props;
  const { pocket, study, name } = drawn;
  const { speakers } = option;
  const panel = cabin.panels.find(({ id }) => id === pocket.panel) ?? null;
  const label = `change the ${name}`;
  const change = (fields: Parameters<typeof changePocket>[2]) =>
    changePocket(option.id, pocket.id, fields);
  const length = lengthKind(unit);
  const told = [...plainReasons(study.reasons, speakers), ...plainReasons(study.misfits, speakers)];
  return (
    <section className="pocket-side" aria-label={capital(name)}>
      <h3>
        {study.side && <SideMark side={study.side} />}
        <span>{`${capital(name)}, ${thingName(cabin, pocket.panel)}`}</span>
      </h3>
      <p className="pocket-net">
        <strong>{study.netLitres === null ? NO_VALUE : litresWords(study.netLitres)}</strong>
        {study.netLitres !== null && (
          <span>
            {`net: ${formatNumber(study.outsideLitres, 1)} outside, less ` +
              `${formatNumber(study.wallLitres, 1)} of walls and ` +
              `${formatNumber(study.speakerLitres, 1)} of speaker`}
          </span>
        )}
      </p>
      {study.box && (
        <dl className="pocket-facts">
          <Fact term="fc" value={formatFrequency(Math.round(study.box.resonanceHz))} />
          <Fact term="Qtc" value={formatNumber(study.box.q, 2)} />
          <Fact term="−3 dB" value={formatFrequency(Math.round(study.box.halfPowerHz))} />
          <Fact
            term="peak"
            value={
              study.box.peak && study.box.peak.levelDb >= 0.05
                ? `${formatNumber(study.box.peak.levelDb, 1)} dB`
                : 'none'
            }
          />
        </dl>
      )}
      {panel && <BehindPanel panel={panel} />}
      {told.length > 0 && (
        <ul className="pocket-told">
          {told.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      )}
      {panel && flat && (
        <div className="pocket-paper">
          <PocketDrawing
            optionId={option.id}
            drawn={drawn}
            panel={panel}
            flat={flat}
            speakers={speakers}
            scale={scale}
            unit={unit}
            locked={locked}
          />
        </div>
      )}
      <div className="fields fields-3">
        <NumberField
          label="Depth"
          value={pocket.depth}
          kind={length}
          min={1}
          max={DEEPEST_POCKET}
          readOnly={locked}
          sink={planSink(label, (depth) => change({ depth }))}
        />
        <NumberField
          label="Walls"
          value={pocket.wall ?? 0}
          kind={length}
          min={0}
          max={THICKEST_WALL}
          readOnly={locked}
          sink={planSink(label, (wall) => change({ wall }))}
        />
        <SelectField
          label="Lies"
          value={pocket.lies ?? 'behind'}
          disabled={locked}
          choices={[
            { value: 'behind', label: 'behind' },
            { value: 'before', label: 'before' },
          ]}
          onChange={(lies) =>
            planStore.edit(label, change({ lies: lies === 'before' ? 'before' : 'behind' }))
          }
        />
      </div>
      {panel && flat && (
        <CornerList optionId={option.id} drawn={drawn} flat={flat} unit={unit} locked={locked} />
      )}
      <Whose option={option} drawn={drawn} panel={panel} locked={locked} />
      <div className="row small-buttons">
        {other && (
          <button
            type="button"
            disabled={locked}
            onClick={() =>
              planStore.edit(
                `mirror the ${name}`,
                mirrorPocket(option.id, pocket.id, other.pocket.id),
              )
            }
          >
            {`Mirror this outline onto the ${other.study.side ?? 'other'}`}
          </button>
        )}
        <button
          type="button"
          disabled={locked}
          onClick={() => planStore.edit(`remove the ${name}`, removePocket(option.id, pocket.id))}
        >
          Remove this pocket
        </button>
      </div>
    </section>
  );
}

const Fact = ({ term, value }: { term: string; value: string }) => (
  <div>
    <dt>{term}</dt>
    <dd>{value}</dd>
  </div>
);

/** What the plan has for the whole of the space behind, to compare. */
function BehindPanel({ panel }: { panel: Panel }) {
  const measured = usePlan((state) => state.plan.cabin.measured?.[panel.id]);
  if (panel.airspaceBehind === null) return null;
  const how = measured?.airspaceBehind === undefined ? 'as is usual there' : 'as measured';
  return (
    <p className="footnote">
      {`Behind the panel as a whole: ${formatNumber(panel.airspaceBehind, 1)} litres, ${how}.`}
    </p>
  );
}

/** The speakers in it: those on its panel, and whoever is in it already. */
function Whose(props: {
  option: PlanOption;
  drawn: DrawnPocket;
  panel: Panel | null;
  locked: boolean;
}) {
  const { option, drawn, panel, locked } = props;
  const { pocket, name } = drawn;
  const near = option.speakers.filter(
    ({ id, mount }) => pocket.speakers.includes(id) || (panel && mount?.panel === panel.id),
  );
  if (near.length === 0) return <p className="footnote">No speaker stands on this panel.</p>;
  return (
    <fieldset className="pocket-whose">
      <legend>Speakers in it</legend>
      {near.map((speaker) => {
        const inIt = pocket.speakers.includes(speaker.id);
        return (
          <label key={speaker.id} className="tick">
            <input
              type="checkbox"
              checked={inIt}
              disabled={locked}
              onChange={() =>
                planStore.edit(
                  `change the speakers in the ${name}`,
                  changePocket(option.id, pocket.id, {
                    speakers: inIt
                      ? pocket.speakers.filter((id) => id !== speaker.id)
                      : [...pocket.speakers, speaker.id],
                  }),
                )
              }
            />
            {capital(speakerName(speaker, option.speakers))}
          </label>
        );
      })}
    </fieldset>
  );
}
