import type { SpeakerInput } from '../../../geometry';
import { speakerName } from '../../../plan/names';
import { formatNumber, formatTime } from '../../../plan/units';
import { sentence } from '../../parts/check-number';
import { numberKind } from '../../parts/field-kind';
import { NumberField } from '../../parts/number-field';
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
        <ul className="measured-files" aria-label="Responses and their first arrivals">
          {rows.map((row) => (
            <FileRow key={row.track.key} row={row} speakers={speakers} />
          ))}
        </ul>
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
  return (
    <li>
      <div className="measured-file">
        <strong dir="auto">{title}</strong>
        <span className="quiet-text">{storedWords(row)}</span>
        <button type="button" className="words" onClick={() => leaveOut(track.key)}>
          Leave out<span className="unseen"> {title}</span>
        </button>
      </div>
      <div className="measured-of">
        <select
          aria-label={`Speaker of ${title}`}
          value={speaker?.id ?? ''}
          onChange={(event) => bindTrack(track.key, event.target.value || null)}
        >
          <option value="">of which speaker?</option>
          {speakers.map((one) => (
            <option key={one.id} value={one.id}>
              {capital(speakerName(one, speakers))}
            </option>
          ))}
        </select>
        {track.asksRate && (
          <NumberField
            label="Sample rate"
            value={track.sampleRateHz}
            kind={RATE}
            min={4000}
            max={1_000_000}
            hint={track.sampleRateHz === null ? 'The file does not say it.' : undefined}
            sink={{ commit: (hz) => answerRate(track.key, hz) }}
          />
        )}
      </div>
      <div className="measured-ways">
        {problem !== null && track.sampleRateHz !== null && (
          <span className="measured-problem">{sentence(problem)}</span>
        )}
        {edge && (
          <>
            <span>
              <span className="by">By threshold </span>
              {formatTime(edge.ms, 3)}
            </span>
            <span>
              <span className="by">By correlation </span>
              {correlationWords(row)}
            </span>
          </>
        )}
        {chosen && (
          <span>
            <span className="by">Used: </span>
            <strong>{chosen.method === 'edge' ? 'threshold' : 'correlation'}</strong>
            {`, ${BECAUSE[chosen.because]}`}
          </span>
        )}
        {edge?.inverted && (
          <span className="measured-problem">Its first peak points down: poles swapped?</span>
        )}
      </div>
    </li>
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

/** "48 kHz, 24 bit, 65536 samples". */
const storedWords = ({ track }: LiveRow): string =>
  [
    ...(track.sampleRateHz === null || track.asksRate ? [] : [khz(track.sampleRateHz)]),
    STORED[track.stored] ?? track.stored,
    `${formatNumber(track.length)} samples`,
  ].join(', ');

/** "10.262 ms, 98 % alike to the right tweeter". */
function correlationWords({ found, chosen }: LiveRow): string {
  const correlation = found?.correlation;
  if (chosen?.because === 'alone') return 'no other of its kind';
  if (correlation === null) return 'others are held to it';
  if (!correlation || 'problem' in correlation) return 'nothing in common';
  return `${formatTime(correlation.ms, 3)}, ${formatNumber(correlation.likeness * 100)} % alike`;
}
