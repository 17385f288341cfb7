import { pairName, seatName } from '../../../plan/names';
import { useSession } from '../../../store';
import { angleKind, lengthKind, numberKind } from '../../parts/field-kind';
import { NumberField } from '../../parts/number-field';
import { Segments } from '../../parts/segments';
import { SelectField } from '../../parts/select-field';
import {
  type AimChoice,
  listenersOf,
  panelsFor,
  type SearchDraft,
  type SearchGround,
  type SearchPair,
  usualStep,
  WHOLE_STAGE,
} from './draft';
import { type Measure, SPOT_MEASURES } from './found';
import { WANT_NAMES } from './measure-words';
import { type PanelCouple, panelCouples } from './panel-couples';
import { changeDraft } from './search-store';

const weightKind = numberKind('', 2, 0.1);
const countKind = numberKind('', 0, 1);

export interface RequestFieldsProps {
  draft: SearchDraft;
  ground: SearchGround;
  scope: string;
  /** The pairs the scope means. */
  asked: readonly SearchPair[];
}

/** Where to look, how the speakers look out from there, and what a spot must do. */
export function MainFields({ draft, ground, asked }: RequestFieldsProps) {
  const seats = ground.cabin.seats;
  const turned = draft.aim === 'between' || draft.aim.startsWith('seat:');
  return (
    <>
      {asked.map((pair) => (
        <PanelTicks key={pair.pair} draft={draft} ground={ground} pair={pair} />
      ))}
      <div className="search-fields">
        <SelectField
          label="Aim"
          value={draft.aim}
          choices={[
            { value: 'own', label: 'as they are aimed' },
            ...seats.map(({ id }) => ({ value: `seat:${id}`, label: `at the ${seatName(id)}` })),
            { value: 'between', label: 'between the listeners' },
            { value: 'normal', label: 'along the panel’s normal' },
          ]}
          onChange={(aim) => changeDraft({ aim: aim as AimChoice })}
        />
        {turned && (
          <NumberField
            label="Off the normal, at most"
            value={draft.withinDeg}
            kind={angleKind}
            min={0}
            max={180}
            placeholder="any"
            sink={{ commit: (withinDeg) => changeDraft({ withinDeg }) }}
            onClear={() => changeDraft({ withinDeg: null })}
          />
        )}
      </div>
      <fieldset className="search-musts">
        <legend>A spot must</legend>
        <label className="tick">
          <input
            type="checkbox"
            checked={draft.fits}
            onChange={(event) => changeDraft({ fits: event.target.checked })}
          />
          fit the speaker
        </label>
        <label className="tick">
          <input
            type="checkbox"
            checked={draft.free}
            onChange={(event) => changeDraft({ free: event.target.checked })}
          />
          have a free line to every listener
        </label>
        <div className="search-fields">
          <NumberField
            label="Off the axis, at most"
            value={draft.maxOffAxisDeg}
            kind={angleKind}
            min={0}
            max={180}
            placeholder="any"
            sink={{ commit: (maxOffAxisDeg) => changeDraft({ maxOffAxisDeg }) }}
            onClear={() => changeDraft({ maxOffAxisDeg: null })}
          />
          <NumberField
            label="Pillar hides more by, at most"
            value={draft.maxAddedPillarViewDeg}
            kind={angleKind}
            min={0}
            max={90}
            placeholder="any"
            sink={{ commit: (maxAddedPillarViewDeg) => changeDraft({ maxAddedPillarViewDeg }) }}
            onClear={() => changeDraft({ maxAddedPillarViewDeg: null })}
          />
        </div>
        <p className="footnote">
          Keep-clear zones are never given up. What a pillar hides is reckoned after UN R125; it is
          not type approval.
        </p>
      </fieldset>
    </>
  );
}

function PanelTicks({
  draft,
  ground,
  pair,
}: {
  draft: SearchDraft;
  ground: SearchGround;
  pair: SearchPair;
}) {
  const ticked = panelsFor(draft, pair, ground);
  const couples = panelCouples(ground.cabin.panels);
  const set = (panels: readonly string[]) =>
    changeDraft({ panels: { ...draft.panels, [pair.pair]: panels } });
  const usual = () => {
    const { [pair.pair]: _, ...rest } = draft.panels;
    changeDraft({ panels: rest });
  };
  const tick = ({ id, name, both, central }: PanelCouple) => (
    <label key={id} className="tick">
      <input
        type="checkbox"
        checked={ticked.includes(id)}
        disabled={!both && draft.mirrored}
        onChange={(event) =>
          set(event.target.checked ? [...ticked, id] : ticked.filter((other) => other !== id))
        }
      />
      <span>
        {name}
        {central && <span className="quiet-text">, side by side</span>}
      </span>
    </label>
  );
  const own = couples.filter(({ id, roles }) => roles.includes(pair.role) || ticked.includes(id));
  const others = couples.filter((couple) => !own.includes(couple));
  return (
    <fieldset className="search-panels">
      <legend>{`Panels for the ${pairName(pair.pair, ground.option.speakers)}, left and right as one`}</legend>
      <div className="search-ticks">{own.map(tick)}</div>
      {others.length > 0 && (
        <details>
          <summary>{`${others.length} other panels, not usual for them`}</summary>
          <div className="search-ticks">{others.map(tick)}</div>
        </details>
      )}
      <div className="word-buttons">
        <button type="button" disabled={!draft.panels[pair.pair]} onClick={usual}>
          The usual ones
        </button>
        <button type="button" onClick={() => set([])}>
          None
        </button>
      </div>
    </fieldset>
  );
}

/** Who listens, what is wanted how much, and how finely it is looked for. */
export function MoreFields({ draft, ground, scope }: RequestFieldsProps) {
  const unit = useSession((session) => session.lengthUnit);
  const length = lengthKind(unit);
  return (
    <>
      <Segments
        label="Left and right"
        value={draft.mirrored ? 'mirrored' : 'free'}
        choices={[
          { value: 'mirrored', label: 'Mirrored spots' },
          { value: 'free', label: 'Left and right each on its own' },
        ]}
        onChange={(value) => changeDraft({ mirrored: value === 'mirrored' })}
      />
      <Listeners draft={draft} ground={ground} />
      <fieldset className="search-wants">
        <legend>What is wanted, by weight; 0 does not count</legend>
        <div className="search-fields">
          {SPOT_MEASURES.map((aim) => (
            <WantField
              key={aim}
              measure={aim}
              value={draft.want[aim]}
              change={(weight) => changeDraft({ want: { ...draft.want, [aim]: weight } })}
            />
          ))}
          {scope === WHOLE_STAGE && (
            <WantField
              measure="pathSpread"
              value={draft.pathSpread}
              change={(pathSpread) => changeDraft({ pathSpread })}
            />
          )}
        </div>
      </fieldset>
      <div className="search-fields">
        <NumberField
          label="Grid"
          value={draft.step ?? usualStep(scope)}
          kind={length}
          min={5}
          max={500}
          sink={{ commit: (step) => changeDraft({ step }) }}
          onClear={() => changeDraft({ step: null })}
        />
        <NumberField
          label="Answers"
          value={draft.answers}
          kind={countKind}
          min={1}
          max={20}
          sink={{ commit: (answers) => changeDraft({ answers: Math.round(answers) }) }}
        />
        <NumberField
          label="Apart by at least"
          value={draft.apart}
          kind={length}
          min={0}
          max={2000}
          sink={{ commit: (apart) => changeDraft({ apart }) }}
        />
      </div>
    </>
  );
}

function WantField({
  measure,
  value,
  change,
}: {
  measure: Measure;
  value: number;
  change: (weight: number) => void;
}) {
  return (
    <NumberField
      label={WANT_NAMES[measure]}
      value={value}
      kind={weightKind}
      min={0}
      max={100}
      sink={{ commit: change }}
    />
  );
}

function Listeners({ draft, ground }: { draft: SearchDraft; ground: SearchGround }) {
  const listening = listenersOf(draft, ground);
  return (
    <fieldset className="search-listeners">
      <legend>Listeners, by weight</legend>
      {ground.cabin.seats.map(({ id }) => {
        const own = listening.find((one) => one.id === id);
        const others = listening.filter((one) => one.id !== id);
        return (
          <div key={id} className="search-listener">
            <label className="tick">
              <input
                type="checkbox"
                checked={own !== undefined}
                // The last one stays: without a listener there is nothing to hear.
                disabled={own !== undefined && others.length === 0}
                onChange={(event) =>
                  changeDraft({
                    seats: event.target.checked ? [...others, { id, weight: 1 }] : others,
                  })
                }
              />
              {seatName(id)}
            </label>
            {own && (
              <NumberField
                label={`Weight of the ${seatName(id)}`}
                value={own.weight}
                kind={weightKind}
                min={0.1}
                max={100}
                sink={{
                  commit: (weight) =>
                    changeDraft({
                      seats: listening.map((one) => (one.id === id ? { id, weight } : one)),
                    }),
                }}
              />
            )}
          </div>
        );
      })}
    </fieldset>
  );
}
