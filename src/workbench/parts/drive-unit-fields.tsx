import { useState } from 'react';
import type { DriveUnit, SpeakerInput } from '../../geometry';
import { setSmallSignal } from '../../plan/edits';
import { planStore } from '../../store';
import { type FieldKind, frequencyKind, numberKind } from './field-kind';
import { NumberField, type NumberSink } from './number-field';
import { planSink } from './plan-sink';
import { useLocked } from './use-board';

/** Of a speaker: more than any has. Choices of ours, to catch what was mistyped. */
const FIELDS: readonly { key: keyof DriveUnit; label: string; kind: FieldKind; max: number }[] = [
  { key: 'resonanceHz', label: 'fs', kind: { ...frequencyKind, step: 1 }, max: 20_000 },
  { key: 'q', label: 'Qts', kind: numberKind('', 3, 0.01), max: 20 },
  { key: 'vasLitres', label: 'Vas', kind: numberKind('l', 2, 0.1), max: 2000 },
];
const LEAST = 0.001;

export interface DriveUnitFieldsProps {
  optionId: string;
  speaker: SpeakerInput;
  /** "left midbass". */
  name: string;
}

/**
 * fs, Qts and Vas of a speaker and its tied twin. They go into the plan once all three are given;
 * one emptied takes them out of it, and the other two stay in their fields.
 */
export function DriveUnitFields({ optionId, speaker, name }: DriveUnitFieldsProps) {
  const locked = useLocked();
  const [part, setPart] = useState<{ of: string; values: Partial<DriveUnit> }>();
  const values: Partial<DriveUnit> =
    speaker.smallSignal ?? (part?.of === speaker.id ? part.values : {});
  const undoLabel = `change fs, Qts and Vas of ${name}`;
  const keep = (next: Partial<DriveUnit>) => {
    const { resonanceHz, q, vasLitres } = next;
    setPart({ of: speaker.id, values: next });
    if (resonanceHz === undefined || q === undefined || vasLitres === undefined) {
      if (speaker.smallSignal)
        planStore.edit(undoLabel, setSmallSignal(optionId, speaker.id, null));
    } else
      planStore.edit(
        undoLabel,
        setSmallSignal(optionId, speaker.id, { ...speaker.smallSignal, resonanceHz, q, vasLitres }),
      );
  };
  const sinkOf = (key: keyof DriveUnit): NumberSink => {
    const whole = speaker.smallSignal;
    if (!whole) return { commit: (value) => keep({ ...values, [key]: value }) };
    return planSink(undoLabel, (value) =>
      setSmallSignal(optionId, speaker.id, { ...whole, [key]: value }),
    );
  };
  return (
    <div className="fields fields-3">
      {FIELDS.map(({ key, label, kind, max }) => (
        <NumberField
          key={key}
          label={label}
          value={values[key] ?? null}
          kind={kind}
          min={LEAST}
          max={max}
          readOnly={locked}
          sink={sinkOf(key)}
          onClear={() => keep({ ...values, [key]: undefined })}
        />
      ))}
    </div>
  );
}
