import type { SpeakerInput } from '../../../geometry';
import { speakerName } from '../../../plan/names';
import { formatNumber, formatTime } from '../../../plan/units';
import { sentence } from '../../parts/check-number';
import { numberKind } from '../../parts/field-kind';
import { NumberField } from '../../parts/number-field';
import { TableScroll } from '../../parts/table-scroll';
import { capital } from '../capital';
import { khz, type LiveRow } from './live-arrivals';
import { answerRate, bindTrack, leaveOut, useMeasuredState } from './measured-store';
import { BECAUSE } from './measured-words';
import { cancelReading, chooseFiles } from './read-files';

interface FilesPartProps {
  rows: readonly LiveRow[];
  speakers: readonly SpeakerInput[];
}

/** The responses: chosen or dropped, bound to speakers, each with its first arrival both ways. */
export function FilesPart({ rows, speakers }: FilesPartProps) {
  const { reading, refused, said } = useMeasuredState((state) => state);
  const waiting = rows.filter(({ speaker, problem }) => !speaker && problem === null).length;
  return (
    <>
      <div className="measured-choose">
        <button
          type="button"
          className={rows.length === 0 ? 'primary' : undefined}
          disabled={reading !== null}
          onClick={() => void chooseFiles(speakers)}
        >
          {rows.length > 0 ? 'Choose more responses…' : 'Choose responses…'}
        </button>
        <span className="quiet-text">
          or drop them on this sheet: one impulse response a speaker, WAV or text. Nothing leaves
          this computer.
        </span>
      </div>
      {reading && (
        <div className="measured-reading">
          <progress value={reading.done} max={reading.total} aria-label="Files read" />
          <span dir="auto">{`Reading ${reading.done + 1} of ${reading.total}: ${reading.file}`}</span>
          <button type="button" onClick={cancelReading}>
            Stop reading
          </button>
        </div>
      )}
      <p className="unseen" role="status">
        {said}
      </p>
      {refused.length > 0 && (
        <div className="notice" role="alert">
          <strong>{refused.length === 1 ? 'Not read' : `${refused.length} not read`}</strong>
          <ul>
            {refused.map(({ file, message }) => (
              <li key={file} dir="auto">{`${file}: ${sentence(message).replace(/^./, lower)}`}</li>
            ))}
          </ul>
        </div>
      )}
      {rows.length > 0 && (
        <TableScroll label="Responses and their first arrivals">
          <table className="numbers measured-files">
            <caption className="unseen">
              Responses read, the speaker each was measured of, and its first arrival in the file
            </caption>
            <thead>
              <tr>
                <th scope="col" className="text">
                  Response
                </th>
                <th scope="col" className="text">
                  Measured of
                </th>
                <th scope="col">Sample rate</th>
                <th scope="col">By threshold</th>
                <th scope="col">By correlation</th>
                <th scope="col" className="text">
                  Used
                </th>
                <td />
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <FileRow key={row.track.key} row={row} speakers={speakers} />
              ))}
            </tbody>
          </table>
        </TableScroll>
      )}
      {waiting > 0 && (
        <p className="measured-warn">
          {waiting === 1
            ? 'One response waits for its speaker: its name does not say which it is.'
            : `${waiting} responses wait for their speakers: their names do not say which they are.`}
        </p>
      )}
    </>
  );
}

const lower = (letter: string): string => letter.toLowerCase();

function FileRow({ row, speakers }: { row: LiveRow; speakers: readonly SpeakerInput[] }) {
  const { track, speaker, problem, found, chosen } = row;
  const title = track.of > 1 ? `${track.file}, channel ${track.channel}` : track.file;
  const edge = found && !('problem' in found.edge) ? found.edge : null;
  const correlation = found?.correlation;
  return (
    <tr>
      <th scope="row" className="measured-file">
        <span dir="auto">{title}</span>
        <span className="quiet-text">{storedWords(row)}</span>
        {problem !== null && !track.asksRate && (
          <span className="measured-problem">{sentence(problem)}</span>
        )}
      </th>
      <td className="text">
        <select
          aria-label={`Speaker of ${title}`}
          value={speaker?.id ?? ''}
          onChange={(event) => bindTrack(track.key, event.target.value || null)}
        >
          <option value="">choose…</option>
          {speakers.map((one) => (
            <option key={one.id} value={one.id}>
              {capital(speakerName(one, speakers))}
            </option>
          ))}
        </select>
      </td>
      <td>
        {track.asksRate ? (
          <NumberField
            label={`Sample rate of ${title}`}
            className="measured-rate"
            value={track.sampleRateHz}
            kind={RATE}
            min={4000}
            max={1_000_000}
            sink={{ commit: (hz) => answerRate(track.key, hz) }}
          />
        ) : (
          track.sampleRateHz !== null && khz(track.sampleRateHz)
        )}
      </td>
      <td>{edge ? formatTime(edge.ms, 3) : <span className="dim">–</span>}</td>
      <td>
        {correlation === null && edge ? (
          <span className="dim">reference</span>
        ) : correlation && !('problem' in correlation) ? (
          <>
            {formatTime(correlation.ms, 3)}
            <span className="by"> {formatNumber(correlation.likeness * 100)} % alike</span>
          </>
        ) : (
          <span className="dim">–</span>
        )}
      </td>
      <td className="text measured-used">
        {chosen ? (
          <>
            <span className="strong">{chosen.method === 'edge' ? 'threshold' : 'correlation'}</span>
            {`, ${BECAUSE[chosen.because]}`}
            {edge?.inverted && (
              <span className="measured-problem">Its first peak points down: poles swapped?</span>
            )}
          </>
        ) : (
          <span className="dim">–</span>
        )}
      </td>
      <td>
        <button type="button" className="words" onClick={() => leaveOut(track.key)}>
          Leave out<span className="unseen"> {title}</span>
        </button>
      </td>
    </tr>
  );
}

const RATE = numberKind('Hz', 0, 100);

const STORED: Readonly<Record<string, string>> = {
  int16: '16 bit',
  int24: '24 bit',
  int32: '32 bit',
  float32: '32 bit float',
  float64: '64 bit float',
  text: 'text',
};

/** "24 bit, 65536 samples". */
const storedWords = ({ track }: LiveRow): string =>
  `${STORED[track.stored] ?? track.stored}, ${formatNumber(track.length)} samples`;
