import { fileSave } from 'browser-fs-access';
import { useId, useRef, useState } from 'react';
import {
  type DelayExport,
  testSignalFiles,
  type WrittenEncoding,
  zipInSteps,
} from '../../exchange';
import type { OptionInput } from '../../geometry';
import { safeFileName } from '../../plan/schema';

const ENCODINGS: readonly { encoding: WrittenEncoding; words: string }[] = [
  { encoding: 'int16', words: 'WAV, 16 bit' },
  { encoding: 'int24', words: 'WAV, 24 bit' },
  { encoding: 'float32', words: 'WAV, 32 bit float' },
];

/** Clicks and bursts for every channel as one ZIP of WAV files, with a text on how to use them. */
export function SaveSignals({ all, option }: { all: DelayExport; option: OptionInput }) {
  const id = useId();
  const [encoding, setEncoding] = useState<WrittenEncoding>('int24');
  const [withDelays, setWithDelays] = useState(false);
  const [said, setSaid] = useState('');
  const running = useRef<AbortController | null>(null);
  const [busy, setBusy] = useState(false);

  const make = async () => {
    const stop = new AbortController();
    running.current = stop;
    setBusy(true);
    setSaid('Making the sounds…');
    try {
      setSaid(await saved(all, option, { encoding, withDelays }, stop, setSaid));
    } catch (error) {
      setSaid(
        (error as DOMException).name === 'AbortError'
          ? 'Nothing was saved.'
          : `The sounds could not be made: ${(error as Error).message}`,
      );
    }
    setBusy(false);
  };

  if (all.rows.length === 0) return null;
  return (
    <section className="export-signals" aria-labelledby={`${id}-title`}>
      <h3 className="export-title" id={`${id}-title`}>
        Sounds to check it by
      </h3>
      <p>
        Clicks and short bursts in each channel’s own band: all channels in one file, and a file for
        each alone. By ear they are heard at once when the delays are right; by microphone they show
        when each speaker arrives. A text in the ZIP says how.
      </p>
      <p className="notice">
        <strong>Start with the volume all the way down.</strong>
        Set the crossovers before playing anything, tweeters above all; keep ears away from the
        speakers.
      </p>
      <div className="export-fields">
        <div className="field">
          <label htmlFor={`${id}-encoding`}>Stored as</label>
          <select
            id={`${id}-encoding`}
            value={encoding}
            onChange={(event) => setEncoding(event.target.value as WrittenEncoding)}
          >
            {ENCODINGS.map((one) => (
              <option key={one.encoding} value={one.encoding}>
                {one.words}
              </option>
            ))}
          </select>
        </div>
        <label className="tick export-tick">
          <input
            type="checkbox"
            checked={withDelays}
            onChange={(event) => setWithDelays(event.target.checked)}
          />
          Put the delays into the sounds, for a processor with none set
        </label>
      </div>
      <div className="export-make">
        <button type="button" disabled={busy} onClick={make}>
          Save the sounds (ZIP)
        </button>
        {busy && (
          <button type="button" onClick={() => running.current?.abort()}>
            Stop
          </button>
        )}
        <span role="status">{said}</span>
      </div>
    </section>
  );
}

/** What to say when it is done. */
async function saved(
  all: DelayExport,
  option: OptionInput,
  how: { encoding: WrittenEncoding; withDelays: boolean },
  stop: AbortController,
  say: (words: string) => void,
): Promise<string> {
  const { files, silent } = testSignalFiles(all, option, {
    ...how,
    sampleRateHz: Math.round(all.sampleRateHz),
  });
  const making = zipInSteps(files, {
    told: (done, of) => say(`Making the sounds… ${done} of ${of} files`),
    stop: stop.signal,
  }).then((zip) => {
    if (!zip) throw new DOMException('stopped', 'AbortError');
    return new Blob(zip as BlobPart[], { type: 'application/zip' });
  });
  // Told by the saving below; when the file window is closed first, nobody is left to tell.
  making.catch(() => undefined);
  try {
    // The file window opens at once: browsers allow it only shortly after the button is pressed.
    await fileSave(making, {
      fileName: `${safeFileName(`${all.planTitle} ${all.option.title} test sounds`)}.zip`,
      extensions: ['.zip'],
      mimeTypes: ['application/zip'],
      id: 'signals',
    });
  } finally {
    stop.abort();
  }
  return silent.length === 0
    ? `Saved: ${files.length} files.`
    : `Saved: ${files.length} files. ${silent.length} ${silent.length === 1 ? 'channel has' : 'channels have'} clicks but no burst; the text says why.`;
}
