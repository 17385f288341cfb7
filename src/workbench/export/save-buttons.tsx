import { fileSave } from 'browser-fs-access';
import { useId, useState } from 'react';
import { type DelayExport, toCsv, toJson, toText } from '../../exchange';
import { safeFileName } from '../../plan/schema';

const FORMATS = {
  csv: { words: 'CSV, for a spreadsheet', write: toCsv, type: 'text/csv', ending: 'csv' },
  json: { words: 'JSON, for a program', write: toJson, type: 'application/json', ending: 'json' },
  text: { words: 'Plain text, to print', write: toText, type: 'text/plain', ending: 'txt' },
} as const;
type Format = keyof typeof FORMATS;

const forWhom = ({ by, seats }: DelayExport): string =>
  by === 'seats' ? `${seats.length} seats` : (seats[0]?.id ?? '');

/** In which form the numbers leave the page: saved as a file, or copied. */
export function SaveButtons({ all }: { all: DelayExport | null }) {
  const id = useId();
  const [format, setFormat] = useState<Format>('csv');
  const [said, setSaid] = useState('');

  const save = async () => {
    if (!all) return;
    const { write, type, ending } = FORMATS[format];
    try {
      await fileSave(new Blob([write(all)], { type }), {
        fileName: `${safeFileName(`${all.planTitle} ${all.option.title} ${forWhom(all)} delays`)}.${ending}`,
        extensions: [`.${ending}`],
        id: 'delays',
      });
      setSaid('Saved.');
    } catch (error) {
      // Closing the file window is no fault.
      if ((error as DOMException).name !== 'AbortError')
        setSaid(`The file could not be written: ${(error as Error).message}`);
    }
  };
  const copy = async () => {
    if (!all) return;
    try {
      await navigator.clipboard.writeText(FORMATS[format].write(all));
      setSaid('Copied.');
    } catch {
      setSaid('This browser does not let a page copy; save the file instead.');
    }
  };

  return (
    <>
      <p className="board-dialog-aside" role="status">
        {said}
      </p>
      <div className="export-format">
        <label htmlFor={`${id}-format`}>As</label>
        <select
          id={`${id}-format`}
          value={format}
          onChange={(event) => {
            setFormat(event.target.value as Format);
            setSaid('');
          }}
        >
          {Object.entries(FORMATS).map(([key, { words }]) => (
            <option key={key} value={key}>
              {words}
            </option>
          ))}
        </select>
      </div>
      <button type="button" disabled={!all} onClick={copy}>
        Copy
      </button>
      <button type="button" className="primary" disabled={!all} onClick={save}>
        Save file
      </button>
    </>
  );
}
