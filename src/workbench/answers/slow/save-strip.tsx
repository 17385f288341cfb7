import { fileSave } from 'browser-fs-access';
import { useId, useMemo, useState } from 'react';
import {
  type StripDrawing,
  type StripRow,
  stripDrawing,
  svgText,
} from '../../../exchange/picture-strip';
import type { SlowMotion } from '../../../geometry';
import { seatName } from '../../../plan/names';
import { safeFileName } from '../../../plan/schema';
import { usePlan } from '../../../store';
import { pngOf } from './png-of';
import type { Shown, ShownMotion } from './shown-motion';
import { stripWords } from './strip-words';

/** mm: the type area of an A4 sheet. */
const WIDTH = 180;
/** Pixels to a millimetre: about 250 to an inch, enough to print. */
const SHARP = 10;

type Rows = 'shown' | 'both';

/** The motion as a strip of pictures, to be saved for a sheet of paper or a message. */
export function SaveStrip({ shown }: { shown: Shown }) {
  const id = useId();
  const plan = usePlan((state) => state.plan.title);
  const [rows, setRows] = useState<Rows>('both');
  const [said, setSaid] = useState('');
  const strip = useMemo(() => stripOf(shown, rows), [shown, rows]);
  const address = useMemo(
    () => `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svgText(strip.drawing))}`,
    [strip],
  );
  const save = async (ending: 'svg' | 'png') => {
    try {
      const text = svgText(strip.drawing);
      const content =
        ending === 'svg'
          ? new Blob([text], { type: 'image/svg+xml' })
          : pngOf(text, strip.width * SHARP, strip.height * SHARP);
      await fileSave(content, {
        fileName: `${safeFileName(nameOf(plan, shown))}.${ending}`,
        extensions: [`.${ending}`],
        id: 'pictures',
      });
      setSaid('Saved.');
    } catch (error) {
      // Closing the file window is no fault.
      if ((error as DOMException).name !== 'AbortError')
        setSaid(`The picture could not be written: ${(error as Error).message}`);
    }
  };
  return (
    <section className="slow-strip" aria-labelledby={`${id}-head`}>
      <div className="sheet-bar">
        <h3 id={`${id}-head`}>As a strip of pictures</h3>
        <label className="group-select">
          <span>showing</span>
          <select
            value={rows}
            onChange={(event) => {
              setRows(event.target.value as Rows);
              setSaid('');
            }}
          >
            <option value="both">without and with delays</option>
            <option value="shown">as above</option>
          </select>
        </label>
        <div className="row">
          <button type="button" onClick={() => save('svg')}>
            Save as SVG
          </button>
          <button type="button" onClick={() => save('png')}>
            Save as PNG
          </button>
        </div>
        <p className="quiet-text" role="status">
          {said}
        </p>
      </div>
      <img
        src={address}
        width={strip.width * 4}
        height={strip.height * 4}
        alt={`${shown.options.map(({ title }) => title).join(' and ')}: the arrival of sound in pictures, as told by the tables above`}
      />
    </section>
  );
}

const nameOf = (plan: string, { options }: Shown): string =>
  [plan, ...options.map(({ title }) => title), options[0]?.seat.id ?? '', 'arrival'].join(' ');

function stripOf(shown: Shown, rows: Rows): StripDrawing {
  const [first] = shown.options;
  const motions = shown.options.flatMap((option) =>
    (rows === 'both' ? [option.both.none, option.both.aligned] : [option.motion]).map((motion) =>
      rowOf(option, motion, shown),
    ),
  );
  return stripDrawing(motions, stripWords(first?.stage.option.speakers ?? []), {
    width: WIDTH,
    id: 'strip',
  });
}

function rowOf({ title, car, seat }: ShownMotion, motion: SlowMotion, { window }: Shown): StripRow {
  return {
    title: `${title}, ${motion.delays === 'none' ? 'without delays' : 'with delays'}`,
    note: `At the ${seatName(seat.id)}.${whose(motion)}`,
    car,
    seat,
    motion,
    window,
  };
}

function whose({ delays, alignedFor, seat, problem }: SlowMotion): string {
  if (delays === 'none' || alignedFor === seat) return '';
  if (problem) return ' There are no delays to be had.';
  return alignedFor === null
    ? ' The delays are a compromise over several seats.'
    : ` The delays are for the ${seatName(alignedFor)}.`;
}
