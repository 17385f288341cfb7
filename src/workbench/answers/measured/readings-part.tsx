import { useState } from 'react';
import { TAPE_SD } from '../../../geometry';
import { addReadings, removeReading } from '../../../plan/edits';
import type { Reading, ReadingEnd } from '../../../plan/types';
import { formatLength, type LengthUnit } from '../../../plan/units';
import { planStore } from '../../../store';
import { lengthKind } from '../../parts/field-kind';
import { NumberField } from '../../parts/number-field';
import { type Choice, SelectField } from '../../parts/select-field';
import { TableScroll } from '../../parts/table-scroll';
import { capital } from '../capital';

interface ReadingsPartProps {
  optionId: string;
  readings: readonly Reading[];
  unit: LengthUnit;
  locked: boolean;
  nameOf: (end: ReadingEnd) => string;
  /** The point whose place is asked for, and the points a tape can go to from it. */
  what: ReadingEnd;
  anchors: readonly { group: string; choices: readonly Choice[] }[];
  /** Asked for next, as an end in JSON; `null`: none in particular. */
  proposed: string | null;
}

/** The survey of the car: distances by tape and by sound, to be added and taken away. */
export function ReadingsPart(props: ReadingsPartProps) {
  const { optionId, readings, unit, locked, nameOf } = props;
  return (
    <>
      {readings.length > 0 ? (
        <TableScroll label="Readings">
          <table className="numbers measured-readings">
            <caption className="unseen">Distances measured in the car</caption>
            <thead>
              <tr>
                <th scope="col" className="text">
                  From
                </th>
                <th scope="col" className="text">
                  To
                </th>
                <th scope="col">Distance</th>
                <th scope="col">Sure to</th>
                <th scope="col" className="text">
                  By
                </th>
                <th scope="col">
                  <span className="unseen">Take away</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {readings.map((one, i) => {
                const [from, to] = [nameOf(one.from), nameOf(one.to)];
                return (
                  // biome-ignore lint/suspicious/noArrayIndexKey: a reading is known by its place
                  <tr key={i}>
                    <th scope="row">{capital(from)}</th>
                    <td className="text">{to}</td>
                    <td>{formatLength(one.distance, unit, unit === 'mm' ? 1 : 2)}</td>
                    <td>{`±${formatLength(2 * (one.sd ?? TAPE_SD), unit)}`}</td>
                    <td className="text">{one.by}</td>
                    <td>
                      <button
                        type="button"
                        className="words"
                        disabled={locked}
                        onClick={() =>
                          planStore.edit('take a reading away', removeReading(optionId, i))
                        }
                      >
                        Remove<span className="unseen">{` the reading from ${from} to ${to}`}</span>
                      </button>
                    </td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        </TableScroll>
      ) : (
        <p className="quiet-text">No readings yet: take differences above, or type tapes here.</p>
      )}
      <AddReading {...props} />
    </>
  );
}

function AddReading(props: ReadingsPartProps) {
  const { optionId, unit, locked, what, nameOf, anchors, proposed } = props;
  const [to, setTo] = useState<string | null>(null);
  const known = anchors.flatMap(({ choices }) => choices.map(({ value }) => value));
  const chosen =
    to !== null && known.includes(to) ? to : (proposed ?? known[0] ?? JSON.stringify(what));
  return (
    <div className="measured-add">
      <SelectField
        label={`Tape from the ${nameOf(what)} to`}
        value={chosen}
        choices={anchors}
        onChange={setTo}
        disabled={locked}
      />
      <NumberField
        label="Distance"
        value={null}
        kind={lengthKind(unit)}
        min={1}
        max={10_000}
        readOnly={locked}
        hint="Enter adds it."
        sink={{
          commit: (distance) => {
            const end = JSON.parse(chosen) as ReadingEnd;
            planStore.edit(
              'add a tape reading',
              addReadings(optionId, [{ from: what, to: end, distance, by: 'tape' }]),
            );
            setTo(null);
          },
        }}
      />
    </div>
  );
}
