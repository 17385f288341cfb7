import type { SeatImage, SpeakerInput } from '../../../geometry';
import { formatFrequency } from '../../../plan/units';
import { plainReason } from '../../parts/plain-reason';
import { TableScroll } from '../../parts/table-scroll';
import { angleWords } from './image-words';

interface ImageTableProps {
  image: SeatImage;
  speakers: readonly SpeakerInput[];
  seat: string;
}

/** The fan in numbers: every octave's angle with delays and gains and without, and why none. */
export function ImageTable({ image, speakers, seat }: ImageTableProps) {
  const reasonOf = (i: number): string => {
    const [on, off] = [image.on[i]?.reason, image.off[i]?.reason];
    const told = [...new Set([on, off].filter((reason) => reason !== undefined))];
    if (told.length === 0) return '';
    if (on === undefined) return `Without: ${plainReason(told[0] ?? '', speakers)}`;
    return told.map((reason) => plainReason(reason, speakers)).join(' ');
  };
  const reasons = image.octavesHz.map((_, i) => reasonOf(i));
  return (
    <TableScroll label="The image by octave">
      <table className="numbers image-table">
        <caption className="unseen">
          Where a centre-panned sound seems to stand at the {seat}, by octave
        </caption>
        <thead>
          <tr>
            <th scope="col" className="text">
              Octave
            </th>
            <th scope="col">with delays and gains</th>
            <th scope="col">without</th>
            <th scope="col" className="text">
              by
            </th>
            {reasons.some(Boolean) && (
              <th scope="col" className="text">
                Why not
              </th>
            )}
          </tr>
        </thead>
        <tbody>
          {image.octavesHz.map((octave, i) => {
            const [on, off] = [image.on[i], image.off[i]];
            return (
              <tr key={octave}>
                <th scope="row">{formatFrequency(octave)}</th>
                <td className="strong">
                  {angleWords(on?.lateralDeg ?? null, on?.atLimit ?? false)}
                </td>
                <td>{angleWords(off?.lateralDeg ?? null, off?.atLimit ?? false)}</td>
                <td className="text dim">{on?.cue}</td>
                {reasons.some(Boolean) && <td className="text wrap dim">{reasons[i]}</td>}
              </tr>
            );
          })}
        </tbody>
      </table>
    </TableScroll>
  );
}
