import { useState } from 'react';
import type { MeasuredChannelResult, MeasuredSet, SpeakerInput } from '../../../geometry';
import { formatLength, formatTime, signedLength, withSign } from '../../../plan/units';
import { TableScroll } from '../../parts/table-scroll';
import { SpeakerHead, SpeakerRow } from '../speaker-button';
import {
  loopWords,
  OUTLIER_CAUSES,
  outlierWords,
  type Wording,
  wholeWords,
} from './measured-words';

interface ResultPartProps {
  set: MeasuredSet;
  speakers: readonly SpeakerInput[];
  wording: Wording;
  locked: boolean;
  /** Ids whose way is straight: only those are distances a tape could take. */
  straight: ReadonlySet<string>;
  onTake: (ids: readonly string[]) => void;
}

/** Measured against predicted: in sentences first, then channel by channel. */
export function ResultPart(props: ResultPartProps) {
  const { set, speakers, wording, locked, straight, onTake } = props;
  const outliers = outlierWords(set, wording);
  // What stands out is taken only if somebody wants it.
  const [changed, setChanged] = useState<Readonly<Record<string, boolean>>>({});
  const taken = set.channels
    .filter(({ id, outlier }) => straight.has(id) && (changed[id] ?? !outlier))
    .map(({ id }) => id);
  const isAlone = set.channels.length < 2;
  return (
    <>
      <div className="measured-verdict" data-fits={outliers.length === 0 && set.agrees}>
        {outliers.map((words) => (
          <p key={words} className="measured-outlier">
            <Mark />
            <strong>{words}</strong>
          </p>
        ))}
        <p>{wholeWords(set, wording)}</p>
        {outliers.length > 0 && <p>{OUTLIER_CAUSES}</p>}
        <p className="footnote">{loopWords(set)}</p>
      </div>
      <TableScroll label="Channel by channel">
        <table className="numbers measured-result">
          <caption className="unseen">
            Each channel as predicted and as measured, loop taken off, and whether the difference is
            within its uncertainty
          </caption>
          <thead>
            <tr>
              <th scope="col" className="text">
                Speaker
              </th>
              <th scope="col">Predicted, measured</th>
              <th scope="col">Difference</th>
              <th scope="col">Expected</th>
              <th scope="col" className="text">
                So it is
              </th>
              <th scope="col" className="text">
                Take
              </th>
            </tr>
          </thead>
          <tbody>
            {set.channels.map((one) => {
              const speaker = speakers.find(({ id }) => id === one.id);
              if (!speaker) return null;
              return (
                <SpeakerRow key={one.id} id={one.id}>
                  <SpeakerHead speaker={speaker} among={speakers} />
                  <td className="measured-off">
                    <span className="by">{formatTime(one.predictedMs, 3)}</span>
                    <span>{formatTime(one.predictedMs + one.differenceMs, 3)}</span>
                  </td>
                  <td className="measured-off">
                    <span className="strong">{withSign(formatTime(one.differenceMs, 3))}</span>
                    <span className="by">
                      {signedLength(one.differenceMs * wording.speed, wording.unit)}
                    </span>
                  </td>
                  <td className="measured-off">
                    <span>{`±${formatTime(2 * one.sdMs, 3)}`}</span>
                    <span className="by">
                      {`±${formatLength(2 * one.sdMs * wording.speed, wording.unit)}`}
                    </span>
                  </td>
                  <td className="text">{verdict(one)}</td>
                  <td className="text">
                    {straight.has(one.id) ? (
                      <input
                        type="checkbox"
                        aria-label={`Take the difference of the ${wording.name(one.id)}`}
                        checked={taken.includes(one.id)}
                        disabled={locked}
                        onChange={({ target }) =>
                          setChanged({ ...changed, [one.id]: target.checked })
                        }
                      />
                    ) : (
                      <span className="dim">bent way</span>
                    )}
                  </td>
                </SpeakerRow>
              );
            })}
          </tbody>
        </table>
      </TableScroll>
      <div className="measured-take">
        <button
          type="button"
          disabled={locked || isAlone || taken.length === 0}
          onClick={() => onTake(taken)}
        >
          {`Take ${taken.length === 1 ? 'this difference' : `${taken.length} differences`} as readings`}
        </button>
        <span className="footnote">
          {isAlone
            ? 'A single channel gives no reading: what it is off by cannot be told from what the loop takes.'
            : 'Each becomes a distance from speaker to microphone in the survey below.'}
          {set.channels.some(({ id }) => !straight.has(id)) &&
            ' Of a way bent round something no straight distance follows.'}
        </span>
      </div>
      <Budget set={set} wording={wording} />
    </>
  );
}

const verdict = ({ outlier, within }: MeasuredChannelResult) =>
  outlier ? (
    <span className="measured-out">
      <Mark /> stands out
    </span>
  ) : within ? (
    'as expected'
  ) : (
    <span className="measured-beyond">beyond</span>
  );

const Mark = () => (
  <svg width="14" height="14" viewBox="0 0 14 14" aria-hidden="true" className="measured-mark">
    <path d="M7 1 13.4 12.6H.6Z" />
    <path className="stroke" d="M7 5v4M7 10.2v1.2" />
  </svg>
);

/** What the expected differences are made of. */
function Budget({ set, wording }: { set: MeasuredSet; wording: Wording }) {
  const mm = (value: number) => formatLength(value, wording.unit, wording.unit === 'mm' ? 1 : 3);
  return (
    <details>
      <summary>What was to be expected, and of what it is made</summary>
      <TableScroll label="Uncertainties by cause">
        <table className="numbers">
          <caption className="unseen">Standard uncertainties of each path by cause</caption>
          <thead>
            <tr>
              <th scope="col" className="text">
                Speaker
              </th>
              <th scope="col">Spot</th>
              <th scope="col">Seat</th>
              <th scope="col">Temperature</th>
              <th scope="col">Reading</th>
              <th scope="col">Expected, twice all</th>
            </tr>
          </thead>
          <tbody>
            {set.channels.map(({ id, parts, sdMs }) => (
              <tr key={id}>
                <th scope="row">{wording.name(id)}</th>
                <td>{mm(parts.spot)}</td>
                <td>{mm(parts.seat)}</td>
                <td>{mm(parts.temperature)}</td>
                <td>{mm(parts.reading)}</td>
                <td className="strong">{`±${mm(2 * sdMs * wording.speed)}`}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableScroll>
    </details>
  );
}
