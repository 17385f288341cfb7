import { useState } from 'react';
import {
  distance,
  nextReadings,
  positionFix,
  type ReferencePoint,
  type Stage,
  TAPE_SD,
} from '../../../geometry';
import { changeSeat, standWhereFixed } from '../../../plan/edits';
import { seatName, speakerName } from '../../../plan/names';
import { distancesTo, pointOfEnd } from '../../../plan/readings';
import { sameEnd } from '../../../plan/same-end';
import type { PlanOption, Reading, ReadingEnd } from '../../../plan/types';
import type { LengthUnit } from '../../../plan/units';
import { planStore } from '../../../store';
import { SelectField } from '../../parts/select-field';
import { capital } from '../capital';
import { doubtWords, placeWords, unfixedWords } from './fix-words';
import { endName } from './measured-words';
import { ReadingsPart } from './readings-part';

interface SurveyPartProps {
  stage: Stage;
  option: PlanOption;
  unit: LengthUnit;
  locked: boolean;
  /** What is asked for until something else is chosen. */
  first: ReadingEnd;
}

/** Where a speaker or a head really is, by what was measured to it. */
export function SurveyPart({ stage, option, unit, locked, first }: SurveyPartProps) {
  const { cabin, result } = stage;
  const { speakers, readings = [] } = option;
  const [asked, setAsked] = useState<string | null>(null);
  const known = { cabin, placed: result.placed };
  const ends: ReadingEnd[] = [
    ...speakers.map(({ id }): ReadingEnd => ({ kind: 'speaker', speaker: id })),
    ...cabin.seats.map(({ id }): ReadingEnd => ({ kind: 'head', seat: id })),
  ];
  const what = ends.find((end) => JSON.stringify(end) === asked) ?? first;
  const nameOfSpeaker = (id: string): string => {
    const speaker = speakers.find((one) => one.id === id);
    return speaker ? speakerName(speaker, speakers) : id;
  };
  const reference = (id: string) => cabin.references.find((one) => one.id === id)?.name ?? null;
  const nameOf = (end: ReadingEnd) => endName(end, nameOfSpeaker, reference);
  const near = pointOfEnd(what, known);
  if (!near) return null;
  const have = distancesTo(what, readings, known);
  const answer = positionFix(have, near);
  const fix = answer.ok ? answer.fix : null;
  const next = nextReadings(
    near,
    have,
    cabin.references,
    answer.ok ? 1 : Math.max(1, 3 - have.length),
    { sd: TAPE_SD, mirror: fix?.mirror ?? null },
  );
  const name = what.kind === 'head' ? `head of the ${seatName(what.seat)}` : nameOf(what);
  const wording = {
    unit,
    name,
    reading: (id: string) => readingName(readings[Number(id)], what, nameOf),
  };
  // Readings that contradict one another give no place to stand on.
  const sure = fix !== null && fix.suspects.length === 0;
  const moved = sure && distance(fix.position, near) > 0.05;
  const doubts = fix ? doubtWords(fix, next, wording) : [];
  const put = () => {
    if (!fix) return;
    if (what.kind === 'speaker')
      planStore.edit(
        `put the ${name} where it was found`,
        standWhereFixed(option.id, what.speaker, fix.position),
      );
    else if (what.kind === 'head')
      planStore.edit(
        `put the ${name} where it was found`,
        changeSeat(
          what.seat,
          { head: fix.position },
          cabin.seats.map(({ id }) => id),
        ),
      );
  };
  return (
    <>
      <SelectField
        label="What is looked for"
        className="measured-what"
        value={JSON.stringify(what)}
        choices={ends.map((end) => ({ value: JSON.stringify(end), label: capital(nameOf(end)) }))}
        onChange={setAsked}
      />
      <div className="measured-fix" role="status">
        {fix && !sure ? null : fix ? (
          <p>
            <strong>{placeWords(fix, near, have.length, wording)}</strong>
          </p>
        ) : (
          <p>
            {unfixedWords(
              answer as Extract<typeof answer, { ok: false }>,
              have.length,
              next,
              wording,
            )}
          </p>
        )}
        {doubts.map((words) => (
          <p key={words} className="measured-warn">
            {words}
          </p>
        ))}
      </div>
      {fix && moved && (
        <div className="measured-take">
          <button type="button" disabled={locked} onClick={put}>
            {what.kind === 'speaker'
              ? `Put the ${name} there, as a free point`
              : `Put the ${name} there`}
          </button>
          <span className="footnote">
            {what.kind === 'speaker'
              ? 'It then stands off its panel, by this place alone, with its aim as it is; a tied pair is untied, and the other side stays.'
              : 'The seat is then placed by its head, and no longer follows the dimensions.'}
          </span>
        </div>
      )}
      <ReadingsPart
        key={JSON.stringify(what)}
        optionId={option.id}
        readings={readings}
        unit={unit}
        locked={locked}
        nameOf={nameOf}
        what={what}
        anchors={anchorsOf(what, next, cabin.references, ends, nameOf)}
        proposed={next[0] ? JSON.stringify({ kind: 'reference', reference: next[0].id }) : null}
      />
    </>
  );
}

/** "tape to the heel point", "sound to the head". */
function readingName(
  reading: Reading | undefined,
  what: ReadingEnd,
  nameOf: (end: ReadingEnd) => string,
): string {
  if (!reading) return 'reading';
  const other = sameEnd(reading.from, what) ? reading.to : reading.from;
  return `${reading.by === 'tape' ? 'tape' : 'distance by sound'} to the ${nameOf(other)}`;
}

/** What a tape can go to: the points that help most first, then all others by name. */
function anchorsOf(
  what: ReadingEnd,
  next: readonly ReferencePoint[],
  references: readonly ReferencePoint[],
  ends: readonly ReadingEnd[],
  nameOf: (end: ReadingEnd) => string,
) {
  const choice = (end: ReadingEnd) => ({ value: JSON.stringify(end), label: nameOf(end) });
  const point = ({ id }: ReferencePoint) => choice({ kind: 'reference', reference: id });
  const others = ends.filter((end) =>
    what.kind === 'speaker' ? end.kind === 'head' : end.kind === 'speaker',
  );
  return [
    { group: 'Take next', choices: next.map(point) },
    {
      group: 'Points of the cabin',
      choices: references.filter((one) => !next.includes(one)).map(point),
    },
    { group: what.kind === 'speaker' ? 'Heads' : 'Speakers', choices: others.map(choice) },
  ].filter(({ choices }) => choices.length > 0);
}
