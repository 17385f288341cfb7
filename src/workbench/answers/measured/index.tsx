import { useEffect, useMemo } from 'react';
import {
  arrivalReadings,
  compareMeasured,
  type MeasuredArrival,
  type MeasuredSet,
  type MicrophonePlace,
  type SeatResult,
  type Stage,
} from '../../../geometry';
import { addReadings, forgetMeasured, keepMeasured } from '../../../plan/edits';
import { seatName, speakerName } from '../../../plan/names';
import type { PlanOption, Reading, ReadingEnd } from '../../../plan/types';
import { planStore, usePlan, useSession } from '../../../store';
import { type Board, useLocked } from '../../parts/use-board';
import { useStage } from '../../parts/use-stage';
import { ArrivalDrawing, DrawingKey } from './arrival-drawing';
import { DropHere } from './drop-here';
import { FilesPart } from './files-part';
import { liveArrivals } from './live-arrivals';
import { MeasuredHow } from './measured-how';
import { startAfresh, useMeasuredState } from './measured-store';
import { placeName, whereWords } from './measured-words';
import { PlacePart } from './place-part';
import { readFiles } from './read-files';
import { ResultPart } from './result-part';
import { SurveyPart } from './survey-part';
import './measured.css';

/** First arrivals measured in the car against the prediction, and what they say of where things are. */
export default function MeasuredSheet({ board }: { board: Board }) {
  const stage = useStage(board);
  const openedAs = usePlan((state) => state.openedAs);
  useEffect(() => startAfresh(openedAs), [openedAs]);
  const { option, seat } = board;
  if (!stage || !option || !seat)
    return <p className="quiet-text">There is no option on the board.</p>;
  if (option.speakers.length === 0)
    return <p className="quiet-text">No speaker stands in this option yet. Add a pair first.</p>;
  return <Measured stage={stage} option={option} seat={seat} />;
}

interface MeasuredProps {
  stage: Stage;
  option: PlanOption;
  seat: SeatResult;
}

function Measured({ stage, option, seat }: MeasuredProps) {
  const { plan, cabin, result } = stage;
  const { speakers } = option;
  const locked = useLocked();
  const unit = useSession((session) => session.lengthUnit);
  const { tracks, at, delayed, choice } = useMeasuredState((state) => state);
  const alignedFor = result.seats.find(({ id }) => id === plan.alignment.seat) ?? result.seats[0];
  const live = useMemo(() => {
    const delays =
      delayed === 'plan'
        ? Object.fromEntries(
            (alignedFor?.delays ?? []).map((one) => [one.speaker, one.roundedDelay]),
          )
        : {};
    return liveArrivals(tracks, speakers, { seat: seat.id, at, choice, delays });
  }, [tracks, speakers, seat.id, at, choice, delayed, alignedFor]);
  const kept = (option.measured ?? []).filter((one) => one.seat === seat.id && one.at === at);
  const fresh = live.taken.length > 0;
  const set = compareMeasured(fresh ? live.taken : kept, result, plan.air.temperatureC)[0] ?? null;
  const name = (id: string): string => {
    const speaker = speakers.find((one) => one.id === id);
    return speaker ? speakerName(speaker, speakers) : id;
  };
  const straight = new Set(
    seat.arrivals.filter((one) => lineAt(one, at) !== 'blocked').map(({ speaker }) => speaker),
  );
  const take = (ids: readonly string[]) => {
    if (!set) return;
    planStore.edit('take measured differences as readings', (draft) => {
      // What the readings were read from is kept with them.
      if (fresh) keepMeasured(option.id, live.taken)(draft);
      addReadings(option.id, readingsFrom(set, ids, result.speedOfSound))(draft);
    });
  };
  return (
    <DropHere onFiles={(files) => void readFiles(files, speakers)}>
      <section className="measured-part" aria-labelledby="measured-arrivals">
        <h3 id="measured-arrivals">Arrivals</h3>
        <PlacePart seats={cabin.seats} seat={seat.id} alignedFor={alignedFor?.id ?? seat.id} />
        <FilesPart rows={live.rows} speakers={speakers} />
      </section>
      <section className="measured-part" aria-labelledby="measured-against">
        <h3 id="measured-against">Measured against predicted</h3>
        {set ? (
          <>
            <Keeping
              fresh={fresh}
              taken={live.taken}
              kept={kept}
              optionId={option.id}
              seat={seat.id}
              at={at}
              locked={locked}
            />
            <ResultPart
              set={set}
              speakers={speakers}
              wording={{ unit, speed: result.speedOfSound, name }}
              locked={locked}
              straight={straight}
              onTake={take}
            />
            {fresh && (
              <>
                <div className="measured-drawings">
                  {set.channels.map((one) => {
                    const row = live.rows.find(({ chosen }) => chosen?.id === one.id);
                    return (
                      row && (
                        <ArrivalDrawing
                          key={one.id}
                          row={row}
                          result={one}
                          offsetMs={set.offsetMs}
                          name={name(one.id)}
                        />
                      )
                    );
                  })}
                </div>
                <DrawingKey />
              </>
            )}
          </>
        ) : (
          <p className="quiet-text">
            {`Nothing was measured ${whereWords(at, seat.id)}, yet. ${elsewhere(option.measured ?? [], seat.id, at)}`}
          </p>
        )}
      </section>
      <section className="measured-part" aria-labelledby="measured-survey">
        <h3 id="measured-survey">Survey</h3>
        <SurveyPart
          stage={stage}
          option={option}
          unit={unit}
          locked={locked}
          first={firstAsked(set, option)}
        />
      </section>
      <MeasuredHow />
    </DropHere>
  );
}

interface KeepingProps {
  fresh: boolean;
  taken: readonly MeasuredArrival[];
  kept: readonly MeasuredArrival[];
  optionId: string;
  seat: string;
  at: MicrophonePlace;
  locked: boolean;
}

/** Whether what is shown is in the plan, and the way in and out. */
function Keeping({ fresh, taken, kept, optionId, seat, at, locked }: KeepingProps) {
  const inPlan = fresh && JSON.stringify(byName(taken)) === JSON.stringify(byName(kept));
  return (
    <div className="measured-take">
      {fresh && !inPlan && (
        <button
          type="button"
          className="primary"
          disabled={locked}
          onClick={() => planStore.edit('keep measured arrivals', keepMeasured(optionId, taken))}
        >
          Keep these arrivals in the plan
        </button>
      )}
      <span className="quiet-text">
        {fresh && !inPlan
          ? 'As just read; the responses themselves are not kept.'
          : `As kept in the plan, ${whereWords(at, seat)}.`}
      </span>
      {(!fresh || inPlan) && (
        <button
          type="button"
          className="words"
          disabled={locked}
          onClick={() =>
            planStore.edit('forget measured arrivals', forgetMeasured(optionId, seat, at))
          }
        >
          Forget them
        </button>
      )}
    </div>
  );
}

const byName = (arrivals: readonly MeasuredArrival[]): MeasuredArrival[] =>
  [...arrivals].sort((a, b) => (a.speaker < b.speaker ? -1 : 1));

const lineAt = (one: SeatResult['arrivals'][number], at: MicrophonePlace) =>
  at === 'head' ? one.line : one.ears[at === 'left-ear' ? 'left' : 'right'].line;

/** Where else something was measured. */
function elsewhere(
  measured: readonly MeasuredArrival[],
  seat: string,
  at: MicrophonePlace,
): string {
  const other = measured.find((one) => one.seat !== seat || one.at !== at);
  return other
    ? `The plan keeps arrivals at the ${placeName(other.at)}, ${seatName(other.seat)}.`
    : '';
}

/** Differences as distances from speaker to microphone. */
function readingsFrom(set: MeasuredSet, ids: readonly string[], speedOfSound: number): Reading[] {
  const { seat, at } = set;
  const to: ReadingEnd =
    at === 'head'
      ? { kind: 'head', seat }
      : { kind: 'ear', seat, side: at === 'left-ear' ? 'left' : 'right' };
  return arrivalReadings(set, {
    seat,
    speedOfSound,
    channels: set.channels.map(({ id, path, measured }) => ({
      id,
      path,
      measuredSdMs: measured.sd,
    })),
    accepted: ids,
  }).map(({ speaker, path, sd }) => ({
    from: { kind: 'speaker', speaker },
    to,
    distance: path,
    by: 'sound',
    sd,
  }));
}

/** What stands out, else what was read to, else the first speaker. */
function firstAsked(set: MeasuredSet | null, { readings, speakers }: PlanOption): ReadingEnd {
  const [out] = set?.outliers ?? [];
  const read = readings?.find(({ from }) => from.kind === 'speaker')?.from;
  return out !== undefined
    ? { kind: 'speaker', speaker: out }
    : (read ?? { kind: 'speaker', speaker: speakers[0]?.id ?? '' });
}
