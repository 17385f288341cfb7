import type { CabinModel, EarSound, SpeakerInput } from '../../../geometry';
import { formatFrequency, formatNumber, type LengthUnit, lengthNumber } from '../../../plan/units';
import { SideMark } from '../../parts/marks';
import { thingName } from '../../parts/names';
import { TableScroll } from '../../parts/table-scroll';
import { capital } from '../capital';

export interface ReflectionsTableProps {
  sounds: readonly EarSound[];
  members: readonly SpeakerInput[];
  cabin: CabinModel;
  unit: LengthUnit;
  /** mm/ms */
  speedOfSound: number | null;
}

/** Every reflection at each ear, the earliest first. */
export function ReflectionsTable(props: ReflectionsTableProps) {
  const { sounds, members, cabin, unit, speedOfSound } = props;
  const thrown = sounds.filter(({ kind }) => kind === 'reflection').sort((a, b) => a.time - b.time);
  if (thrown.length === 0)
    return <p className="quiet-text">No panel throws sound from these speakers to these ears.</p>;
  return (
    <TableScroll label="Reflections">
      <table className="numbers">
        <caption className="unseen">Reflections, the earliest first</caption>
        <thead>
          <tr>
            <th scope="col" className="text">
              Off
            </th>
            <th scope="col" className="text">
              From
            </th>
            <th scope="col" className="text">
              Ear
            </th>
            <th scope="col">Longer, {unit}</th>
            <th scope="col">Later, ms</th>
            <th scope="col">Level, dB</th>
            <th scope="col">First notch</th>
          </tr>
        </thead>
        <tbody>
          {thrown.map((sound) => {
            const side = members.find(({ id }) => id === sound.speaker)?.side;
            const names = [sound.panel, sound.second].flatMap((id) =>
              id === null ? [] : [thingName(cabin, id)],
            );
            return (
              <tr key={`${sound.speaker} ${sound.ear} ${sound.panel} ${sound.second}`}>
                <th scope="row">{capital(names.join(', then '))}</th>
                <td className="text">
                  <span className="row-label">
                    <SideMark side={side} /> {side ?? 'the speaker'}
                  </span>
                </td>
                <td className="text">{sound.ear}</td>
                <td>
                  {lengthNumber(speedOfSound === null ? null : sound.time * speedOfSound, unit)}
                </td>
                <td className="strong">{formatNumber(sound.time, 2)}</td>
                <td className="strong">{formatNumber(sound.levelDb, 1)}</td>
                <td>
                  {formatFrequency(
                    sound.firstNotchHz === null ? null : Number(sound.firstNotchHz.toPrecision(3)),
                  )}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </TableScroll>
  );
}
