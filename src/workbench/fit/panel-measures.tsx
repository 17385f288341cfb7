import { useId } from 'react';
import type { Panel } from '../../geometry';
import { setPanelMeasure } from '../../plan/edits';
import { formatLength } from '../../plan/units';
import { planStore, usePlan, useSession } from '../../store';
import { type FieldKind, lengthKind, numberKind } from '../parts/field-kind';
import { withArticle } from '../parts/names';
import { NumberField } from '../parts/number-field';
import { planSink } from '../parts/plan-sink';
import { useLocked } from '../parts/use-board';
import { litreWords } from './fit-words';
import './fit.css';

/** Deeper or roomier than anything behind a car's trim; as the plan's own limits have it. */
const MOST_DEPTH = 1000;
const MOST_LITRES = 10_000;

const LITRES: FieldKind = numberKind('l', 2, 0.1);

/** What is free behind a panel: as usual, or as measured in this car. */
export function PanelMeasures({ panel }: { panel: Panel }) {
  const unit = useSession((session) => session.lengthUnit);
  const own = usePlan((state) => state.plan.cabin.measured?.[panel.id]);
  const locked = useLocked();
  const hintId = useId();
  const usual = { ...panel, ...panel.usual };
  const name = withArticle(panel.name);
  const label = `measure behind ${name}`;
  const change = (fields: Parameters<typeof setPanelMeasure>[1]) =>
    setPanelMeasure(panel.id, fields);
  const usualWords = (value: number | null, show: (value: number) => string) =>
    value === null ? 'Usual: not known.' : `Usual: ${show(value)}.`;
  const depth = (mm: number) => formatLength(mm, unit);

  const field = (
    title: string,
    key: 'depthBehind' | 'airspaceBehind',
    kind: FieldKind,
    max: number,
    show: (value: number) => string,
  ) => (
    <NumberField
      label={title}
      value={own?.[key] ?? null}
      placeholder={usual[key] === null ? undefined : kind.show(usual[key])}
      kind={kind}
      min={0}
      max={max}
      readOnly={locked}
      onClear={() => planStore.edit(label, change({ [key]: null }))}
      hint={
        <>
          {own?.[key] === undefined ? 'Not measured. ' : 'Measured. '}
          {usualWords(usual[key], show)}
        </>
      }
      sink={planSink(label, (value) => change({ [key]: value }))}
    />
  );
  return (
    <div className="panel-measures">
      <div className="fields fields-2">
        {field('Depth behind', 'depthBehind', lengthKind(unit), MOST_DEPTH, depth)}
        {field('Airspace behind', 'airspaceBehind', LITRES, MOST_LITRES, litreWords)}
      </div>
      {own && (
        <button
          type="button"
          disabled={locked}
          aria-describedby={hintId}
          onClick={() => planStore.edit(`usual depth behind ${name}`, change(null))}
        >
          Back to the usual
        </button>
      )}
      <p className="footnote" id={hintId}>
        From the front of {name} straight back to the first thing in the way. The two sides of a car
        are measured each for itself: they are rarely alike. What is usual is typical of such cars,
        from memory.
      </p>
    </div>
  );
}
