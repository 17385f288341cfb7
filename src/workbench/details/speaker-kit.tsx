import type { Role, SpeakerBody } from '../../geometry';
import { bodyFor, GENERIC_BODIES, genericBody, ROLE_HABITS } from '../../plan/bodies';
import { changeSpeaker } from '../../plan/edits';
import { ROLES, roleName } from '../../plan/names';
import { planStore, useSession } from '../../store';
import { type FieldKind, frequencyKind, lengthKind, numberKind } from '../parts/field-kind';
import { NumberField } from '../parts/number-field';
import { planSink } from '../parts/plan-sink';
import { SelectField } from '../parts/select-field';
import { useLocked } from '../parts/use-board';
import type { SpeakerPartProps } from './speaker-details';

const OWN = 'own drawing';
const LITRES = numberKind('l', 2, 0.1);

/** What the speaker is: role, size, band, body. */
export function SpeakerKit({ optionId, speaker, name }: SpeakerPartProps) {
  const unit = useSession((session) => session.lengthUnit);
  const locked = useLocked();
  const undoLabel = `change ${name}`;
  const change = (fields: Parameters<typeof changeSpeaker>[2]) =>
    changeSpeaker(optionId, speaker.id, fields);
  const band = speaker.bandHz ?? ROLE_HABITS[speaker.role].bandHz;
  const body = speaker.body ?? fallbackBody(speaker.role);
  const length = lengthKind(unit);
  const bodyField = (label: string, key: 'flange' | 'cutout' | 'depth') => (
    <NumberField
      label={label}
      value={speaker.body?.[key] ?? null}
      placeholder={length.show(body[key])}
      kind={length}
      min={1}
      max={1000}
      readOnly={locked}
      sink={planSink(undoLabel, (value) => change({ body: { ...body, [key]: value } }))}
    />
  );
  const bandField = (label: string, index: 0 | 1) => (
    <NumberField
      label={label}
      value={speaker.bandHz?.[index] ?? null}
      placeholder={frequencyKind.show(band[index])}
      kind={stepFor(band[index])}
      min={index === 0 ? 10 : band[0]}
      max={index === 0 ? band[1] : 40000}
      readOnly={locked}
      sink={planSink(undoLabel, (value) =>
        change({ bandHz: index === 0 ? [value, band[1]] : [band[0], value] }),
      )}
    />
  );

  return (
    <section aria-labelledby="kit-head">
      <h3 id="kit-head">What it is</h3>
      <div className="fields fields-2">
        <SelectField
          label="Role"
          value={speaker.role}
          disabled={locked}
          choices={ROLES.map((value) => ({ value, label: roleName(value) }))}
          onChange={(role) => planStore.edit(undoLabel, change({ role: role as Role }))}
        />
        <SelectField
          label="Body"
          value={sameBody(speaker.body, speaker.diaphragm) ?? OWN}
          disabled={locked}
          choices={[
            { value: OWN, label: OWN },
            ...GENERIC_BODIES.map((generic) => ({ value: generic.id, label: generic.name })),
          ]}
          onChange={(id) => {
            const generic = genericBody(id);
            if (!generic) return;
            const { diaphragm } = generic;
            planStore.edit(undoLabel, change({ diaphragm, body: bodyFor(generic) }));
          }}
        />
        {bandField('Plays from', 0)}
        {bandField('up to', 1)}
        <NumberField
          label="Diaphragm"
          value={speaker.diaphragm ?? null}
          kind={length}
          min={1}
          max={1000}
          readOnly={locked}
          onClear={() => planStore.edit(undoLabel, change({ diaphragm: null }))}
          sink={planSink(undoLabel, (diaphragm) => change({ diaphragm }))}
        />
        {bodyField('Flange', 'flange')}
        {bodyField('Cut-out', 'cutout')}
        {bodyField('Depth', 'depth')}
        <NumberField
          label="Airspace it wants"
          value={speaker.body?.airspaceLitres ?? null}
          placeholder="not entered"
          kind={LITRES}
          min={0.01}
          max={10_000}
          readOnly={locked}
          onClear={() => {
            const { airspaceLitres: _, ...rest } = body;
            planStore.edit(undoLabel, change({ body: rest }));
          }}
          sink={planSink(undoLabel, (value) =>
            change({ body: { ...body, airspaceLitres: value } }),
          )}
        />
      </div>
      <p className="footnote">
        Common bodies are typical values: take yours from its drawing. Depth is that behind its
        flange.
      </p>
    </section>
  );
}

/** A step that feels alike at 50 Hz and at 5 kHz: about a fiftieth. */
function stepFor(hz: number): FieldKind {
  const step = hz >= 5000 ? 100 : hz >= 1000 ? 50 : hz >= 200 ? 10 : 1;
  return { ...frequencyKind, step };
}

function fallbackBody(role: Role): SpeakerBody {
  const generic = genericBody(ROLE_HABITS[role].sizes[0] ?? '100');
  return generic ? bodyFor(generic) : { flange: 100, cutout: 90, depth: 50 };
}

/** The generic body a speaker still is, to the mm; null once anything differs. */
function sameBody(body: SpeakerBody | undefined, diaphragm: number | undefined): string | null {
  const found = GENERIC_BODIES.find((generic) => {
    const { flange, cutout, depth } = bodyFor(generic);
    return (
      body?.flange === flange &&
      body.cutout === cutout &&
      body.depth === depth &&
      generic.diaphragm === diaphragm
    );
  });
  return found?.id ?? null;
}
