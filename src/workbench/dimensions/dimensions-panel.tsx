import { Fragment, useId, useState } from 'react';
import { type DimensionInfo, dimensionInfo, getTemplate, TEMPLATES } from '../../geometry';
import { setDimension, setTemplate, setWheelSide } from '../../plan/edits';
import { usePlan, useSession } from '../../store';
import { sentence } from '../parts/check-number';
import { SelectField } from '../parts/select-field';
import { useBoard, useLocked } from '../parts/use-board';
import { useMedia } from '../parts/use-media';
import { editCabin } from './cabin-edit';
import { DimensionField } from './dimension-field';
import { TapeNote } from './drawing/tape-note';
import { groupsOf } from './groups';
import { inWords, showDimension } from './show-dimension';
import './dimensions.css';

/** The car: its body style, wheel side and every dimension, each with where to hold the tape. */
export function DimensionsPanel() {
  const cabin = usePlan((state) => state.plan.cabin);
  const unit = useSession((state) => state.lengthUnit);
  const { board } = useBoard();
  const locked = useLocked();
  // On a phone the note would cover what is typed: there it stands under its field.
  const narrow = useMedia('(max-width: 719px)');
  const id = useId();
  const [filter, setFilter] = useState('');
  const [shown, setShown] = useState('seatHeight');
  const [refusal, setRefusal] = useState<string | null>(null);

  const template = getTemplate(cabin.template);
  const groups = groupsOf(cabin.template, filter);
  const set = (info: DimensionInfo, value: number | null) =>
    editCabin(
      value === null
        ? `reset ${info.label.toLowerCase()}`
        : `${info.label.toLowerCase()} ${showDimension(info, value, unit)}`,
      setDimension(info.id, value),
    );
  const typical = (info: DimensionInfo): number =>
    template?.dimensions[info.id as keyof typeof template.dimensions] ?? 0;
  const info = dimensionInfo(shown);
  const note = board && info && <TapeNote cabin={board.cabin} info={info} unit={unit} />;

  return (
    <section className="dimensions" aria-label="The car">
      <div className="fields fields-2">
        <SelectField
          label="Body style"
          value={cabin.template}
          disabled={locked}
          choices={[
            ...TEMPLATES.map(({ id: value, name: label }) => ({ value, label })),
            // Only a plan made elsewhere has none; it can be left, not chosen.
            ...(template
              ? []
              : [{ value: cabin.template, label: 'none: panels given one by one' }]),
          ]}
          onChange={(to) => setRefusal(editCabin('change the body style', setTemplate(to)))}
        />
        <SelectField
          label="Steering wheel"
          value={cabin.wheelSide}
          disabled={locked}
          choices={[
            { value: 'left', label: 'on the left' },
            { value: 'right', label: 'on the right' },
          ]}
          onChange={(side) =>
            setRefusal(
              editCabin('change the wheel side', setWheelSide(side === 'right' ? 'right' : 'left')),
            )
          }
        />
      </div>
      {refusal && (
        <p className="notice" role="alert">
          <strong>That change does not go, and the car stays as it was.</strong>
          {sentence(inWords(refusal))}
        </p>
      )}
      {template && (
        <>
          <p className="footnote">
            Dimensions marked “typical” hold a typical value, from memory; measure the car. Sums
            such as 1200+35 may be typed.
          </p>
          {note && !narrow && <div className="dimensions-drawing">{note}</div>}
          <div className="field">
            <label htmlFor={`${id}-filter`}>Find a dimension</label>
            <input
              id={`${id}-filter`}
              type="search"
              autoComplete="off"
              value={filter}
              onChange={(event) => setFilter(event.target.value)}
            />
          </div>
          <p className="unseen" role="status">
            {filter && `${groups.reduce((n, group) => n + group.dimensions.length, 0)} found`}
          </p>
          {groups.length === 0 && <p>{`No dimension is called “${filter}”.`}</p>}
          {groups.map(({ group, dimensions }) => (
            <fieldset key={group} className="dimension-group">
              <legend>{group}</legend>
              {dimensions.map((one) => (
                <Fragment key={one.id}>
                  <DimensionField
                    info={one}
                    unit={unit}
                    value={cabin.dimensions?.[one.id] ?? typical(one)}
                    typical={typical(one)}
                    measured={cabin.dimensions?.[one.id] !== undefined}
                    readOnly={locked}
                    onSet={(value) => set(one, value)}
                    onReset={() => set(one, null)}
                    onFocus={() => setShown(one.id)}
                  />
                  {narrow && shown === one.id && note}
                </Fragment>
              ))}
            </fieldset>
          ))}
        </>
      )}
    </section>
  );
}
