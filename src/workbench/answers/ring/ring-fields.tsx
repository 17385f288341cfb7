import { type RingInput, type SpeakerInput, usualRing } from '../../../geometry';
import { type RingFields as Fields, setRing } from '../../../plan/edits';
import { planStore, useSession } from '../../../store';
import { type FieldKind, lengthKind, numberKind } from '../../parts/field-kind';
import { NumberField } from '../../parts/number-field';
import { planSink } from '../../parts/plan-sink';
import { SelectField } from '../../parts/select-field';

export interface RingFieldsProps {
  optionId: string;
  speaker: SpeakerInput;
  /** "mids", "left mid": whose ring, for undo. */
  name: string;
  locked: boolean;
}

/** Longest measure of a ring, mm. */
const LONGEST = 1200;

/** The measures of a ring; those left empty follow from the speaker's body, and are shown as that. */
export function RingFields({ optionId, speaker, name, locked }: RingFieldsProps) {
  const unit = useSession((session) => session.lengthUnit);
  const { ring = {}, body } = speaker;
  if (!body) return null;
  const length = lengthKind(unit);
  const full = usualRing(body, ring);
  const change = (fields: Fields) => setRing(optionId, speaker.id, fields);
  const label = `change the ring of the ${name}`;
  const field = (
    title: string,
    key: Exclude<keyof Fields, 'seat'>,
    usual: number,
    kind: FieldKind = length,
    [min, max]: readonly [number, number] = [0.1, LONGEST],
  ) => (
    <NumberField
      label={title}
      value={ring[key] ?? null}
      kind={kind}
      min={min}
      max={max}
      placeholder={kind.show(usual)}
      readOnly={locked}
      sink={planSink(label, (value) => change({ [key]: value }))}
      onClear={() => planStore.edit(label, change({ [key]: null }))}
    />
  );
  return (
    <fieldset className="ring-fields">
      <legend>{`Ring of the ${name}`}</legend>
      <div className="fields">
        {field('Outside', 'outer', full.outer)}
        {field('Bore', 'bore', full.bore)}
        {field('Least thickness', 'leastThickness', full.leastThickness, length, [0.1, 100])}
        {field('Rim radius', 'rimRadius', full.rimRadius, length, [0, 100])}
        {field('Screw circle', 'screwCircle', full.screws?.circle ?? 0)}
        {field('Screws', 'screws', full.screws?.count ?? 0, SCREWS, [2, 24])}
        <SelectField
          label="Flange"
          className="ring-flange"
          value={full.seat.kind}
          disabled={locked}
          choices={[
            { value: 'proud', label: 'on the ring' },
            { value: 'sunk', label: 'let into it' },
          ]}
          onChange={(seat) =>
            planStore.edit(label, change({ seat: seat === 'sunk' ? 'sunk' : null }))
          }
        />
        {full.seat.kind === 'sunk' &&
          field('Flange thickness', 'flangeThickness', recessDepth(full), length, [0.1, 100])}
      </div>
      <p className="footnote">
        Empty fields follow from the speaker’s body, as shown in grey. The rim’s radius of 3.2 mm is
        what UN R21 asks for where a head can reach a hard edge, by secondary sources: advice, no
        approval.
      </p>
    </fieldset>
  );
}

const SCREWS = numberKind('', 0, 1);

const recessDepth = ({ seat }: RingInput): number => (seat.kind === 'sunk' ? seat.depth : 0);
