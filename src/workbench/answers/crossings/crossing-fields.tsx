import { type Crossing, type CrossoverInput, crossingsOf } from '../../../geometry';
import { type CrossoverFields, setCrossover } from '../../../plan/edits';
import type { PlanOption } from '../../../plan/types';
import { planStore } from '../../../store';
import { type FieldKind, frequencyKind } from '../../parts/field-kind';
import { NumberField } from '../../parts/number-field';
import { planSink } from '../../parts/plan-sink';
import { SelectField } from '../../parts/select-field';
import { useLocked } from '../../parts/use-board';
import { crossoverWords, FAMILY_NAMES, orderIn, ordersOf } from './crossing-words';

type Family = CrossoverInput['family'];

interface CrossingFieldsProps {
  option: PlanOption;
  crossing: Crossing;
  /** "mids to tweeters" */
  name: string;
}

/** One hand-over's filter: its family, order and frequency, and back to what is proposed. */
export function CrossingFields({ option, crossing, name }: CrossingFieldsProps) {
  const locked = useLocked();
  const { crossover, proposed } = crossing;
  const { below, above, family, order, frequencyHz } = crossover;
  const undoLabel = `change the crossover from ${name}`;
  const change = (fields: Partial<CrossoverFields>) =>
    setCrossover(option.id, below, above, { family, order, frequencyHz, ...fields });
  const instead = proposed ? null : proposalFor(option, crossover);
  return (
    <fieldset className="crossing-fields">
      <legend className="unseen">Crossover from {name}</legend>
      <SelectField
        label="Filter"
        value={family}
        disabled={locked}
        choices={Object.entries(FAMILY_NAMES).map(([value, label]) => ({ value, label }))}
        onChange={(value) => {
          const next = value as Family;
          planStore.edit(undoLabel, change({ family: next, order: orderIn(next, order) }));
        }}
      />
      <SelectField
        label="Order"
        value={String(order)}
        disabled={locked}
        choices={ordersOf(family).map((one) => ({
          value: String(one),
          label: `${one} (${6 * one} dB/oct)`,
        }))}
        onChange={(value) => planStore.edit(undoLabel, change({ order: Number(value) }))}
      />
      <NumberField
        label="Frequency"
        value={frequencyHz}
        kind={stepFor(frequencyHz)}
        min={10}
        max={40000}
        readOnly={locked}
        sink={planSink(undoLabel, (value) => change({ frequencyHz: value }))}
      />
      {proposed ? (
        <p className="crossing-origin">Proposed, where their bands meet.</p>
      ) : (
        <div className="crossing-origin">
          <button
            type="button"
            disabled={locked}
            onClick={() => planStore.edit(undoLabel, setCrossover(option.id, below, above, null))}
          >
            {instead ? 'Use the proposed one again' : 'Take it out'}
          </button>
          <p className="field-hint">
            {instead ? crossoverWords(instead) : 'Their bands do not meet: none is proposed.'}
          </p>
        </div>
      )}
    </fieldset>
  );
}

/** What would be proposed if the plan did not list this one. */
function proposalFor(option: PlanOption, { below, above }: CrossoverInput): CrossoverInput | null {
  const without = option.crossovers?.filter((one) => one.below !== below || one.above !== above);
  const proposal = crossingsOf({ ...option, crossovers: without }).find(
    ({ crossover: one, proposed }) =>
      proposed &&
      ((one.below === below && one.above === above) ||
        (one.below === above && one.above === below)),
  );
  return proposal?.crossover ?? null;
}

/** A step that feels alike at 80 Hz and at 3 kHz: about a fiftieth. */
function stepFor(hz: number): FieldKind {
  const step = hz >= 5000 ? 100 : hz >= 1000 ? 50 : hz >= 200 ? 10 : 1;
  return { ...frequencyKind, step };
}
